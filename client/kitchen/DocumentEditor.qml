import QtQuick
import Suppertide.Ui
import Suppertide.Kitchen

// What is open: its fields, and below them what becomes of the changes.
FocusScope {
    id: root

    required property Draft draft
    required property KitchenDesk desk
    required property HouseholdUnits units
    readonly property bool narrow: width < 520

    Component.onCompleted: {
        const file = root.draft.kind === Document.Recipe ? "RecipeEditor.qml" : root.draft.kind === Document.Kitchen ? "KitchenEditor.qml" : "StarterEditor.qml"
        fields.setSource(file, { draft: root.draft, units: root.units })
    }

    Keys.onEscapePressed: root.desk.close()

    Rectangle {
        id: head
        width: parent.width
        height: Math.max(Theme.target, title.implicitHeight) + Theme.small
        color: Theme.surface

        ActionButton {
            id: back
            objectName: "back"
            anchors { left: parent.left; leftMargin: Theme.small; verticalCenter: parent.verticalCenter }
            symbol: root.narrow ? Symbol.Back : Symbol.Close
            spoken: qsTr("Back to the list")
            onClicked: root.desk.close()
        }
        Text {
            id: title
            anchors { left: back.right; leftMargin: Theme.medium; right: parent.right; rightMargin: Theme.medium; verticalCenter: parent.verticalCenter }
            text: root.draft.name.length > 0 ? root.draft.name : root.draft.kind === Document.Recipe ? qsTr("New dish") : root.draft.kind === Document.Kitchen ? qsTr("New kitchen") : qsTr("New starter")
            color: Theme.ink
            font { pixelSize: Theme.titleSize; bold: true }
            wrapMode: Text.Wrap
            maximumLineCount: 2
            elide: Text.ElideRight
            textFormat: Text.PlainText
            Accessible.role: Accessible.Heading
            Accessible.name: text
        }
    }
    FormView {
        id: form
        objectName: "form"
        anchors { left: parent.left; right: parent.right; top: head.bottom; bottom: bar.visible ? bar.top : parent.bottom }

        ClashPanel {
            draft: root.draft
        }
        Loader {
            id: fields
            width: parent.width
        }
    }
    DraftBar {
        id: bar
        visible: root.draft.editable
        width: parent.width
        anchors.bottom: parent.bottom
        draft: root.draft
        desk: root.desk
        narrow: root.narrow
    }
}
