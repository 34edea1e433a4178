pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui

// Two bakes that wanted one oven, and what became of it.
Card {
    id: root

    required property string wanted
    required property string settled
    // Each with "stepId", "minutes", "words".
    required property var choices
    property bool mayAsk: false
    signal asked(stepId: string, minutes: real)

    padding: Theme.small + Theme.tiny
    Accessible.role: Accessible.ListItem
    Accessible.name: qsTr("%1 %2").arg(wanted).arg(settled)

    WordsText {
        width: root.room
        text: root.wanted
        color: Theme.inkMuted
        Accessible.ignored: true
    }
    Row {
        width: root.room
        spacing: Theme.small

        Symbol {
            shape: Symbol.Done
            color: Theme.live
        }
        WordsText {
            width: root.room - 28
            text: root.settled
            Accessible.ignored: true
        }
    }
    Flow {
        width: root.room
        visible: root.mayAsk && root.choices.length > 0
        spacing: Theme.small

        Repeater {
            model: root.mayAsk ? root.choices : []

            ActionButton {
                required property var modelData

                objectName: "ask/" + modelData.stepId
                width: Math.min(implicitWidth, root.room)
                text: modelData.words
                onClicked: root.asked(modelData.stepId, modelData.minutes)
            }
        }
    }
}
