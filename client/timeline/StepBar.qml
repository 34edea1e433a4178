import QtQuick
import QtQuick.Templates as T
import Suppertide.Ui
import Suppertide.Timeline

// One step in a lane: its sign, title, and the kind in a word; Return opens its details.
//
// A bar too short for its words says them beside itself where there is room.
T.AbstractButton {
    id: root

    required property Timeline timeline
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
    required property double slack
    required property bool handsOn
    required property bool late
    required property bool done
    required property bool pinned
    required property bool moved

    readonly property double leastWidth: 8
    readonly property bool chosen: timeline.details.id === stepId
    readonly property bool held: timeline.movingId === stepId
    // While it is held, where it is held.
    readonly property double shownStart: held ? timeline.movingStart + timeline.movingMinutes : start
    // Where a long bar begins in the view, for words that stay in sight.
    // A short one's do not: so a pan leaves it alone.
    readonly property double hiddenPart: width > 88 ? Math.max(0, -(x + timeline.offset)) : 0
    readonly property double shownWidth: width - Math.min(hiddenPart, width)
    readonly property double freeWidth: width + roomAfter * timeline.pixelsPerMinute - 2
    readonly property bool roomBeside: freeWidth - width >= 72 && hiddenPart < width
    readonly property bool wordsInside: words.wantedWidth <= shownWidth || shownWidth >= (roomBeside ? 124 : 88)
    readonly property bool wordsBeside: !wordsInside && roomBeside
    readonly property double slackWidth: Math.min(slack, roomAfter) * timeline.pixelsPerMinute - 2
    readonly property color hue: StepColors.hue(kind)

    objectName: stepId
    x: shownStart * timeline.pixelsPerMinute
    width: Math.max(leastWidth, length * timeline.pixelsPerMinute - 2)
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

    background: Rectangle {
        radius: Math.min(6, root.width / 3)
        color: root.done ? Theme.sunken : Theme.thin(root.hue)
        border.width: root.late || root.handsOn ? 2 : 1
        border.color: root.late ? Theme.late : Theme.edge(root.hue)

        // Work for hands has a solid edge at its start; waiting has none.
        Rectangle {
            visible: root.handsOn && root.width > 12
            x: 2
            y: 2
            width: 4
            height: parent.height - 4
            radius: 2
            color: Theme.edge(root.hue)
        }
        Rectangle {
            visible: root.visualFocus || root.moved || root.chosen
            anchors { fill: parent; margins: -3 }
            radius: parent.radius + 3
            color: "transparent"
            border.width: 3
            border.color: root.visualFocus ? Theme.focus : root.moved ? Theme.moved : Theme.ink
        }
    }
    // Slack: how far it may slip, as a tail with an end.
    Item {
        visible: root.slackWidth >= 6 && !root.done
        x: root.width
        y: parent.height - 8
        width: root.slackWidth
        height: 8

        Rectangle {
            y: 5
            width: parent.width
            height: 2
            color: Theme.edge(root.hue)
        }
        Rectangle {
            visible: root.slack <= root.roomAfter
            anchors.right: parent.right
            width: 2
            height: parent.height
            color: Theme.edge(root.hue)
        }
    }
    StepWordsRow {
        id: words
        x: root.wordsBeside ? root.width + Theme.tiny : Math.min(root.hiddenPart, Math.max(0, root.width - 40)) + (root.handsOn ? 10 : 6)
        height: parent.height
        room: root.wordsBeside ? root.freeWidth - root.width - Theme.small : root.shownWidth - (root.handsOn ? 14 : 10)
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
