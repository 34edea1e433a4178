import QtQuick
import Suppertide.Ui
import Suppertide.Timeline

// The shared timeline of one event, the chosen step beside or below it.
FocusScope {
    id: root

    required property Timeline timeline
    readonly property bool narrow: width < Theme.narrowWidth
    readonly property bool panelOpen: timeline.detailsOpen

    TimelineView {
        id: view
        anchors {
            left: parent.left
            right: parent.right
            rightMargin: root.panelOpen && !root.narrow ? panel.width : 0
            top: parent.top
            bottom: parent.bottom
            bottomMargin: root.panelOpen && root.narrow ? panel.height : 0
        }
        focus: true
        visible: root.timeline.hasPlan
        timeline: root.timeline
    }
    StepPanel {
        id: panel
        visible: root.panelOpen
        width: root.narrow ? parent.width : Math.min(360, parent.width * 0.4)
        height: root.narrow ? Math.round(parent.height * 0.52) : parent.height
        anchors { right: parent.right; bottom: parent.bottom }
        timeline: root.timeline
    }
}
