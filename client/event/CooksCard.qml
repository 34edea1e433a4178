pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Event

// Who cooks at this event.
Card {
    id: root

    required property EventController dinner

    SectionTitle {
        text: qsTr("Cooks")
        topPadding: 0
    }
    Repeater {
        model: root.dinner.cooks

        Item {
            id: cook

            required property string memberId
            required property string name
            required property bool cooks
            required property string hours

            width: root.room
            height: shown ? (root.dinner.editing ? Math.max(Theme.target, words.implicitHeight) : words.implicitHeight) : 0
            visible: shown
            readonly property bool shown: cooks || root.dinner.editing

            ChoiceChip {
                id: pick
                objectName: "cooks/" + cook.memberId
                visible: root.dinner.editing
                text: cook.name
                chosen: cook.cooks
                Accessible.role: Accessible.CheckBox
                onClicked: root.dinner.setCooks(cook.memberId, !cook.cooks)
            }
            WordsText {
                id: words
                x: root.dinner.editing ? pick.width + Theme.small : 0
                width: parent.width - x
                anchors.verticalCenter: parent.verticalCenter
                text: root.dinner.editing ? cook.hours : qsTr("%1 – %2").arg(cook.name).arg(cook.hours)
                color: root.dinner.editing ? Theme.inkMuted : Theme.ink
            }
        }
    }
}
