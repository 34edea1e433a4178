pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Session

// What this person was reminded of and has not seen to yet: the newest first, the rest behind a button.
Rectangle {
    id: root

    required property Reminders reminders
    required property bool narrow
    property bool all: false
    readonly property int count: reminders.due.count
    signal wanted(kind: int, taskId: string)

    visible: count > 0
    implicitHeight: visible ? Math.min(column.height + Theme.small, mostHeight) : 0
    property real mostHeight: 400
    color: Theme.raised
    Accessible.role: Accessible.Pane
    Accessible.name: qsTr("Reminders")
    onCountChanged: if (count < 2) all = false

    Rectangle {
        width: 6
        height: parent.height
        color: Theme.accentOutline
    }
    Rectangle {
        anchors.bottom: parent.bottom
        width: parent.width
        height: 1
        color: Theme.divider
    }
    Flickable {
        anchors { fill: parent; leftMargin: Theme.medium; rightMargin: Theme.medium; topMargin: Theme.tiny; bottomMargin: Theme.tiny }
        contentHeight: column.height
        boundsBehavior: Flickable.StopAtBounds
        clip: true

        Column {
            id: column
            width: parent.width
            spacing: Theme.tiny

            Repeater {
                model: root.reminders.due

                ReminderRow {
                    required property int index

                    width: column.width
                    visible: root.all || index === 0
                    narrow: root.narrow
                    onSeen: root.reminders.settle(reminderId)
                    onLater: root.reminders.snooze(reminderId, 10)
                    onOpened: root.wanted(kind, taskId)
                }
            }
            Flow {
                width: parent.width
                visible: root.count > 1
                spacing: Theme.small

                ActionButton {
                    objectName: "moreReminders"
                    symbol: root.all ? Symbol.Up : Symbol.Down
                    text: root.all ? qsTr("Only the newest") : qsTr("%n more", "", root.count - 1)
                    spoken: root.all ? qsTr("Show only the newest reminder") : qsTr("Show %n more reminders", "", root.count - 1)
                    onClicked: root.all = !root.all
                }
                ActionButton {
                    objectName: "allSeen"
                    symbol: Symbol.Done
                    text: qsTr("All seen to")
                    onClicked: root.reminders.settleAll()
                }
            }
        }
    }
}
