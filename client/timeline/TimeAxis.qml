pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Timeline

// Days, hours and the courses, above the lanes.
Rectangle {
    id: root

    required property Timeline timeline
    required property int headerWidth
    readonly property int hoursHeight: hours.height

    height: hours.height + courses.height
    color: "transparent"

    Rectangle {
        id: hours
        width: parent.width
        height: Theme.captionSize * 2 + Theme.medium
        color: Theme.surface

        Rectangle {
            anchors { left: parent.left; right: parent.right; bottom: parent.bottom }
            height: 1
            color: Theme.divider
        }
        Item {
            x: root.headerWidth
            width: parent.width - root.headerWidth
            height: parent.height
            clip: true

            // The day at the left edge, until the next one pushes it out.
            Text {
                x: Theme.small
                y: Theme.tiny
                text: root.timeline.firstDayText
                width: Math.max(0, Math.min(implicitWidth, root.timeline.firstDayRoom - 2 * Theme.small))
                elide: Text.ElideRight
                color: Theme.ink
                font { pixelSize: Theme.captionSize; bold: true }
            }
            Repeater {
                model: root.timeline.ticks
                delegate: TickLabel {
                    x: root.timeline.offset + minute * root.timeline.pixelsPerMinute
                    nowX: root.timeline.nowKnown ? root.timeline.offset + root.timeline.nowMinute * root.timeline.pixelsPerMinute : -1000
                    viewWidth: root.timeline.viewWidth
                    dayWidth: root.timeline.pixelsPerMinute * 1440
                }
            }
            Rectangle {
                visible: root.timeline.nowKnown
                x: root.timeline.offset + root.timeline.nowMinute * root.timeline.pixelsPerMinute - width / 2
                anchors.bottom: parent.bottom
                width: nowText.implicitWidth + 2 * Theme.small
                height: nowText.implicitHeight + Theme.tiny
                radius: 3
                color: Theme.now
                Accessible.role: Accessible.StaticText
                Accessible.name: qsTr("Now %1").arg(root.timeline.nowText)

                Text {
                    id: nowText
                    anchors.centerIn: parent
                    text: root.timeline.nowText
                    color: Theme.surface
                    font { pixelSize: Theme.captionSize; bold: true }
                }
            }
        }
    }
    Item {
        id: courses
        x: root.headerWidth
        y: hours.height
        width: parent.width - root.headerWidth
        height: rowCount * rowHeight
        clip: true
        // Neighbours would cut each other's names short in one row.
        readonly property int rowCount: root.timeline.courseRowCount
        readonly property int rowHeight: Theme.captionSize + Theme.small + 4

        Repeater {
            model: root.timeline.courses
            delegate: CourseFlag {
                x: root.timeline.offset + minute * root.timeline.pixelsPerMinute
                y: subRow * courses.rowHeight
                height: courses.rowHeight
                room: roomAfter * root.timeline.pixelsPerMinute
                roomInView: root.timeline.viewWidth - x
            }
        }
    }
}
