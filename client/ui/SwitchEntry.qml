import QtQuick
import QtQuick.Templates as T
import Suppertide.Ui

// Yes or no: a box with a tick, and what it means beside it.
EntryFrame {
    id: root

    required property string text
    property bool on: false
    property bool readOnly: false
    signal edited(on: bool)

    label: ""

    T.AbstractButton {
        id: box
        objectName: "field"
        width: parent.width
        implicitHeight: Math.max(Theme.target, words.implicitHeight + Theme.small)
        enabled: !root.readOnly
        focusPolicy: Qt.StrongFocus
        onClicked: root.edited(!root.on)

        Accessible.role: Accessible.CheckBox
        Accessible.name: root.text
        Accessible.description: root.spokenState
        Accessible.checked: root.on
        Keys.onReturnPressed: clicked()
        Keys.onEnterPressed: clicked()

        Rectangle {
            id: mark
            width: 30
            height: 30
            anchors { left: parent.left; leftMargin: Theme.tiny; verticalCenter: parent.verticalCenter }
            radius: Theme.tiny
            color: root.on ? Theme.accent : Theme.raised
            border.width: box.visualFocus ? 3 : 1
            border.color: box.visualFocus ? Theme.focus : Theme.outline

            Symbol {
                visible: root.on
                anchors.centerIn: parent
                shape: Symbol.Done
                color: Theme.ink
            }
        }
        Text {
            id: words
            anchors { left: mark.right; leftMargin: Theme.small; right: parent.right; verticalCenter: parent.verticalCenter }
            text: root.text
            color: Theme.ink
            font.pixelSize: Theme.bodySize
            wrapMode: Text.Wrap
            textFormat: Text.PlainText
        }
    }
}
