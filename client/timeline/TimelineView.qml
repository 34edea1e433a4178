pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Timeline

// The shared line of time: axis, lanes, and the ways to move along it.
//
// Time runs from left to right in every language, as on a chart; names and
// panels mirror.
FocusScope {
    id: root

    required property Timeline timeline
    // Whether planning anew is offered.
    property bool mayPlan: false
    signal planWanted
    readonly property bool narrow: width < Theme.narrowWidth
    readonly property int headerWidth: narrow ? 0 : 168

    Keys.onPressed: event => event.accepted = keys.press(event.key, event.modifiers)

    TimelineKeys {
        id: keys
        timeline: root.timeline
    }

    Binding {
        target: root.timeline
        property: "viewWidth"
        value: viewport.width - root.headerWidth
    }

    TimelineBar {
        id: bar
        anchors { left: parent.left; right: parent.right; top: parent.top }
        timeline: root.timeline
        narrow: root.narrow
        mayPlan: root.mayPlan
        onPlanWanted: root.planWanted()
    }

    TimelineGestures {
        id: viewport
        anchors { left: parent.left; right: parent.right; top: bar.bottom; bottom: parent.bottom }
        clip: true
        timeline: root.timeline
        headerWidth: root.headerWidth

        Item {
            x: root.headerWidth
            y: axis.hoursHeight
            width: parent.width - root.headerWidth
            height: parent.height - y
            clip: true

            GridItem {
                anchors.fill: parent
                timeline: root.timeline
                nightColor: Theme.night
                tickColor: Theme.tick
                midnightColor: Theme.divider
                servingColor: Theme.serving
            }
            NowLine {
                x: root.timeline.offset + root.timeline.nowMinute * root.timeline.pixelsPerMinute
                height: parent.height
                visible: root.timeline.nowKnown
            }
        }
        ListView {
            id: lanes
            objectName: "lanes"
            anchors { fill: parent; topMargin: axis.height }
            model: root.timeline.lanes
            reuseItems: true
            cacheBuffer: 2000
            boundsBehavior: Flickable.StopAtBounds
            bottomMargin: Theme.large + (leftOut.visible ? leftOut.implicitHeight : 0)
            clip: true

            function tellInSight(): void {
                const last = indexAt(1, contentY + height - 1)
                root.timeline.lanes.setInSight(Math.max(0, indexAt(1, contentY)), last < 0 ? count : last)
            }
            onContentYChanged: tellInSight()
            onContentHeightChanged: tellInSight()
            onHeightChanged: tellInSight()
            onCountChanged: tellInSight()
            // A footer would be a component of its own, which cannot be made in here.
            Text {
                id: leftOut
                y: lanes.contentHeight
                visible: text.length > 0
                width: lanes.width
                padding: Theme.medium
                text: root.timeline.leftOutText
                color: Theme.ink
                font.pixelSize: Theme.bodySize
                wrapMode: Text.Wrap
                textFormat: Text.PlainText
            }
            delegate: LaneDelegate {
                width: lanes.width
                timeline: root.timeline
                headerWidth: root.headerWidth
            }
        }
        TimeAxis {
            id: axis
            width: parent.width
            timeline: root.timeline
            headerWidth: root.headerWidth
        }
        TimelineWheel {
            anchors.fill: parent
            timeline: root.timeline
            headerWidth: root.headerWidth
        }
    }
}
