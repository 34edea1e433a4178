import QtQuick
import QtQuick.Templates as T
import Suppertide.Ui

// One of several of which one, or any number, is chosen: the choice is a mark as well as a colour.
T.AbstractButton {
    id: root

    property int symbol: Symbol.Nothing
    property string spoken: text
    property bool chosen: false

    readonly property real signRoom: chosen || symbol !== Symbol.Nothing ? 20 + Theme.tiny : 0

    implicitWidth: Math.max(Theme.target, words.implicitWidth + signRoom + 2 * Theme.medium)
    implicitHeight: Theme.target
    focusPolicy: Qt.StrongFocus
    opacity: enabled ? 1 : 0.5

    Accessible.role: Accessible.RadioButton
    Accessible.name: spoken
    Accessible.checkable: true
    Accessible.checked: chosen
    Keys.onReturnPressed: clicked()
    Keys.onEnterPressed: clicked()

    Row {
        anchors.centerIn: parent
        spacing: Theme.tiny

        Symbol {
            visible: root.symbol !== Symbol.Nothing || root.chosen
            shape: root.chosen ? Symbol.Done : root.symbol
            color: Theme.ink
            anchors.verticalCenter: parent.verticalCenter
        }
        Text {
            id: words
            text: root.text
            width: Math.min(implicitWidth, root.width - 2 * Theme.small - root.signRoom)
            color: Theme.ink
            font { pixelSize: Theme.bodySize; bold: root.chosen }
            elide: Text.ElideRight
            textFormat: Text.PlainText
            anchors.verticalCenter: parent.verticalCenter
        }
    }
    background: Rectangle {
        radius: height / 2
        color: root.down || root.chosen ? Theme.accent : Theme.raised
        border.width: root.visualFocus ? 3 : root.chosen ? 2 : 1
        border.color: root.visualFocus ? Theme.focus : root.chosen ? Theme.accentOutline : Theme.outline
    }
}
