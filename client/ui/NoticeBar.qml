import QtQuick
import Suppertide.Ui

// Tells for a moment what just happened, without taking the focus.
Rectangle {
    id: root

    property string text
    property int symbol: Symbol.Moved

    readonly property real around: sign.width + row.spacing + 2 * Theme.medium
    // Of its words in one line; narrower, they go over several.
    implicitWidth: words.implicitWidth + around
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
            id: sign
            shape: root.symbol
            color: Theme.surface
            anchors.verticalCenter: parent.verticalCenter
        }
        Text {
            id: words
            text: root.text
            width: root.width - root.around
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
