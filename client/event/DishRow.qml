pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Event

// One dish of a course, with the guests it collides with.
Item {
    id: root

    required property EventController dinner
    required property string dishId
    required property string name
    required property string courseId
    required property string cookId
    required property string cookName
    required property int servings
    required property string servingsText
    required property string collisions
    required property bool grave
    required property string problem
    property bool open: false

    objectName: "dish/" + dishId
    implicitHeight: column.height + Theme.small
    Accessible.role: Accessible.ListItem
    Accessible.name: Array.of(name, servingsText, cookName, collisions).filter(part => part.length > 0).join(", ")

    Column {
        id: column
        width: parent.width
        spacing: 2

        Item {
            width: parent.width
            height: Math.max(title.implicitHeight, root.dinner.editing ? Theme.target : 0)

            Text {
                id: title
                width: parent.width - (root.dinner.editing ? buttons.width + Theme.small : 0)
                anchors.verticalCenter: parent.verticalCenter
                text: root.cookName.length > 0 ? qsTr("%1 · %2 · %3").arg(root.name).arg(root.servingsText).arg(root.cookName) : qsTr("%1 · %2").arg(root.name).arg(root.servingsText)
                color: Theme.ink
                font.pixelSize: Theme.bodySize
                wrapMode: Text.Wrap
                textFormat: Text.PlainText
            }
            Row {
                id: buttons
                anchors.right: parent.right
                visible: root.dinner.editing
                spacing: Theme.tiny

                ActionButton {
                    objectName: "changeDish"
                    symbol: Symbol.Cook
                    spoken: qsTr("Who makes %1, and for how many").arg(root.name)
                    onClicked: root.open = !root.open
                }
                ActionButton {
                    objectName: "removeDish"
                    symbol: Symbol.Close
                    spoken: qsTr("Take out %1").arg(root.name)
                    onClicked: root.dinner.removeDish(root.dishId)
                }
            }
        }
        Row {
            visible: root.collisions.length > 0
            width: parent.width
            spacing: Theme.small

            Symbol {
                width: 18
                height: 18
                shape: root.grave ? Symbol.Refused : Symbol.Paper
                color: root.grave ? Theme.late : Theme.inkMuted
            }
            WordsText {
                width: column.width - 26
                text: root.collisions
                font.pixelSize: Theme.captionSize
            }
        }
        Row {
            visible: root.problem.length > 0
            width: parent.width
            spacing: Theme.small

            Symbol {
                width: 18
                height: 18
                shape: Symbol.Refused
                color: Theme.late
            }
            WordsText {
                width: column.width - 26
                text: root.problem
                color: Theme.late
            }
        }
        Flow {
            visible: root.open && root.dinner.editing
            width: parent.width
            spacing: Theme.small

            ChoiceChip {
                text: qsTr("Anyone")
                chosen: root.cookId.length === 0
                onClicked: root.dinner.setDishCook(root.dishId, "")
            }
            Repeater {
                model: root.open ? root.dinner.cooks : null

                ChoiceChip {
                    required property string memberId
                    required property string name
                    required property bool cooks

                    visible: cooks
                    text: name
                    symbol: Symbol.Cook
                    chosen: memberId === root.cookId
                    onClicked: root.dinner.setDishCook(root.dishId, memberId)
                }
            }
            NumberEntry {
                width: 220
                label: qsTr("For how many (0: everybody)")
                value: root.servings
                from: 0
                to: 200
                onEdited: value => root.dinner.setDishServings(root.dishId, value)
            }
        }
    }
}
