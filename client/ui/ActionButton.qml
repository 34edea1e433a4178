import QtQuick
import QtQuick.Templates as T
import Suppertide.Ui

// A button to be hit with floury hands: a word, a sign, or both.
T.AbstractButton {
    id: root

    property int symbol: Symbol.Nothing
    // What it does, when the word alone does not say it.
    property string spoken: text

    implicitWidth: Math.max(Theme.target, content.implicitWidth + 2 * Theme.small + Theme.tiny)
    implicitHeight: Theme.target
    focusPolicy: Qt.StrongFocus
    opacity: enabled ? 1 : 0.5

    Accessible.role: Accessible.Button
    Accessible.name: spoken

    Keys.onReturnPressed: clicked()
    Keys.onEnterPressed: clicked()

    Row {
        id: content
        anchors.centerIn: parent
        spacing: Theme.tiny

        Symbol {
            visible: root.symbol !== Symbol.Nothing
            shape: root.symbol
            color: Theme.ink
            anchors.verticalCenter: parent.verticalCenter
        }
        Text {
            visible: root.text.length > 0
            text: root.text
            color: Theme.ink
            font.pixelSize: Theme.bodySize
            anchors.verticalCenter: parent.verticalCenter
        }
    }
    background: Rectangle {
        radius: Theme.radius
        color: root.down ? Theme.accent : Theme.raised
        border.width: root.visualFocus ? 3 : 1
        border.color: root.visualFocus ? Theme.focus : Theme.outline
    }
}
