import QtQuick
import QtQuick.Templates as T
import Suppertide.Ui

// A change that fits; chosen, it is previewed on the timeline.
T.AbstractButton {
    id: root

    required property int number
    required property string title
    required property string cost
    required property string moves
    required property bool chosen

    implicitHeight: Math.max(Theme.target, words.implicitHeight + 2 * Theme.small)
    focusPolicy: Qt.StrongFocus
    Accessible.role: Accessible.RadioButton
    Accessible.name: title
    Accessible.description: Array.of(cost, moves).filter(part => part.length > 0).join(" ")
    Accessible.checked: chosen
    Keys.onReturnPressed: clicked()
    Keys.onEnterPressed: clicked()

    Rectangle {
        id: dot
        x: Theme.small
        anchors.verticalCenter: parent.verticalCenter
        width: 20
        height: 20
        radius: 10
        color: "transparent"
        border { width: 2; color: Theme.outline }

        Rectangle {
            visible: root.chosen
            anchors.centerIn: parent
            width: 10
            height: 10
            radius: 5
            color: Theme.ink
        }
    }
    Column {
        id: words
        anchors { left: dot.right; leftMargin: Theme.small; right: parent.right; rightMargin: Theme.small; verticalCenter: parent.verticalCenter }
        spacing: 2

        Text {
            width: parent.width
            text: root.title
            color: Theme.ink
            font { pixelSize: Theme.bodySize; bold: true }
            wrapMode: Text.Wrap
            textFormat: Text.PlainText
        }
        Text {
            width: parent.width
            text: root.moves.length > 0 ? qsTr("%1 %2").arg(root.cost).arg(root.moves) : root.cost
            color: Theme.inkMuted
            font.pixelSize: Theme.captionSize
            wrapMode: Text.Wrap
            textFormat: Text.PlainText
        }
    }
    background: Rectangle {
        radius: Theme.radius
        color: root.chosen ? Theme.accent : Theme.raised
        border.width: root.visualFocus ? 3 : 1
        border.color: root.visualFocus ? Theme.focus : Theme.outline
    }
}
