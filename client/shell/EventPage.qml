import QtQuick
import Suppertide.Ui
import Suppertide.Timeline
import Suppertide.Shell

// One event: its head, its timeline, the chosen step beside or below it.
FocusScope {
    id: root

    required property SessionController session
    readonly property Timeline timeline: session.timeline
    readonly property bool narrow: width < Theme.narrowWidth
    readonly property bool panelOpen: timeline.detailsOpen

    EventHeader {
        id: header
        anchors { left: parent.left; right: parent.right; top: parent.top }
        session: root.session
        narrow: root.narrow
    }
    TimelineView {
        id: view
        anchors {
            left: parent.left
            right: parent.right
            rightMargin: root.panelOpen && !root.narrow ? panel.width : 0
            top: header.bottom
            bottom: parent.bottom
            bottomMargin: root.panelOpen && root.narrow ? panel.height : 0
        }
        focus: true
        visible: root.timeline.hasPlan
        timeline: root.timeline
    }
    PlanMissing {
        anchors { left: parent.left; right: parent.right; top: header.bottom; bottom: parent.bottom }
        visible: !root.timeline.hasPlan
        session: root.session
    }
    StepPanel {
        id: panel
        visible: root.panelOpen
        width: root.narrow ? parent.width : Math.min(360, parent.width * 0.4)
        height: root.narrow ? Math.round(parent.height * 0.52) : parent.height - header.height
        anchors { right: parent.right; bottom: parent.bottom }
        timeline: root.timeline
    }
    NoticeBar {
        id: notice
        objectName: "notice"
        anchors { bottom: parent.bottom; horizontalCenter: parent.horizontalCenter; bottomMargin: Theme.large }
        width: Math.min(implicitWidth, parent.width - 2 * Theme.medium)
    }
    Timer {
        id: noticeEnd
        interval: 8000
        onTriggered: notice.text = ""
    }
    Connections {
        target: root.timeline
        function onChanged(text: string): void {
            notice.text = text
            noticeEnd.restart()
        }
    }
}
