import QtQuick
import QtQuick.Templates as T
import Suppertide.Ui
import Suppertide.Timeline

// A step that stands as a bar of its own: its place, its name for the ear, its keys, its drag.
//
// A place of a StepModel: while it is not shown nothing in it follows the scale. Its coordinates are those
// its lane is laid out for.
T.AbstractButton {
    id: root

    required property Timeline timeline
    required property StepModel steps
    required property string stepId
    required property string title
    required property string detail
    required property string spoken
    required property string stateText
    required property int symbol
    required property int kind
    required property double start
    required property double length
    required property int subRow
    required property double roomAfter
    required property bool late
    required property bool done
    required property bool pinned
    required property bool moved
    required property bool shown
    // Tab goes on to the next step of the lane (1) or back (-1).
    signal walkWanted(by: int)

    readonly property double leastWidth: 8
    readonly property double scale_: shown ? steps.laidScale : 1
    readonly property bool chosen: shown && timeline.details.id === stepId
    readonly property bool held: shown && timeline.movingId === stepId
    // While it is held, where it is held.
    readonly property double shownStart: held ? timeline.movingStart + timeline.movingMinutes : start
    // Where a long bar begins in the view, for words that stay in sight.
    // A short one's do not: so a pan leaves it alone.
    readonly property double hiddenPart: shown && width > 88 ? Math.max(0, -(x + laidOffset())) : 0
    readonly property double shownWidth: width - Math.min(hiddenPart, width)
    // To the next bar of its row; the last one's ends with the view.
    readonly property double roomBeside: {
        const room = roomAfter * scale_ - Theme.small
        return shown && roomAfter > 1e6 ? Math.min(room, timeline.viewWidth * steps.laidScale / timeline.pixelsPerMinute - laidOffset() - x - width - Theme.small) : room
    }
    readonly property color frameColor: visualFocus ? Theme.focus : moved ? Theme.moved : Theme.ink
    readonly property bool framed: visualFocus || moved || chosen

    objectName: stepId
    visible: shown
    x: shownStart * scale_
    width: Math.max(leastWidth, length * scale_ - 2)
    z: held ? 3 : visualFocus ? 2 : 1
    // Tab is the lane's.
    focusPolicy: Qt.ClickFocus

    Accessible.role: Accessible.Button
    Accessible.name: spoken
    Accessible.description: stateText

    Keys.onTabPressed: walkWanted(1)
    Keys.onBacktabPressed: walkWanted(-1)
    Keys.onReturnPressed: event => press(event)
    Keys.onEnterPressed: event => press(event)
    onClicked: timeline.choose(stepId)
    onVisualFocusChanged: {
        if (visualFocus)
            timeline.reveal(start, length)
    }

    // The x of minute 0, as the lane is laid out.
    function laidOffset(): real {
        return timeline.offset * steps.laidScale / timeline.pixelsPerMinute
    }
    // While it is held, Return asks what its new place would mean.
    function press(event: KeyEvent): void {
        event.accepted = !held
        if (!held)
            clicked()
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
        enabled: root.shown && root.moved && !root.held
        NumberAnimation { duration: Theme.moveDuration; easing.type: Easing.InOutQuad }
    }
}
