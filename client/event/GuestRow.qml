pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Event

// One guest with their needs; open while they are changed.
Item {
    id: root

    required property EventController dinner
    required property string guestId
    required property string name
    required property real portion
    required property var needs
    required property string needsText
    required property string problem
    property bool open: false

    objectName: "guest/" + guestId
    implicitHeight: column.height + Theme.tiny
    Accessible.role: Accessible.ListItem
    Accessible.name: needsText.length > 0 ? qsTr("%1: %2").arg(name).arg(needsText) : name

    Column {
        id: column
        width: parent.width
        spacing: Theme.tiny

        Row {
            width: parent.width
            visible: !root.dinner.editing
            spacing: Theme.small

            Symbol {
                width: 18
                height: 18
                shape: root.needsText.length > 0 ? Symbol.Refused : Symbol.Cook
                color: root.needsText.length > 0 ? Theme.late : Theme.inkMuted
            }
            WordsText {
                width: column.width - 26
                text: root.needsText.length > 0 ? qsTr("%1 – %2").arg(root.name).arg(root.needsText) : root.portion === 1 ? root.name : qsTr("%1 (%2 % of a portion)").arg(root.name).arg(Math.round(root.portion * 100))
            }
        }
        Item {
            width: parent.width
            height: Math.max(Theme.target, title.implicitHeight)
            visible: root.dinner.editing

            WordsText {
                id: title
                width: parent.width - buttons.width - Theme.small
                anchors.verticalCenter: parent.verticalCenter
                text: root.needsText.length > 0 ? qsTr("%1 – %2").arg(root.name).arg(root.needsText) : root.name
            }
            Row {
                id: buttons
                anchors.right: parent.right
                spacing: Theme.tiny

                ActionButton {
                    objectName: "changeGuest"
                    symbol: root.open ? Symbol.Done : Symbol.Plus
                    text: root.open ? qsTr("Close") : qsTr("Needs")
                    spoken: qsTr("Needs of %1").arg(root.name)
                    onClicked: root.open = !root.open
                }
                ActionButton {
                    objectName: "removeGuest"
                    symbol: Symbol.Close
                    spoken: qsTr("Take out %1").arg(root.name)
                    onClicked: root.dinner.removeGuest(root.guestId)
                }
            }
        }
        WordsText {
            width: parent.width
            visible: root.problem.length > 0
            text: root.problem
            color: Theme.late
        }
        NeedPicks {
            width: parent.width
            visible: root.open && root.dinner.editing
            dinner: root.dinner
            guestId: root.guestId
            guestName: root.name
            portion: root.portion
            needs: root.needs
        }
    }
}
