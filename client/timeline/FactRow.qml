import QtQuick
import Suppertide.Ui

// A label and what it says; nothing at all when there is nothing to say.
Column {
    id: root

    required property string label
    required property string value
    property bool strong: false
    property int symbol: Symbol.Nothing

    width: parent.width
    visible: value.length > 0
    spacing: 2

    Row {
        spacing: Theme.tiny

        Symbol {
            visible: root.symbol !== Symbol.Nothing
            width: 16
            height: 16
            shape: root.symbol
            color: Theme.late
        }
        Text {
            text: root.label
            color: Theme.inkMuted
            font { pixelSize: Theme.captionSize; bold: true }
        }
    }
    Text {
        width: root.width
        text: root.value
        color: root.strong ? Theme.late : Theme.ink
        font { pixelSize: Theme.bodySize; bold: root.strong }
        lineHeight: 1.2
        wrapMode: Text.Wrap
        textFormat: Text.PlainText
        Accessible.role: Accessible.StaticText
        Accessible.name: qsTr("%1: %2").arg(root.label).arg(root.value)
    }
}
