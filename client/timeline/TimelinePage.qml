pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Planning
import Suppertide.Timeline

// The shared timeline of one event: how planning goes above it; beside or below it what is asked
// about it, or the chosen step.
FocusScope {
    id: root

    required property Timeline timeline
    required property Planning planning
    readonly property bool narrow: width < Theme.narrowWidth
    readonly property bool askedOpen: planning.whatIf.open
    readonly property bool clashOpen: planning.remedies.open && !askedOpen
    readonly property bool stepOpen: timeline.detailsOpen && !askedOpen && !clashOpen
    readonly property bool panelOpen: askedOpen || clashOpen || stepOpen

    PlanBar {
        id: bar
        anchors { left: parent.left; right: parent.right; top: parent.top }
        planning: root.planning
    }
    TimelineView {
        id: view
        anchors {
            left: parent.left
            right: parent.right
            rightMargin: root.panelOpen && !root.narrow ? panel.width : 0
            top: bar.bottom
            bottom: parent.bottom
            bottomMargin: root.panelOpen && root.narrow ? panel.height : 0
        }
        focus: true
        visible: root.timeline.hasPlan
        timeline: root.timeline
        mayPlan: root.planning.mayPlan && !root.planning.run.running
        onPlanWanted: root.planning.run.begin()
    }
    FocusScope {
        id: panel
        visible: root.panelOpen
        width: root.narrow ? parent.width : Math.min(380, parent.width * 0.42)
        height: root.narrow ? Math.round(parent.height * 0.52) : parent.height - bar.height
        anchors { right: parent.right; bottom: parent.bottom }

        StepPanel {
            anchors.fill: parent
            visible: root.stepOpen
            timeline: root.timeline
            planning: root.planning
        }
        WhatIfPanel {
            anchors.fill: parent
            visible: root.askedOpen
            whatIf: root.planning.whatIf
        }
        ClashPanel {
            anchors.fill: parent
            visible: root.clashOpen
            search: root.planning.remedies
        }
    }
    Connections {
        target: root.timeline
        function onMoveWanted(stepId: string, minutesLater: double): void {
            root.planning.whatIf.ask(stepId, minutesLater)
        }
        function onMoveLeft(): void {
            if (root.planning.whatIf.open)
                root.planning.whatIf.leave()
            else
                root.planning.remedies.choose(0)
        }
        function onMoveAccepted(): void {
            if (root.planning.whatIf.open)
                root.planning.whatIf.apply()
            else
                root.planning.remedies.apply()
        }
    }
    Connections {
        target: root.planning.whatIf
        function onLeft(): void {
            root.timeline.endMove()
        }
    }
}
