import QtQuick
import Suppertide.Ui

// The name of a lane: a column beside it, or on a narrow screen a strip above it.
Rectangle {
    id: root

    required property string title
    required property string subtitle
    required property int symbol
    required property bool narrow

    implicitHeight: Theme.captionSize + Theme.small + 2
    color: narrow ? "transparent" : Theme.surface

    Row {
        id: row
        anchors {
            left: parent.left
            leftMargin: Theme.small
            verticalCenter: parent.verticalCenter
        }
        spacing: Theme.small

        Symbol {
            id: sign
            width: root.narrow ? 16 : 22
            height: width
            shape: root.symbol
            color: Theme.inkMuted
            anchors.verticalCenter: parent.verticalCenter
        }
        Column {
            anchors.verticalCenter: parent.verticalCenter

            Text {
                width: Math.min(implicitWidth, root.width - sign.width - 3 * Theme.small)
                text: root.title
                color: Theme.ink
                font { pixelSize: root.narrow ? Theme.captionSize : Theme.bodySize; bold: true }
                wrapMode: root.narrow ? Text.NoWrap : Text.Wrap
                maximumLineCount: 2
                elide: Text.ElideRight
            }
            Text {
                visible: !root.narrow && root.subtitle.length > 0 && root.height >= Theme.target
                width: Math.min(implicitWidth, root.width - sign.width - 3 * Theme.small)
                text: root.subtitle
                color: Theme.inkMuted
                font.pixelSize: Theme.captionSize
                elide: Text.ElideRight
            }
        }
    }
    Rectangle {
        visible: !root.narrow
        anchors.right: parent.right
        width: 1
        height: parent.height
        color: Theme.divider
    }
}
