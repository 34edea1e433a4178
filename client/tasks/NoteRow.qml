import QtQuick
import Suppertide.Ui

// A note on a task, for everybody to read.
Row {
    id: root

    signal written(text: string)
    signal left()

    spacing: Theme.small
    Keys.onEscapePressed: left()
    onVisibleChanged: if (visible) entry.field.forceActiveFocus()

    function send(): void {
        written(entry.text)
        entry.text = ""
    }

    TextEntry {
        id: entry
        width: parent.width - tell.width - Theme.small
        placeholder: qsTr("A note for everybody")
        onAccepted: root.send()
    }
    ActionButton {
        id: tell
        text: qsTr("Tell")
        enabled: entry.text.trim().length > 0
        onClicked: root.send()
    }
}
