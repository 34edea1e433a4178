pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Tasks

// Who takes a task instead.
Column {
    id: root

    required property TasksController tasks
    signal chosen(memberId: string)
    signal closed()

    spacing: Theme.small
    Keys.onEscapePressed: closed()

    SectionTitle {
        width: parent.width
        text: qsTr("Who takes it?")
    }
    Flow {
        width: parent.width
        spacing: Theme.small

        Repeater {
            model: root.tasks.others

            ActionButton {
                required property string cookId
                required property string name
                required property string doing

                objectName: "handTo/" + cookId
                width: Math.min(implicitWidth, root.width)
                text: qsTr("%1 – %2").arg(name).arg(doing)
                spoken: qsTr("Hand over to %1, now: %2").arg(name).arg(doing)
                onClicked: root.chosen(cookId)
            }
        }
        ActionButton {
            symbol: Symbol.Close
            spoken: qsTr("Keep it")
            onClicked: root.closed()
        }
    }
}
