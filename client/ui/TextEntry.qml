import QtQuick
import QtQuick.Templates as T
import Suppertide.Ui

// A line of text.
EntryFrame {
    id: root

    property string value
    property string example
    property bool readOnly: false
    property int longest: 100
    signal edited(value: string)
    // Return was pressed.
    signal accepted()

    function take(): void {
        field.forceActiveFocus(Qt.TabFocusReason)
        field.selectAll()
    }

    onValueChanged: if (field.text !== root.value) field.text = root.value
    Component.onCompleted: field.text = root.value

    T.TextField {
        id: field
        objectName: "field"
        width: parent.width
        implicitHeight: Theme.target
        leftPadding: Theme.small + Theme.tiny
        rightPadding: Theme.small + Theme.tiny
        verticalAlignment: TextInput.AlignVCenter
        color: Theme.ink
        selectionColor: Theme.accent
        selectedTextColor: Theme.ink
        font.pixelSize: Theme.bodySize
        readOnly: root.readOnly
        maximumLength: root.longest
        selectByMouse: true
        activeFocusOnTab: true
        onTextEdited: root.edited(text)
        onAccepted: root.accepted()

        Accessible.name: root.spoken
        Accessible.description: root.spokenState

        background: EntryGround {
            focused: field.activeFocus
            wrong: root.problem.length > 0
        }
        Text {
            visible: field.text.length === 0
            anchors { fill: parent; leftMargin: field.leftPadding; rightMargin: field.rightPadding }
            text: root.example
            color: Theme.inkMuted
            font { pixelSize: Theme.bodySize; italic: true }
            verticalAlignment: Text.AlignVCenter
            elide: Text.ElideRight
            textFormat: Text.PlainText
            Accessible.ignored: true
        }
    }
}
