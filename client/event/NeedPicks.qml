pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Event

// The needs of one guest: a tap on one makes it stricter or milder, usual ones are added by a tap.
Card {
    id: root

    required property EventController dinner
    required property string guestId
    required property string guestName
    required property real portion
    required property var needs
    property string draft

    color: Theme.sunken

    function has(name: string): bool {
        for (const need of root.needs)
            if (need.name === name)
                return true
        return false
    }

    Repeater {
        model: root.needs

        Row {
            id: need

            required property var modelData
            required property int index

            width: root.room
            spacing: Theme.small

            ActionButton {
                objectName: "turnNeed"
                width: root.room - Theme.target - Theme.small
                symbol: Symbol.Refused
                text: qsTr("%1: %2").arg(need.modelData.name).arg(need.modelData.words)
                spoken: qsTr("%1: %2. Change how strictly").arg(need.modelData.name).arg(need.modelData.words)
                onClicked: root.dinner.turnSeverity(root.guestId, need.index)
            }
            ActionButton {
                objectName: "removeNeed"
                symbol: Symbol.Close
                spoken: qsTr("Take out %1").arg(need.modelData.name)
                onClicked: root.dinner.removeNeed(root.guestId, need.index)
            }
        }
    }
    Flow {
        width: root.room
        spacing: Theme.tiny

        Repeater {
            model: [
                {name: "gluten", words: qsTr("gluten")},
                {name: "milk", words: qsTr("milk")},
                {name: "egg", words: qsTr("egg")},
                {name: "tree nuts", words: qsTr("tree nuts")},
                {name: "peanut", words: qsTr("peanut")},
                {name: "fish", words: qsTr("fish")},
                {name: "soy", words: qsTr("soy")},
                {name: "vegetarian", words: qsTr("vegetarian")},
                {name: "vegan", words: qsTr("vegan")}
            ]

            ActionButton {
                required property var modelData

                objectName: "need/" + modelData.name
                visible: !root.has(modelData.name)
                symbol: Symbol.Plus
                text: modelData.words
                spoken: qsTr("%1: %2").arg(root.guestName).arg(modelData.words)
                onClicked: root.dinner.addNeed(root.guestId, modelData.name)
            }
        }
    }
    TextEntry {
        objectName: "ownNeed"
        width: root.room
        label: qsTr("Something else, in your own words")
        example: qsTr("beetroot")
        longest: 60
        value: root.draft
        onEdited: value => root.draft = value
        onAccepted: {
            root.dinner.addNeed(root.guestId, root.draft)
            root.draft = ""
        }
    }
    NumberEntry {
        width: root.room
        label: qsTr("Portion against an adult's")
        value: root.portion
        from: 0.25
        to: 3
        step: 0.25
        decimals: 2
        onEdited: value => root.dinner.setPortion(root.guestId, value)
    }
}
