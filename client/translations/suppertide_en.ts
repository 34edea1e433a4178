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
    <name>DraftBar</name>
    <message numerus="yes">
        <source>%n things to put right. %1</source>
        <translation>
            <numerusform>%n thing to put right. %1</numerusform>
            <numerusform>%n things to put right. %1</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>EditorCard</name>
    <message numerus="yes">
        <source>%n things are wrong</source>
        <translation>
            <numerusform>%n thing is wrong</numerusform>
            <numerusform>%n things are wrong</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n things to put right</source>
        <translation>
            <numerusform>%n thing to put right</numerusform>
            <numerusform>%n things to put right</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>IngredientsEditor</name>
    <message numerus="yes">
        <source>Add %n lines, as they are read here</source>
        <translation>
            <numerusform>Add %n line, as it is read here</numerusform>
            <numerusform>Add %n lines, as they are read here</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Add %n lines</source>
        <translation>
            <numerusform>Add %n line</numerusform>
            <numerusform>Add %n lines</numerusform>
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
    <name>PrintPanel</name>
    <message numerus="yes">
        <source>%n pages, kept at %1</source>
        <translation>
            <numerusform>%n page, kept at %1</numerusform>
            <numerusform>%n pages, kept at %1</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>ReminderStrip</name>
    <message numerus="yes">
        <source>%n more</source>
        <translation>
            <numerusform>%n more</numerusform>
            <numerusform>%n more</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Show %n more reminders</source>
        <translation>
            <numerusform>Show %n more reminder</numerusform>
            <numerusform>Show %n more reminders</numerusform>
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
<context>
    <name>suppertide::KitchenDesk</name>
    <message numerus="yes">
        <source>for %n, </source>
        <translation>
            <numerusform>for %n, </numerusform>
            <numerusform>for %n, </numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n steps</source>
        <translation>
            <numerusform>%n step</numerusform>
            <numerusform>%n steps</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n ovens, </source>
        <translation>
            <numerusform>%n oven, </numerusform>
            <numerusform>%n ovens, </numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n burners</source>
        <translation>
            <numerusform>%n burner</numerusform>
            <numerusform>%n burners</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>suppertide::MemberWords</name>
    <message numerus="yes">
        <source>%n of them</source>
        <translation>
            <numerusform>%n of them</numerusform>
            <numerusform>%n of them</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n racks</source>
        <translation>
            <numerusform>%n rack</numerusform>
            <numerusform>%n racks</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n readings</source>
        <translation>
            <numerusform>%n reading</numerusform>
            <numerusform>%n readings</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>suppertide::OvenFit</name>
    <message numerus="yes">
        <source>%n readings are too far from the others and do not count.</source>
        <translation>
            <numerusform>%n reading is too far from the others and does not count.</numerusform>
            <numerusform>%n readings are too far from the others and do not count.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>suppertide::ScaledLines</name>
    <message numerus="yes">
        <source>%n loads</source>
        <translation>
            <numerusform>%n load</numerusform>
            <numerusform>%n loads</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n pieces of </source>
        <translation>
            <numerusform>%n piece of </numerusform>
            <numerusform>%n pieces of </numerusform>
        </translation>
    </message>
</context>
</TS>
