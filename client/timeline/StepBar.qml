import QtQuick
import Suppertide.Ui
import Suppertide.Timeline

// One step in a lane: its sign, title, and the kind in a word; Return opens its details.
//
// A bar too short for its words says them beside itself where there is room.
BarButton {
    id: root

    // Keeps words as wide as they are while the lane is stretched.
    required property Scale unstretch

    required property double slack
    required property bool handsOn

    readonly property double freeWidth: width + roomBeside + Theme.small - 2
    readonly property bool hasRoomBeside: freeWidth - width >= 72 && hiddenPart < width
    readonly property bool wordsInside: words.wantedWidth <= shownWidth || shownWidth >= (hasRoomBeside ? 124 : 88)
    // Two letters and dots tell nobody anything.
    readonly property bool wordsBeside: !wordsInside && hasRoomBeside && freeWidth - width - Theme.small >= Math.min(words.wantedWidth, 116)
    readonly property double slackWidth: Math.min(slack, roomAfter) * scale_ - 2
    readonly property color hue: StepColors.hue(kind)

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
            visible: root.framed
            anchors { fill: parent; margins: -3 }
            radius: parent.radius + 3
            color: "transparent"
            border.width: 3
            border.color: root.frameColor
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
        transform: [root.unstretch]
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
