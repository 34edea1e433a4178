import QtQuick
import Suppertide.Ui
import Suppertide.Planning
import Suppertide.Timeline

// Ways to ask what another time would mean: the drag's twin for one finger.
Column {
    id: root

    required property Timeline timeline
    required property WhatIf whatIf
    readonly property string stepId: timeline.details.id
    readonly property bool moving: timeline.movingId === stepId && timeline.movingMinutes !== 0
    // Read anew when the plan has changed.
    readonly property bool pinned: timeline.details.pinned

    width: parent.width
    spacing: Theme.tiny

    Text {
        text: qsTr("What if it stood elsewhere?")
        color: Theme.inkMuted
        font { pixelSize: Theme.captionSize; bold: true }
    }
    Flow {
        width: parent.width
        spacing: Theme.small

        ActionButton {
            objectName: "moveEarlier"
            symbol: Symbol.Minus
            text: qsTr("5 min")
            spoken: qsTr("5 minutes earlier")
            onClicked: root.timeline.moveChosen(-5)
        }
        ActionButton {
            objectName: "moveLater"
            symbol: Symbol.Plus
            text: qsTr("5 min")
            spoken: qsTr("5 minutes later")
            onClicked: root.timeline.moveChosen(5)
        }
        ActionButton {
            objectName: "askMove"
            visible: root.moving
            text: qsTr("What would move?")
            onClicked: root.timeline.askMove()
        }
        ActionButton {
            objectName: "leaveMove"
            visible: root.moving
            symbol: Symbol.Close
            spoken: qsTr("Leave it where it is")
            onClicked: root.timeline.leaveMove()
        }
        ActionButton {
            objectName: "pin"
            visible: !root.moving
            symbol: Symbol.Pin
            text: root.pinned ? qsTr("Let go") : qsTr("Keep it there")
            spoken: root.pinned ? qsTr("Leave its time to the planner") : qsTr("Keep it at this time, whatever else moves")
            onClicked: root.pinned ? root.whatIf.askFree(root.stepId) : root.whatIf.ask(root.stepId, 0)
        }
    }
    Text {
        width: root.width
        text: root.moving ? root.timeline.movingText : qsTr("Or drag its bar; on a keyboard, Control with the arrows.")
        color: root.moving ? Theme.ink : Theme.inkMuted
        font { pixelSize: root.moving ? Theme.bodySize : Theme.captionSize; bold: root.moving }
        wrapMode: Text.Wrap
    }
}
