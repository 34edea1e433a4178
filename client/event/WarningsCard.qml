pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Event

// What to look to: guests and dishes that collide, amounts far from the usual.
Card {
    id: root

    required property EventController dinner

    border { color: Theme.outline; width: 2 }

    SectionTitle {
        text: qsTr("Look to this")
        topPadding: 0
    }
    Repeater {
        model: root.dinner.warnings

        Row {
            id: warning

            required property string words
            required property bool grave

            width: root.room
            spacing: Theme.small
            Accessible.role: Accessible.ListItem
            Accessible.name: words

            Symbol {
                width: 18
                height: 18
                shape: warning.grave ? Symbol.Refused : Symbol.Bell
                color: warning.grave ? Theme.late : Theme.inkMuted
            }
            WordsText {
                width: root.room - 26
                text: warning.words
                font.bold: warning.grave
                Accessible.ignored: true
            }
        }
    }
    WordsText {
        width: root.room
        text: qsTr("No medical advice: ask the guest, and read the label of what you buy.")
        color: Theme.inkMuted
        font.pixelSize: Theme.captionSize
    }
}
