pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Event

// Who comes, and what they cannot or will not eat.
Card {
    id: root

    required property EventController dinner
    property string draft

    function add(): void {
        root.dinner.addGuest(root.draft)
        root.draft = ""
        entry.take()
    }

    SectionTitle {
        text: root.dinner.guestText
        topPadding: 0
    }
    WordsText {
        width: root.room
        visible: root.dinner.guests.count === 0
        text: root.dinner.editing ? qsTr("Write a name and press Add. Needs such as “gluten” or “vegan” come after it.") : qsTr("Guests and their needs are checked against every dish.")
        color: Theme.inkMuted
    }
    Repeater {
        model: root.dinner.guests

        GuestRow {
            width: root.room
            dinner: root.dinner
        }
    }
    Item {
        width: root.room
        height: entry.implicitHeight
        visible: root.dinner.editing

        TextEntry {
            id: entry
            objectName: "newGuest"
            width: parent.width - add.width - Theme.small
            label: qsTr("Another guest")
            longest: 60
            value: root.draft
            onEdited: value => root.draft = value
            onAccepted: root.add()
        }
        ActionButton {
            id: add
            objectName: "addGuest"
            anchors { right: parent.right; bottom: parent.bottom }
            symbol: Symbol.Plus
            text: qsTr("Add")
            enabled: root.draft.trim().length > 0
            onClicked: root.add()
        }
    }
}
