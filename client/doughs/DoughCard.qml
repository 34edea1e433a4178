import QtQuick
import QtQuick.Templates as T
import Suppertide.Ui

// One dough to choose: where it stands, and what comes next.
T.AbstractButton {
    id: root

    required property string doughId
    required property string name
    required property string stage
    required property string stateText
    required property string act
    required property bool underWay
    required property bool over
    property bool chosen: false

    objectName: "dough/" + doughId
    implicitHeight: words.implicitHeight + 2 * Theme.small + Theme.tiny
    focusPolicy: Qt.StrongFocus
    Accessible.role: Accessible.RadioButton
    Accessible.checkable: true
    Accessible.checked: chosen
    Accessible.name: qsTr("%1, %2. %3").arg(name).arg(stage).arg(stateText)
    Keys.onReturnPressed: clicked()
    Keys.onEnterPressed: clicked()

    Column {
        id: words
        x: Theme.small + Theme.tiny
        y: Theme.small
        width: parent.width - 2 * x
        spacing: 2

        Row {
            width: parent.width
            spacing: Theme.small

            Symbol {
                id: sign
                shape: root.over ? Symbol.Done : root.underWay ? Symbol.Dough : Symbol.Hourglass
                color: Theme.ink
            }
            Text {
                width: parent.width - sign.width - Theme.small
                text: qsTr("%1 · %2").arg(root.name).arg(root.stage)
                color: Theme.ink
                font { pixelSize: Theme.bodySize; bold: true }
                wrapMode: Text.Wrap
                textFormat: Text.PlainText
            }
        }
        Text {
            width: parent.width
            text: root.stateText
            color: Theme.ink
            font.pixelSize: Theme.bodySize
            wrapMode: Text.Wrap
            textFormat: Text.PlainText
        }
        Text {
            width: parent.width
            visible: root.act.length > 0
            text: qsTr("Next: %1").arg(root.act)
            color: Theme.inkMuted
            font.pixelSize: Theme.captionSize
            wrapMode: Text.Wrap
            textFormat: Text.PlainText
        }
    }
    background: Rectangle {
        radius: Theme.radius
        color: root.chosen || root.down ? Theme.accent : Theme.raised
        border.width: root.visualFocus ? 3 : root.chosen ? 2 : 1
        border.color: root.visualFocus ? Theme.focus : root.chosen ? Theme.accentOutline : Theme.divider
    }
}
