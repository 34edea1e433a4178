import QtQuick
import Suppertide.Ui

// A label above something to be filled in; below it what is wrong with it, or else a hint.
Item {
    id: root

    required property string label
    property string problem
    property string hint
    default property alias content: slot.data
    // Its name for the ear, where the label stands elsewhere.
    property string spoken: label
    // What the field says of itself to who cannot see it.
    readonly property string spokenState: problem.length > 0 ? problem : hint

    implicitWidth: 240
    implicitHeight: column.implicitHeight

    Column {
        id: column
        width: parent.width
        spacing: Theme.tiny

        Text {
            width: parent.width
            visible: text.length > 0
            text: root.label
            color: Theme.inkMuted
            font { pixelSize: Theme.captionSize; bold: true }
            wrapMode: Text.Wrap
            textFormat: Text.PlainText
            Accessible.ignored: true
        }
        Item {
            id: slot
            width: parent.width
            implicitHeight: childrenRect.height
        }
        Row {
            visible: root.problem.length > 0
            width: parent.width
            spacing: Theme.tiny

            Symbol {
                width: 16
                height: 16
                shape: Symbol.Refused
                color: Theme.late
            }
            Text {
                objectName: "problem"
                width: parent.width - 20
                text: root.problem
                color: Theme.late
                font.pixelSize: Theme.captionSize
                wrapMode: Text.Wrap
                textFormat: Text.PlainText
                Accessible.role: Accessible.AlertMessage
                Accessible.name: text
            }
        }
        Text {
            visible: root.problem.length === 0 && text.length > 0
            width: parent.width
            text: root.hint
            color: Theme.inkMuted
            font.pixelSize: Theme.captionSize
            wrapMode: Text.Wrap
            textFormat: Text.PlainText
            Accessible.ignored: true
        }
    }
}
