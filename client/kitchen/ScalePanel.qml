pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Kitchen

// The recipe for another number of guests: only looked at, nothing is changed.
Column {
    id: root

    required property Draft draft
    // Only what is looked at is worked out.
    required property bool asking

    width: parent ? parent.width : 0
    spacing: Theme.small

    readonly property ScaledLines scaled: ScaledLines {
        draft: root.draft
        servings: root.asking ? wanted.guests : 0
    }
    NumberEntry {
        id: wanted
        objectName: "scaleGuests"
        property real guests: 12
        width: Math.min(parent.width, 260)
        label: qsTr("For how many guests")
        from: 1
        to: 1000
        decimals: 1
        value: guests
        problem: root.scaled.trouble
        onEdited: value => guests = value
    }
    Text {
        visible: root.scaled.count > 0
        width: parent.width
        text: root.scaled.headline
        color: Theme.ink
        font { pixelSize: Theme.bodySize; bold: true }
        wrapMode: Text.Wrap
    }
    Repeater {
        model: root.scaled

        Row {
            id: line
            required property string name
            required property string shown
            required property string note
            width: root.width
            spacing: Theme.small
            Accessible.role: Accessible.StaticText
            Accessible.name: qsTr("%1 %2, %3").arg(shown).arg(name).arg(note)

            Text {
                width: 110
                text: line.shown
                color: Theme.ink
                font { pixelSize: Theme.bodySize; bold: true }
                horizontalAlignment: Text.AlignRight
                wrapMode: Text.Wrap
            }
            Text {
                width: parent.width - 110 - Theme.small
                text: line.note.length > 0 ? qsTr("%1, %2").arg(line.name).arg(line.note) : line.name
                color: Theme.ink
                font.pixelSize: Theme.bodySize
                wrapMode: Text.Wrap
                textFormat: Text.PlainText
            }
        }
    }
    Repeater {
        model: root.scaled.bakes

        Text {
            required property string modelData
            width: root.width
            text: modelData
            color: Theme.inkMuted
            font.pixelSize: Theme.bodySize
            wrapMode: Text.Wrap
            textFormat: Text.PlainText
        }
    }
}
