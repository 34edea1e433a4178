import QtQuick
import Suppertide.Ui
import Suppertide.Timeline

// One ferment in its dough's lane: a swelling shape; Return opens its details.
BarButton {
    id: root

    // Keeps words as wide as they are while the lane is stretched.
    required property Scale unstretch

    required property doughRise rise

    readonly property double shapeStart: Math.max(start, steps.laidStart)
    readonly property double shapeLimit: Math.min(start + length, steps.laidStart + steps.laidLength)
    readonly property bool wordsInside: shownWidth >= 88
    // Words stand before the hatched window where that leaves room, else on a ground of their own over it.
    readonly property double unreadyWidth: rise.readyFrom > start ? shownWidth - Math.max(0, (start + length - rise.readyFrom) * scale_) : shownWidth
    readonly property bool beforeWindow: unreadyWidth - 2 * Theme.small >= words.uncutWidth
    readonly property double roomInside: beforeWindow ? unreadyWidth : shownWidth
    readonly property bool wordsBeside: !wordsInside && roomBeside >= 72 && hiddenPart < width

    background: Item {
        DoughShape {
            x: (root.shapeStart - root.start) * root.scale_
            width: Math.max(1, (root.shapeLimit - root.shapeStart) * root.scale_)
            height: parent.height
            rise: root.rise
            start: root.shapeStart
            pixelsPerMinute: root.scale_
            fillColor: Theme.dough
            lineColor: Theme.doughEdge
            readyColor: Theme.ready
            readyLineColor: Theme.readyEdge
        }
        // Without a forecast: a plain bar.
        Rectangle {
            visible: !root.rise.known
            anchors { left: parent.left; right: parent.right; bottom: parent.bottom }
            height: parent.height / 2
            radius: 6
            color: Theme.dough
            border.color: Theme.doughEdge
        }
        Rectangle {
            visible: root.framed
            anchors { fill: parent; margins: -2 }
            radius: 6
            color: "transparent"
            border.width: 3
            border.color: root.frameColor
        }
    }
    StepWordsRow {
        id: words
        transform: [root.unstretch]
        // Low in the shape, where the dough is widest.
        x: root.wordsBeside ? root.width + Theme.tiny : Math.min(root.hiddenPart, Math.max(0, root.width - 40)) + Theme.small
        anchors.bottom: parent.bottom
        height: Theme.target
        room: root.wordsBeside ? root.roomBeside : root.roomInside - 2 * Theme.small
        title: root.title
        detail: root.detail
        symbol: root.done ? Symbol.Done : root.symbol
        late: root.late
        pinned: root.pinned
        moved: root.moved
        wordsShown: root.wordsInside || root.wordsBeside
        outside: root.wordsBeside
        grounded: root.wordsBeside || !root.beforeWindow
    }
}
