<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="en_US" sourcelanguage="en">
<context>
    <name>ConnectionPart</name>
    <message numerus="yes">
        <source>%n things done here wait on this device. They are sent by themselves, in order, as soon as the server answers.</source>
        <translation>
            <numerusform>%n thing done here waits on this device. It is sent by itself as soon as the server answers.</numerusform>
            <numerusform>%n things done here wait on this device. They are sent by themselves, in order, as soon as the server answers.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>LeavePart</name>
    <message numerus="yes">
        <source>%n things done here have not reached the server. They are lost if you leave now.</source>
        <translation>
            <numerusform>%n thing done here has not reached the server. It is lost if you leave now.</numerusform>
            <numerusform>%n things done here have not reached the server. They are lost if you leave now.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>ScreenBar</name>
    <message numerus="yes">
        <source>%1, %n waiting</source>
        <translation>
            <numerusform>%1, %n waiting</numerusform>
            <numerusform>%1, %n waiting</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>suppertide::HouseholdSession</name>
    <message numerus="yes">
        <source>Connecting, %n waiting</source>
        <translation>
            <numerusform>Connecting, %n waiting</numerusform>
            <numerusform>Connecting, %n waiting</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Live, %n being sent</source>
        <translation>
            <numerusform>Live, %n being sent</numerusform>
            <numerusform>Live, %n being sent</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Offline, %n waiting</source>
        <translation>
            <numerusform>Offline, %n waiting</numerusform>
            <numerusform>Offline, %n waiting</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Not let in, %n waiting</source>
        <translation>
            <numerusform>Not let in, %n waiting</numerusform>
            <numerusform>Not let in, %n waiting</numerusform>
        </translation>
    </message>
</context>
</TS>
