import QtQuick
import QtQuick.Layouts
import Suppertide.Ui
import Suppertide.Planning

// Above the timeline: how planning goes, or what there is to say about the plan.
Rectangle {
    id: root

    required property Planning planning
    readonly property PlanRun run: planning.run
    readonly property bool busy: run.running || run.elsewhere
    readonly property bool quiet: !busy && run.trouble.length === 0 && planning.shortfall.length === 0 && planning.outOfDate.length === 0
    readonly property string words: {
        if (run.running)
            return run.stopping ? qsTr("Stopping; the best plan so far is kept…") : run.soFar
        if (run.elsewhere)
            return qsTr("Somebody is having this event planned. The plan appears here as soon as it is done.")
        if (run.trouble.length > 0)
            return qsTr("It could not be planned: %1").arg(run.trouble)
        if (planning.outOfDate.length > 0)
            return planning.outOfDate
        return planning.shortfall
    }

    implicitHeight: quiet ? 0 : column.implicitHeight + 2 * Theme.small
    visible: !quiet
    color: Theme.raised
    Accessible.role: Accessible.Pane
    Accessible.name: words

    Rectangle {
        anchors { left: parent.left; right: parent.right; bottom: parent.bottom }
        height: 1
        color: Theme.divider
    }
    ColumnLayout {
        id: column
        anchors { left: parent.left; right: parent.right; top: parent.top; margins: Theme.small; leftMargin: Theme.medium; rightMargin: Theme.medium }
        spacing: Theme.tiny

        Flow {
            spacing: Theme.small
            Layout.fillWidth: true

            Symbol {
                id: sign
                height: Theme.target
                shape: root.run.running || root.run.elsewhere ? Symbol.Hourglass : root.planning.shortfall.length > 0 || root.run.trouble.length > 0 ? Symbol.Late : root.planning.outOfDate.length > 0 ? Symbol.Moved : Symbol.Done
                color: Theme.inkMuted
            }
            Text {
                readonly property real besideActions: column.width - sign.width - actions.width - 2 * Theme.small
                width: Math.min(implicitWidth, besideActions < 200 ? column.width - sign.width - Theme.small : besideActions)
                height: Math.max(Theme.target, implicitHeight)
                text: root.words
                color: Theme.ink
                font { pixelSize: Theme.bodySize; bold: true }
                verticalAlignment: Text.AlignVCenter
                wrapMode: Text.Wrap
                textFormat: Text.PlainText
            }
            Row {
                id: actions
                spacing: Theme.small

                ActionButton {
                    objectName: "stopPlanning"
                    visible: root.busy
                    enabled: !root.run.stopping
                    symbol: Symbol.Stop
                    text: qsTr("Stop")
                    spoken: qsTr("Stop planning and keep the best plan so far")
                    onClicked: root.run.stop()
                }
                ActionButton {
                    objectName: "showClash"
                    visible: !root.busy && root.planning.shortfall.length > 0 && root.planning.outOfDate.length === 0
                    text: qsTr("What would help?")
                    onClicked: root.planning.remedies.begin()
                }
                ActionButton {
                    objectName: "adaptPlan"
                    visible: !root.busy && root.planning.outOfDate.length > 0
                    enabled: root.planning.mayPlan
                    text: qsTr("Adapt the plan")
                    spoken: qsTr("Adapt the plan, moving as little as can be")
                    onClicked: root.run.adapt()
                }
            }
        }
        Text {
            visible: root.run.running && text.length > 0
            text: root.run.proven
            color: Theme.inkMuted
            font.pixelSize: Theme.captionSize
            wrapMode: Text.Wrap
            textFormat: Text.PlainText
            Layout.fillWidth: true
        }
        RowLayout {
            visible: root.run.running
            spacing: Theme.small
            Layout.fillWidth: true

            Rectangle {
                implicitHeight: 8
                radius: 4
                color: Theme.sunken
                border.color: Theme.outline
                Layout.fillWidth: true
                Accessible.role: Accessible.ProgressBar
                Accessible.name: qsTr("Planning, %1").arg(root.run.timeText)

                Rectangle {
                    width: Math.max(parent.height, parent.width * root.run.part)
                    height: parent.height
                    radius: 4
                    color: Theme.accentOutline
                }
            }
            Text {
                text: root.run.timeText
                color: Theme.inkMuted
                font.pixelSize: Theme.captionSize
            }
        }
    }
}
