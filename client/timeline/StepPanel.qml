pragma ComponentBehavior: Bound
import QtQuick
import QtQuick.Controls.Basic
import Suppertide.Ui
import Suppertide.Words
import Suppertide.Planning
import Suppertide.Timeline

// Everything about the chosen step.
Rectangle {
    id: root

    required property Timeline timeline
    required property Planning planning
    readonly property stepDetails step: timeline.details

    color: Theme.raised
    border.color: Theme.outline
    Accessible.role: Accessible.Pane
    Accessible.name: root.step.title

    Keys.onEscapePressed: timeline.movingId.length > 0 ? timeline.leaveMove() : timeline.closeDetails()

    ActionButton {
        id: close
        objectName: "closeDetails"
        anchors { top: parent.top; right: parent.right; margins: Theme.small }
        symbol: Symbol.Close
        spoken: qsTr("Close")
        onClicked: root.timeline.closeDetails()
    }
    ScrollView {
        anchors { fill: parent; margins: Theme.medium; topMargin: Theme.medium }
        contentWidth: availableWidth

        Column {
            width: root.width - 2 * Theme.medium
            spacing: Theme.small + Theme.tiny

            Column {
                width: parent.width - close.width
                spacing: Theme.tiny

                Text {
                    width: parent.width
                    text: root.step.title
                    color: Theme.ink
                    font { pixelSize: Theme.titleSize; bold: true }
                    wrapMode: Text.Wrap
                    textFormat: Text.PlainText
                }
                Row {
                    spacing: Theme.small

                    Symbol {
                        shape: root.step.symbol
                        color: Theme.inkMuted
                    }
                    Text {
                        width: root.width - close.width - 4 * Theme.medium
                        text: root.step.dish.length > 0 ? qsTr("%1 · %2").arg(root.step.kind).arg(root.step.dish) : root.step.kind
                        color: Theme.inkMuted
                        font.pixelSize: Theme.bodySize
                        wrapMode: Text.Wrap
                        textFormat: Text.PlainText
                    }
                }
            }
            StepMoveRow {
                visible: root.planning.mayPlan && !root.step.done
                timeline: root.timeline
                whatIf: root.planning.whatIf
            }
            FactRow { label: qsTr("State"); value: root.step.state; strong: root.step.late }
            FactRow { label: qsTr("When"); value: root.step.when }
            FactRow { label: qsTr("Cook"); value: root.step.cook }
            FactRow { label: qsTr("Where"); value: root.step.where }
            FactRow { label: qsTr("Dough"); value: root.step.dough }
            FactRow { label: qsTr("Why then"); value: root.step.why }
            FactRow { label: qsTr("Slack"); value: root.step.slack }
            FactRow { label: qsTr("Weigh"); value: root.step.weighings }
            FactRow { label: qsTr("What to do"); value: root.step.instructions }
            FactRow { label: qsTr("Take care"); value: root.step.cautions; symbol: Symbol.Refused }
        }
    }
}
