pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Event

// What the event is called, where and on which day it is.
Card {
    id: root

    required property EventController dinner

    visible: dinner.editing || dinner.dayText.length > 0

    Text {
        width: root.room
        visible: !root.dinner.editing
        text: Array.of(root.dinner.dayText, root.dinner.location).filter(part => part.length > 0).join(qsTr(" · "))
        color: Theme.ink
        font { pixelSize: Theme.titleSize; bold: true }
        wrapMode: Text.Wrap
        textFormat: Text.PlainText
        Accessible.role: Accessible.Heading
        Accessible.name: text
    }
    TextEntry {
        objectName: "eventName"
        width: root.room
        visible: root.dinner.editing
        label: qsTr("Name")
        value: root.dinner.name
        problem: root.dinner.problem
        onEdited: value => root.dinner.setName(value)
    }
    TextEntry {
        objectName: "eventPlace"
        width: root.room
        visible: root.dinner.editing
        label: qsTr("Where")
        example: qsTr("the long table in the garden")
        value: root.dinner.location
        onEdited: value => root.dinner.setLocation(value)
    }
    Row {
        width: root.room
        visible: root.dinner.editing
        spacing: Theme.small

        ActionButton {
            objectName: "dayBefore"
            symbol: Symbol.Minus
            spoken: qsTr("A day earlier")
            autoRepeat: true
            onClicked: root.dinner.moveDays(-1)
        }
        WordsText {
            width: Math.min(implicitWidth, root.room - 2 * Theme.target - 2 * Theme.small)
            anchors.verticalCenter: parent.verticalCenter
            text: root.dinner.dayText
            font.bold: true
        }
        ActionButton {
            objectName: "dayAfter"
            symbol: Symbol.Plus
            spoken: qsTr("A day later")
            autoRepeat: true
            onClicked: root.dinner.moveDays(1)
        }
    }
    Flow {
        width: root.room
        visible: root.dinner.editing && root.dinner.kitchens.count > 1
        spacing: Theme.small

        Repeater {
            model: root.dinner.kitchens

            ChoiceChip {
                required property string kitchenId
                required property string name

                text: name
                symbol: Symbol.House
                chosen: kitchenId === root.dinner.kitchenId
                onClicked: root.dinner.setKitchen(kitchenId)
            }
        }
    }
}
