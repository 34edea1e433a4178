import QtQuick
import Suppertide.Ui

// One task ahead: when, what, of which dish.
Card {
    id: root

    required property string title
    required property string dish
    required property int symbol
    required property string when
    required property string countdown
    required property string where
    required property bool underWay
    // Said first, and at the end.
    property string lead
    property string tail

    padding: Theme.small + Theme.tiny
    spacing: 2
    Accessible.role: Accessible.ListItem
    Accessible.name: qsTr("%1: %2, %3, %4").arg(lead).arg(title).arg(dish).arg(when)

    Row {
        width: root.room
        spacing: Theme.small

        Symbol {
            id: sign
            shape: root.symbol
            color: Theme.ink
        }
        Text {
            width: parent.width - sign.width - leadText.width - 2 * Theme.small
            text: root.title
            color: Theme.ink
            font { pixelSize: Theme.bodySize; bold: true }
            wrapMode: Text.Wrap
            textFormat: Text.PlainText
        }
        Text {
            id: leadText
            width: Math.min(implicitWidth, root.room * 0.45)
            text: root.lead
            color: Theme.ink
            font.pixelSize: Theme.bodySize
            horizontalAlignment: Text.AlignRight
            wrapMode: Text.Wrap
            textFormat: Text.PlainText
        }
    }
    Text {
        width: root.room
        text: Array.of(root.dish, root.when, root.where, root.tail).filter(part => part.length > 0).join(qsTr(" · "))
        color: Theme.inkMuted
        font.pixelSize: Theme.captionSize
        wrapMode: Text.Wrap
        textFormat: Text.PlainText
    }
}
