pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Timeline

// One lane: its name, its bars in sub-rows, an oven's curve beneath them.
Item {
    id: root

    required property Timeline timeline
    required property int headerWidth
    required property string laneId
    required property string title
    required property string subtitle
    required property string spoken
    required property int symbol
    required property int subRowCount
    required property bool hasCurve
    required property bool isDough
    required property StepModel steps
    required property ovenCurve curve
    required property laneGhosts ghosts

    readonly property bool narrow: headerWidth === 0
    readonly property int barHeight: isDough ? 2 * Theme.target : Theme.target
    readonly property int rowHeight: barHeight + Theme.tiny
    readonly property int barsTop: (narrow ? header.implicitHeight : 0) + Theme.tiny
    readonly property int barsHeight: subRowCount * rowHeight
    readonly property int curveHeight: hasCurve ? 56 : 0
    readonly property double scale_: timeline.pixelsPerMinute

    objectName: laneId
    height: barsTop + barsHeight + curveHeight + Theme.tiny + 1

    Accessible.role: Accessible.Grouping
    Accessible.name: spoken

    // Its coordinates are the minutes' own; panning only moves this.
    Item {
        id: content
        x: root.headerWidth + root.timeline.offset
        y: root.barsTop

        OvenCurveItem {
            visible: root.hasCurve
            x: root.timeline.windowStart * root.scale_
            y: root.barsHeight
            width: visible ? root.timeline.windowLength * root.scale_ : 0
            height: root.curveHeight
            curve: root.curve
            start: root.timeline.windowStart
            pixelsPerMinute: root.scale_
            lineColor: Theme.heat
            fillColor: Theme.heatFill
            setpointColor: Theme.setpoint
            font.pixelSize: Theme.captionSize
        }
        GhostItem {
            visible: root.ghosts.any
            x: root.timeline.windowStart * root.scale_
            width: visible ? root.timeline.windowLength * root.scale_ : 0
            height: root.barsHeight
            ghosts: root.ghosts
            start: root.timeline.windowStart
            pixelsPerMinute: root.scale_
            rowHeight: root.rowHeight
            barHeight: root.barHeight
            color: Theme.outline
        }
        Repeater {
            model: root.isDough ? null : root.steps
            delegate: StepBar {
                y: subRow * root.rowHeight
                height: root.barHeight
                timeline: root.timeline
            }
        }
        Repeater {
            model: root.isDough ? root.steps : null
            delegate: DoughBar {
                y: subRow * root.rowHeight
                height: root.barHeight
                timeline: root.timeline
            }
        }
    }
    LaneHeader {
        id: header
        width: root.narrow ? root.width : root.headerWidth
        height: root.narrow ? implicitHeight : root.height - 1
        title: root.title
        subtitle: root.subtitle
        symbol: root.symbol
        narrow: root.narrow
    }
    Rectangle {
        anchors.bottom: parent.bottom
        width: parent.width
        height: 1
        color: Theme.divider
    }
}
