import QtQuick
import Suppertide.Ui

// A sign, a title and a line below it.
Item {
    id: root

    property int symbol: Symbol.Nothing
    property string title
    property string detail

    implicitHeight: Math.max(Theme.target, words.height + Theme.small)
    Accessible.role: Accessible.ListItem
    Accessible.name: detail.length > 0 ? qsTr("%1: %2").arg(title).arg(detail) : title

    Symbol {
        id: sign
        shape: root.symbol
        color: Theme.inkMuted
        y: words.y + 1
    }
    Column {
        id: words
        x: sign.width + Theme.small
        width: parent.width - x
        anchors.verticalCenter: parent.verticalCenter

        Text {
            width: parent.width
            text: root.title
            color: Theme.ink
            font { pixelSize: Theme.bodySize; bold: true }
            wrapMode: Text.Wrap
            textFormat: Text.PlainText
        }
        Text {
            width: parent.width
            visible: text.length > 0
            text: root.detail
            color: Theme.ink
            font.pixelSize: Theme.bodySize
            wrapMode: Text.Wrap
            textFormat: Text.PlainText
        }
    }
}
