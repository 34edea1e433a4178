import QtQuick
import QtQuick.Layouts
import Suppertide.Ui

// One reminder: what, where and why, and the three answers to it.
RowLayout {
    id: root

    required property string reminderId
    required property string title
    required property string text
    required property int symbol
    required property bool missed
    required property int kind
    required property string taskId
    required property bool narrow
    signal seen
    signal later
    signal opened

    objectName: "reminder/" + reminderId
    spacing: Theme.small
    Accessible.role: Accessible.AlertMessage
    Accessible.name: Array.of(missed ? qsTr("Missed") : "", title, text).filter(part => part.length > 0).join(". ")

    Symbol {
        shape: root.symbol
        color: Theme.ink
        Layout.preferredWidth: 28
        Layout.preferredHeight: 28
    }
    Column {
        Layout.fillWidth: true

        Text {
            width: parent.width
            text: root.missed ? qsTr("Missed: %1").arg(root.title) : root.title
            color: Theme.ink
            font { pixelSize: root.narrow ? Theme.bodySize : Theme.titleSize; bold: true }
            wrapMode: Text.Wrap
            textFormat: Text.PlainText
            Accessible.ignored: true
        }
        Text {
            width: parent.width
            visible: text.length > 0
            text: root.text
            color: Theme.inkMuted
            font.pixelSize: root.narrow ? Theme.captionSize : Theme.bodySize
            wrapMode: Text.Wrap
            textFormat: Text.PlainText
            Accessible.ignored: true
        }
    }
    ActionButton {
        objectName: "openReminder"
        visible: !root.narrow
        text: qsTr("Show")
        spoken: qsTr("Show: %1").arg(root.title)
        onClicked: root.opened()
    }
    ActionButton {
        objectName: "laterReminder"
        symbol: Symbol.Hourglass
        text: root.narrow ? "" : qsTr("In 10 min")
        spoken: qsTr("Again in 10 minutes: %1").arg(root.title)
        onClicked: root.later()
    }
    ActionButton {
        objectName: "seenReminder"
        symbol: Symbol.Done
        text: root.narrow ? "" : qsTr("Seen to")
        spoken: qsTr("Seen to: %1").arg(root.title)
        onClicked: root.seen()
    }
}
