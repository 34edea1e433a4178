pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Session
import Suppertide.Timeline
import Suppertide.Shell

// The window: which event, the screens, and what was just said.
Window {
    id: root

    required property HouseholdSession session
    required property Timeline timeline
    required property bool dark
    required property bool mirrored
    // The key of the screen to begin with.
    required property string screen
    readonly property bool planWanted: {
        for (let i = 0; i < bar.screens.length; ++i)
            if (bar.screens[i].key === root.screen)
                return bar.screens[i].needsPlan
        return false
    }
    readonly property bool narrow: width < Theme.narrowWidth

    visible: true
    minimumWidth: 320
    minimumHeight: 400
    color: Theme.surface
    title: timeline.title.length > 0 ? qsTr("%1 – Suppertide").arg(timeline.title) : qsTr("Suppertide")

    LayoutMirroring.enabled: root.mirrored
    LayoutMirroring.childrenInherit: true

    Binding {
        target: Theme
        property: "dark"
        value: root.dark
    }
    EventHeader {
        id: header
        anchors { left: parent.left; right: parent.right; top: parent.top }
        session: root.session
        timeline: root.timeline
        narrow: root.narrow
    }
    ScreenBar {
        id: bar
        visible: screens.length > 1
        anchors {
            left: parent.left
            top: root.narrow ? undefined : header.bottom
            bottom: parent.bottom
        }
        width: root.narrow ? parent.width : implicitWidth
        height: root.narrow ? implicitHeight : parent.height - header.height
        narrow: root.narrow
        chosen: root.screen
        screens: [timelineScreen]
        onWanted: key => root.screen = key
    }
    Item {
        id: frame
        anchors {
            left: bar.visible && !root.narrow ? bar.right : parent.left
            right: parent.right
            top: header.bottom
            bottom: bar.visible && root.narrow ? bar.top : parent.bottom
        }

        Screen {
            id: timelineScreen
            key: "timeline"
            name: qsTr("Timeline")
            symbol: Symbol.Lanes
            chosen: root.screen
            needsPlan: true
            visible: here && !nothing.visible
            page: "qrc:/qt/qml/Suppertide/Timeline/TimelinePage.qml"
            given: ({ timeline: root.timeline })
        }
        PlanMissing {
            id: nothing
            anchors.fill: parent
            visible: !root.session.known || (root.planWanted && !root.timeline.hasPlan)
            session: root.session
            timeline: root.timeline
        }
    }
    NoticeBar {
        id: notice
        objectName: "notice"
        anchors { bottom: frame.bottom; horizontalCenter: parent.horizontalCenter; bottomMargin: Theme.large }
        width: Math.min(implicitWidth, parent.width - 2 * Theme.medium)

        function say(words: string): void {
            text = words
            noticeEnd.restart()
        }
    }
    Timer {
        id: noticeEnd
        interval: 8000
        onTriggered: notice.text = ""
    }
    Connections {
        target: root.timeline
        function onChanged(text: string): void {
            notice.say(text)
        }
    }
    Connections {
        target: root.session
        function onFailed(text: string): void {
            notice.say(text)
        }
    }
}
