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
    // All of it is stretched as one from what it was laid out for; words only where they would not fit.
    readonly property double stretching: scale_ / steps.laidScale
    readonly property Scale stretch: Scale { xScale: root.stretching }
    readonly property Scale unstretch: Scale { xScale: Math.min(1, 1 / root.stretching) }

    objectName: laneId
    height: barsTop + barsHeight + curveHeight + Theme.tiny + 1

    Accessible.role: Accessible.Grouping
    Accessible.name: spoken

    // From the step of that id on (1) or back (-1): the next one, or out of this lane.
    function walk(stepId: string, by: int): void {
        const to = steps.neighbour(stepId, by)
        const reason = by > 0 ? Qt.TabFocusReason : Qt.BacktabFocusReason
        if (to.length > 0)
            focusStep(to, reason)
        else
            others.nextItemInFocusChain(by > 0).forceActiveFocus(reason)
    }
    function focusStep(stepId: string, reason: int): void {
        const row = steps.hold(stepId)
        const bar = row < 0 ? null : (isDough ? doughs : bars).itemAt(row) as BarButton
        if (!bar)
            return
        bar.forceActiveFocus(reason)
        // The place may have had the focus already, for another step.
        if (reason !== Qt.MouseFocusReason)
            timeline.reveal(bar.start, bar.length)
    }

    LaneBars {
        id: others
        objectName: "others"
        x: root.headerWidth
        y: root.barsTop
        width: root.width - root.headerWidth
        height: root.barsHeight
        timeline: root.timeline
        steps: root.steps
        rowHeight: root.rowHeight
        barHeight: root.barHeight
        fills: StepColors.fills
        edges: StepColors.edges
        doneColor: Theme.sunken
        lateColor: Theme.late
        signColor: Theme.ink
        doughColor: Theme.dough
        doughEdgeColor: Theme.doughEdge
        clip: true

        // Tab comes into the lane at what is in view of it.
        Accessible.role: Accessible.List
        Accessible.name: root.spoken
        onEntered: by => root.focusStep(root.steps.firstInView(by), by > 0 ? Qt.TabFocusReason : Qt.BacktabFocusReason)
        TapHandler {
            onTapped: eventPoint => {
                const minute = (eventPoint.position.x - root.timeline.offset) / root.scale_
                const row = Math.floor(eventPoint.position.y / root.rowHeight)
                const id = root.steps.stepNear(minute, row, Theme.target / 2 / root.scale_)
                if (id.length === 0)
                    return
                root.timeline.choose(id)
                root.focusStep(id, Qt.MouseFocusReason)
            }
        }
    }
    // Its coordinates are the minutes' own; panning only moves this, zooming stretches it.
    Item {
        id: content
        x: root.headerWidth + root.timeline.offset
        y: root.barsTop
        transform: [root.stretch]

        OvenCurveItem {
            visible: root.hasCurve
            x: root.steps.laidStart * root.steps.laidScale
            y: root.barsHeight
            width: visible ? root.steps.laidLength * root.steps.laidScale : 0
            height: root.curveHeight
            curve: root.curve
            start: root.steps.laidStart
            pixelsPerMinute: root.steps.laidScale
            lineColor: Theme.heat
            fillColor: Theme.heatFill
            setpointColor: Theme.setpoint
        }
        GhostItem {
            visible: root.ghosts.any
            x: root.steps.laidStart * root.steps.laidScale
            width: visible ? root.steps.laidLength * root.steps.laidScale : 0
            height: root.barsHeight
            ghosts: root.ghosts
            start: root.steps.laidStart
            pixelsPerMinute: root.steps.laidScale
            rowHeight: root.rowHeight
            barHeight: root.barHeight
            color: Theme.outline
        }
        Repeater {
            id: bars
            model: root.isDough ? null : root.steps
            delegate: StepBar {
                y: subRow * root.rowHeight
                height: root.barHeight
                timeline: root.timeline
                steps: root.steps
                unstretch: root.unstretch
                onWalkWanted: by => root.walk(stepId, by)
            }
        }
        Repeater {
            id: doughs
            model: root.isDough ? root.steps : null
            delegate: DoughBar {
                y: subRow * root.rowHeight
                height: root.barHeight
                timeline: root.timeline
                steps: root.steps
                unstretch: root.unstretch
                onWalkWanted: by => root.walk(stepId, by)
            }
        }
    }
    Item {
        x: root.headerWidth + root.timeline.offset
        y: root.barsTop

        // What it is set to, as far left in its stretch as is in view.
        Repeater {
            model: root.hasCurve ? root.curve.labels : []

            Text {
                required property var modelData
                readonly property double from: Math.max(modelData.start * root.scale_, -root.timeline.offset) + Theme.tiny

                visible: from + implicitWidth + Theme.tiny <= modelData.limit * root.scale_ && from + root.timeline.offset < root.timeline.viewWidth
                x: from
                y: root.barsHeight + root.curveHeight - height - 2
                text: modelData.label
                color: Theme.setpoint
                font.pixelSize: Theme.captionSize
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
