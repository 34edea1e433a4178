pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Event

// The event was changed here and elsewhere at the same time: what differs, mine beside theirs.
Card {
    id: root

    required property EventController dinner

    border { color: Theme.late; width: 2 }

    SectionTitle {
        text: root.dinner.otherName.length > 0 ? qsTr("%1 changed this event meanwhile").arg(root.dinner.otherName) : qsTr("This event was changed elsewhere meanwhile")
        topPadding: 0
    }
    Repeater {
        model: root.dinner.differences

        Column {
            id: difference

            required property string what
            required property string mine
            required property string theirs

            width: root.room
            spacing: 2
            Accessible.role: Accessible.ListItem
            Accessible.name: qsTr("%1. Mine: %2. Theirs: %3.").arg(what).arg(mine).arg(theirs)

            Text {
                width: parent.width
                text: difference.what
                color: Theme.inkMuted
                font.pixelSize: Theme.captionSize
                textFormat: Text.PlainText
            }
            Row {
                width: parent.width
                spacing: Theme.medium

                WordsText {
                    width: (parent.width - Theme.medium) / 2
                    text: qsTr("Mine: %1").arg(difference.mine)
                    font.bold: true
                }
                WordsText {
                    width: (parent.width - Theme.medium) / 2
                    text: qsTr("Theirs: %1").arg(difference.theirs)
                }
            }
        }
    }
}
