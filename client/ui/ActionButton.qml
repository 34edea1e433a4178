import QtQuick
import QtQuick.Templates as T
import Suppertide.Ui

// A button to be hit with floury hands: a word, a sign, or both.
T.AbstractButton {
    id: root

    property int symbol: Symbol.Nothing
    // What it does, when the word alone does not say it.
    property string spoken: text
    // The one thing to do here: filled, its word large.
    property bool strong: false

    readonly property real signRoom: symbol !== Symbol.Nothing ? 20 + Theme.tiny : 0

    implicitWidth: Math.max(Theme.target, (text.length > 0 ? words.implicitWidth : 0) + signRoom + 2 * Theme.small + Theme.tiny)
    implicitHeight: Math.max(strong ? Theme.target + Theme.medium : Theme.target, words.visible ? words.implicitHeight + 2 * Theme.small : 0)
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
            id: words
            visible: root.text.length > 0
            text: root.text
            color: Theme.ink
            width: Math.min(implicitWidth, root.width - 2 * Theme.small - root.signRoom)
            elide: Text.ElideRight
            wrapMode: Text.WordWrap
            maximumLineCount: 2
            textFormat: Text.PlainText
            font { pixelSize: root.strong ? Theme.titleSize : Theme.bodySize; bold: root.strong }
            anchors.verticalCenter: parent.verticalCenter
        }
    }
    background: Rectangle {
        radius: Theme.radius
        color: root.down !== root.strong ? Theme.accent : Theme.raised
        border.width: root.visualFocus ? 3 : root.strong ? 2 : 1
        border.color: root.visualFocus ? Theme.focus : root.strong ? Theme.accentOutline : Theme.outline
    }
}
