import QtQuick
import Suppertide.Ui

// A step that stands elsewhere: where it was and is, and why.
Item {
    id: root

    required property string title
    required property string dish
    required property string was
    required property string now
    required property string changes
    required property string cause
    required property int symbol

    implicitHeight: words.implicitHeight + Theme.small
    Accessible.role: Accessible.Paragraph
    Accessible.name: qsTr("%1, %2: from %3 to %4. %5. %6").arg(title).arg(dish).arg(was).arg(now).arg(changes).arg(cause)

    Symbol {
        id: sign
        shape: root.symbol
        color: Theme.inkMuted
    }
    Column {
        id: words
        anchors { left: sign.right; leftMargin: Theme.small; right: parent.right }
        spacing: 1

        Text {
            width: parent.width
            text: qsTr("%1 · %2").arg(root.title).arg(root.dish)
            color: Theme.ink
            font { pixelSize: Theme.bodySize; weight: Font.DemiBold }
            wrapMode: Text.Wrap
            textFormat: Text.PlainText
        }
        Text {
            width: parent.width
            text: root.changes.length > 0 ? qsTr("%1 → %2 (%3)").arg(root.was).arg(root.now).arg(root.changes) : qsTr("%1 → %2").arg(root.was).arg(root.now)
            color: Theme.ink
            font.pixelSize: Theme.captionSize
            wrapMode: Text.Wrap
            textFormat: Text.PlainText
        }
        Text {
            visible: root.cause.length > 0
            width: parent.width
            text: root.cause
            color: Theme.inkMuted
            font.pixelSize: Theme.captionSize
            wrapMode: Text.Wrap
            textFormat: Text.PlainText
        }
    }
}
