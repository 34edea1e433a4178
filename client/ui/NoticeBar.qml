import QtQuick
import Suppertide.Ui

// Tells for a moment what just happened, without taking the focus.
Rectangle {
    id: root

    property string text
    property int symbol: Symbol.Moved

    implicitWidth: row.implicitWidth + 2 * Theme.medium
    implicitHeight: Math.max(Theme.target, row.implicitHeight + 2 * Theme.small)
    radius: Theme.radius
    color: Theme.ink
    visible: opacity > 0
    opacity: text.length > 0 ? 1 : 0

    Accessible.role: Accessible.AlertMessage
    Accessible.name: text
    Accessible.ignored: !visible

    Behavior on opacity {
        NumberAnimation { duration: Theme.moveDuration }
    }

    Row {
        id: row
        anchors.centerIn: parent
        spacing: Theme.small

        Symbol {
            shape: root.symbol
            color: Theme.surface
            anchors.verticalCenter: parent.verticalCenter
        }
        Text {
            text: root.text
            width: Math.min(implicitWidth, root.width - 60)
            wrapMode: Text.Wrap
            maximumLineCount: 5
            elide: Text.ElideRight
            textFormat: Text.PlainText
            color: Theme.surface
            font.pixelSize: Theme.bodySize
            anchors.verticalCenter: parent.verticalCenter
        }
    }
}
