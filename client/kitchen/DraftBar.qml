import QtQuick
import Suppertide.Ui
import Suppertide.Kitchen

// What becomes of a draft: saved, undone, thrown away, deleted; and what is in the way.
Rectangle {
    id: root

    required property Draft draft
    required property KitchenDesk desk
    required property bool narrow

    implicitHeight: inside.height + 2 * Theme.small
    color: Theme.sunken

    Column {
        id: inside
        x: Theme.medium
        y: Theme.small
        width: parent.width - 2 * Theme.medium
        spacing: Theme.tiny

        Text {
            objectName: "draftState"
            width: parent.width
            visible: text.length > 0
            text: {
                if (root.draft.trouble.length > 0)
                    return root.draft.trouble
                if (root.draft.problemCount > 0)
                    return qsTr("%n things to put right. %1", "", root.draft.problemCount).arg(root.draft.firstProblem())
                if (root.draft.fresh)
                    return qsTr("New, not saved yet: only you see it.")
                if (root.draft.dirty)
                    return qsTr("Changed, not saved yet. It is kept here until you save.")
                return root.draft.waiting ? qsTr("Saved on this device; the others see it as soon as the server has it.") : ""
            }
            color: root.draft.trouble.length > 0 || root.draft.problemCount > 0 ? Theme.late : Theme.inkMuted
            font.pixelSize: Theme.captionSize
            wrapMode: Text.Wrap
            maximumLineCount: 3
            elide: Text.ElideRight
            textFormat: Text.PlainText
            Accessible.role: Accessible.AlertMessage
            Accessible.name: text
        }
        Flow {
            width: parent.width
            spacing: Theme.small

            ActionButton {
                objectName: "save"
                symbol: Symbol.Done
                text: qsTr("Save")
                enabled: root.draft.dirty
                onClicked: root.draft.save()
            }
            ActionButton {
                objectName: "undo"
                symbol: Symbol.Undo
                text: root.narrow ? "" : qsTr("Undo")
                spoken: qsTr("Undo the last change here")
                enabled: root.draft.undoable
                onClicked: root.draft.undo()
            }
            ActionButton {
                objectName: "discard"
                visible: root.draft.dirty
                text: root.draft.fresh ? qsTr("Throw away") : qsTr("As it was")
                spoken: root.draft.fresh ? qsTr("Throw this new one away") : qsTr("Back to what is saved")
                onClicked: root.desk.discard()
            }
            ActionButton {
                objectName: "delete"
                visible: !root.draft.fresh
                symbol: Symbol.Close
                text: qsTr("Delete")
                onClicked: root.desk.remove()
            }
        }
    }
}
