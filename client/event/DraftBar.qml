import QtQuick
import Suppertide.Ui
import Suppertide.Event

// What can be done with the event; while it is changed, how the change stands and what becomes of it.
Rectangle {
    id: root

    required property EventController dinner
    readonly property string state_: dinner.trouble.length > 0 ? dinner.trouble : dinner.differences.count > 0 ? qsTr("Two versions: keep yours over theirs, or take theirs.") : dinner.checking ? qsTr("Checking…") : dinner.problemCount > 0 ? qsTr("To put right first: %1").arg(dinner.problemCount) : qsTr("Nobody else sees this yet.")

    visible: dinner.mayEdit
    implicitHeight: visible ? flow.height + 2 * Theme.small : 0
    height: implicitHeight
    color: dinner.editing ? Theme.raised : Theme.surface

    Rectangle {
        width: parent.width
        height: 1
        color: Theme.divider
    }
    Flow {
        id: flow
        x: Theme.medium
        y: Theme.small
        width: parent.width - 2 * Theme.medium
        spacing: Theme.small

        WordsText {
            width: parent.width
            visible: root.dinner.editing
            text: root.state_
            color: root.dinner.trouble.length > 0 || root.dinner.problemCount > 0 ? Theme.late : Theme.inkMuted
            Accessible.role: root.dinner.trouble.length > 0 ? Accessible.AlertMessage : Accessible.StaticText
        }
        WordsText {
            width: parent.width
            visible: !root.dinner.editing && root.dinner.trouble.length > 0
            text: root.dinner.trouble
            color: Theme.late
        }
        ActionButton {
            objectName: "keepEvent"
            visible: root.dinner.editing
            enabled: root.dinner.problemCount === 0
            strong: true
            symbol: Symbol.Done
            text: root.dinner.isNew ? qsTr("Make this event") : root.dinner.differences.count > 0 ? qsTr("Keep mine") : qsTr("Keep the change")
            onClicked: root.dinner.keep()
        }
        ActionButton {
            objectName: "putBack"
            visible: root.dinner.editing
            height: Theme.target + Theme.medium
            symbol: Symbol.Undo
            text: root.dinner.differences.count > 0 ? qsTr("Take theirs") : qsTr("Put it back")
            onClicked: root.dinner.putBack()
        }
        ActionButton {
            objectName: "changeEvent"
            visible: !root.dinner.editing && root.dinner.hasEvent
            symbol: Symbol.Hands
            text: qsTr("Change")
            spoken: qsTr("Change this event")
            onClicked: root.dinner.edit()
        }
        ActionButton {
            objectName: "copyEvent"
            visible: !root.dinner.editing && root.dinner.hasEvent
            symbol: Symbol.Paper
            text: qsTr("Again a week later")
            spoken: qsTr("Copy this event to a week later")
            onClicked: root.dinner.copy(7)
        }
        ActionButton {
            objectName: "newEvent"
            visible: !root.dinner.editing && root.dinner.mayMake
            symbol: Symbol.Plus
            text: qsTr("New event")
            onClicked: root.dinner.makeNew()
        }
    }
}
