import QtQuick
import Suppertide.Ui

// The state of something in a sign and a word: "Live", "Offline".
Rectangle {
    id: root

    required property string label
    required property int symbol
    property color tone: Theme.outline

    implicitWidth: row.implicitWidth + 2 * Theme.small + Theme.tiny
    implicitHeight: Math.max(28, row.implicitHeight + Theme.small)
    radius: height / 2
    color: Theme.raised
    border.color: tone
    border.width: 1

    Accessible.role: Accessible.StaticText
    Accessible.name: label

    Row {
        id: row
        anchors.centerIn: parent
        spacing: Theme.tiny + 2

        Symbol {
            width: 14
            height: 14
            shape: root.symbol
            color: root.tone
            anchors.verticalCenter: parent.verticalCenter
        }
        Text {
            text: root.label
            color: Theme.ink
            font.pixelSize: Theme.captionSize
            anchors.verticalCenter: parent.verticalCenter
        }
    }
}
