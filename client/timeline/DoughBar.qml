import QtQuick
import QtQuick.Templates as T
import Suppertide.Ui
import Suppertide.Timeline

// One ferment in its dough's lane: a swelling shape; Return opens its details.
T.AbstractButton {
    id: root

    required property Timeline timeline
    required property string stepId
    required property string title
    required property string detail
    required property string spoken
    required property string stateText
    required property int symbol
    required property double start
    required property double length
    required property int subRow
    required property double roomAfter
    required property bool late
    required property bool done
    required property bool pinned
    required property bool moved
    required property doughRise rise

    readonly property double scale_: timeline.pixelsPerMinute
    readonly property bool chosen: timeline.details.id === stepId
    readonly property bool held: timeline.movingId === stepId
    // While it is held, where it is held.
    readonly property double shownStart: held ? timeline.movingStart + timeline.movingMinutes : start
    readonly property double hiddenPart: Math.max(0, -(x + timeline.offset))
    readonly property double shownWidth: width - Math.min(hiddenPart, width)
    readonly property double shapeStart: Math.max(start, timeline.windowStart)
    readonly property double shapeLimit: Math.min(start + length, timeline.windowStart + timeline.windowLength)
    readonly property bool wordsInside: shownWidth >= 88
    // Words stand before the hatched window where that leaves room.
    readonly property double unreadyWidth: rise.readyFrom > start ? shownWidth - Math.max(0, (start + length - rise.readyFrom) * scale_) : shownWidth
    readonly property double roomInside: unreadyWidth >= 88 ? unreadyWidth : shownWidth
    readonly property double roomBeside: roomAfter * scale_ - Theme.small
    readonly property bool wordsBeside: !wordsInside && roomBeside >= 72 && hiddenPart < width

    objectName: stepId
    x: shownStart * scale_
    width: Math.max(8, length * scale_ - 2)
    z: held ? 3 : visualFocus ? 2 : 1
    focusPolicy: Qt.StrongFocus

    Accessible.role: Accessible.Button
    Accessible.name: spoken
    Accessible.description: stateText

    Keys.onReturnPressed: event => {
        event.accepted = !held
        if (!held)
            clicked()
    }
    Keys.onEnterPressed: event => {
        event.accepted = !held
        if (!held)
            clicked()
    }
    onClicked: timeline.choose(stepId)
    onVisualFocusChanged: {
        if (visualFocus)
            timeline.reveal(start, length)
    }

    // A chosen bar is dragged to ask "what if?"; others let the drag pan.
    DragHandler {
        target: null
        enabled: root.chosen && !root.done
        yAxis.enabled: false
        onActiveChanged: active ? root.timeline.grab(root.stepId) : root.timeline.drop()
        onTranslationChanged: {
            if (active)
                root.timeline.dragBy(translation.x)
        }
    }
    Behavior on x {
        enabled: root.moved && !root.held
        NumberAnimation { duration: Theme.moveDuration; easing.type: Easing.InOutQuad }
    }

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
            visible: root.visualFocus || root.moved || root.chosen
            anchors { fill: parent; margins: -2 }
            radius: 6
            color: "transparent"
            border.width: 3
            border.color: root.visualFocus ? Theme.focus : root.moved ? Theme.moved : Theme.ink
        }
    }
    contentItem: Item {
        StepWordsRow {
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
        }
    }
}
