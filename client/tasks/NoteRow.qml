import QtQuick
import Suppertide.Ui

// A note on a task, for everybody to read.
Item {
    id: root

    signal written(text: string)
    signal closed()
    property string draft

    implicitHeight: entry.implicitHeight
    Keys.onEscapePressed: closed()
    onVisibleChanged: if (visible) entry.take()

    function send(): void {
        if (draft.trim().length === 0)
            return
        written(draft)
        draft = ""
    }

    TextEntry {
        id: entry
        objectName: "noteText"
        width: parent.width - tell.width - Theme.small
        label: qsTr("A note for everybody")
        longest: 500
        value: root.draft
        onEdited: value => root.draft = value
        onAccepted: root.send()
    }
    ActionButton {
        id: tell
        objectName: "sendNote"
        anchors { right: parent.right; bottom: parent.bottom }
        text: qsTr("Tell")
        enabled: root.draft.trim().length > 0
        onClicked: root.send()
    }
}
