import QtQuick
import Suppertide.Ui

// What gets worse or better, a line each; nothing when there is nothing.
Column {
    id: root

    required property string label
    required property string value
    required property color tone

    visible: value.length > 0
    spacing: 2
    Accessible.role: Accessible.Paragraph
    Accessible.name: qsTr("%1: %2").arg(label).arg(value)

    Text {
        text: root.label
        color: root.tone
        font { pixelSize: Theme.captionSize; bold: true }
    }
    Text {
        width: root.width
        text: root.value
        color: Theme.ink
        font.pixelSize: Theme.bodySize
        lineHeight: 1.2
        wrapMode: Text.Wrap
        textFormat: Text.PlainText
    }
}
