import QtQuick
import Suppertide.Ui

// The words of a bar: signs, the title, and a second line; as much as `room` holds.
Item {
    id: root

    required property string title
    required property string detail
    required property int symbol
    required property bool late
    required property bool pinned
    required property bool moved
    required property bool wordsShown
    // Beside its bar.
    required property bool outside
    // On a ground of its own, so that no line runs through the words.
    property bool grounded: outside
    required property real room
    // In steps, so that a zoom does not cut the words anew in every frame.
    readonly property real wordsRoom: Math.max(0, Math.floor((room - signs.width - Theme.tiny) / 16) * 16)
    // Of all signs, whether or not they are shown now: whether they are may depend on what is wanted.
    readonly property real signsWidth: 20 + 22 * (Number(late) + Number(pinned) + Number(moved))
    // What everything would take, and what no word of the title is cut in.
    readonly property real wantedWidth: signsWidth + Theme.tiny + natural.advanceWidth + 14
    readonly property real uncutWidth: signsWidth + Theme.tiny + longest.advanceWidth + 18

    width: room

    TextMetrics {
        id: natural
        text: root.title
        font: heading.font
    }
    TextMetrics {
        id: longest
        text: root.title.split(" ").reduce((most, word) => word.length > most.length ? word : most, "")
        font: heading.font
    }
    Rectangle {
        visible: root.grounded && root.wordsShown
        x: -2
        anchors.verticalCenter: parent.verticalCenter
        width: words.x + words.width + 4
        height: words.height
        radius: 3
        color: Theme.surface
        opacity: 0.85
    }
    Row {
        id: signs
        anchors.verticalCenter: parent.verticalCenter
        spacing: 2
        visible: root.wordsShown || root.room >= 14

        Symbol {
            width: root.wordsShown || root.room >= 24 ? 20 : 14
            height: width
            shape: root.symbol
            color: Theme.ink
        }
        Symbol {
            visible: root.late && root.wordsShown
            shape: Symbol.Late
            color: Theme.late
        }
        Symbol {
            visible: root.pinned && root.wordsShown
            shape: Symbol.Pin
            color: Theme.ink
        }
        Symbol {
            visible: root.moved && root.wordsShown
            shape: Symbol.Moved
            color: Theme.moved
        }
    }
    Column {
        id: words
        visible: root.wordsShown
        anchors.verticalCenter: parent.verticalCenter
        x: signs.width + Theme.tiny + 2

        Text {
            id: heading
            // Words that are not shown are not laid out anew with every zoom.
            width: root.wordsShown ? Math.min(natural.advanceWidth + 1, root.wordsRoom) : 0
            text: root.title
            color: Theme.ink
            font { pixelSize: Theme.bodySize; weight: Font.DemiBold }
            elide: Text.ElideRight
            wrapMode: root.outside ? Text.NoWrap : Text.WordWrap
            maximumLineCount: 2
            textFormat: Text.PlainText
        }
        Text {
            visible: heading.lineCount === 1
            width: Math.min(implicitWidth, root.wordsRoom)
            text: root.wordsShown ? root.detail : ""
            color: Theme.inkMuted
            font.pixelSize: Theme.captionSize
            elide: Text.ElideRight
            textFormat: Text.PlainText
        }
    }
}
