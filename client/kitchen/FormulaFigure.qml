import QtQuick
import Suppertide.Ui

// One of a dough's figures, read from afar.
Column {
    id: root

    required property string label
    required property string value

    spacing: 0
    Accessible.role: Accessible.StaticText
    Accessible.name: qsTr("%1: %2").arg(label).arg(value)

    Text {
        text: root.label
        color: Theme.ink
        font.pixelSize: Theme.captionSize
    }
    Text {
        objectName: "figure"
        text: root.value
        color: Theme.ink
        font { pixelSize: Theme.titleSize; bold: true }
    }
}
