pragma ComponentBehavior: Bound
import QtQuick
import QtQuick.Templates as T
import Suppertide.Ui
import Suppertide.Kitchen

// What there is of one kind, to be opened; and a button to begin another.
FocusScope {
    id: root

    required property KitchenDesk desk
    readonly property list<string> kindNames: [qsTr("Recipes"), qsTr("Kitchens"), qsTr("Starters")]

    Column {
        id: head
        x: Theme.medium
        y: Theme.small
        width: parent.width - 2 * Theme.medium
        spacing: Theme.small

        PickEntry {
            objectName: "kinds"
            width: parent.width
            label: ""
            choices: root.kindNames
            chosen: root.desk.kind
            onPicked: index => root.desk.kind = index
        }
        TextEntry {
            objectName: "search"
            visible: root.desk.library.count > 8 || root.desk.filter.length > 0
            width: parent.width
            label: qsTr("Search")
            value: root.desk.filter
            onEdited: value => root.desk.filter = value
        }
        ActionButton {
            objectName: "begin"
            visible: root.desk.mayEdit
            symbol: Symbol.Plus
            text: root.desk.kind === Document.Recipe ? qsTr("New dish") : root.desk.kind === Document.Kitchen ? qsTr("New kitchen") : qsTr("New starter")
            onClicked: root.desk.begin()
        }
        Row {
            visible: root.desk.removedName.length > 0
            width: parent.width
            spacing: Theme.small

            Text {
                width: parent.width - undo.width - Theme.small
                anchors.verticalCenter: parent.verticalCenter
                text: qsTr("“%1” was deleted.").arg(root.desk.removedName)
                color: Theme.ink
                font.pixelSize: Theme.bodySize
                wrapMode: Text.Wrap
                textFormat: Text.PlainText
                Accessible.role: Accessible.AlertMessage
                Accessible.name: text
            }
            ActionButton {
                id: undo
                objectName: "undoRemove"
                symbol: Symbol.Undo
                text: qsTr("Have it back")
                onClicked: root.desk.undoRemove()
            }
        }
    }
    ListView {
        id: list
        objectName: "library"
        anchors { left: parent.left; right: parent.right; top: head.bottom; bottom: parent.bottom; topMargin: Theme.small }
        model: root.desk.library
        clip: true
        focus: true
        spacing: 2
        boundsBehavior: Flickable.StopAtBounds
        keyNavigationEnabled: true
        Accessible.role: Accessible.List
        Accessible.name: root.kindNames[root.desk.kind]

        delegate: T.AbstractButton {
            id: row
            required property string documentId
            required property string name
            required property string detail
            required property int symbol
            required property bool changed
            required property int index
            readonly property bool here: documentId === root.desk.openId

            objectName: "open/" + documentId
            x: Theme.small
            width: list.width - 2 * Theme.small
            height: Math.max(Theme.target + Theme.small, words.implicitHeight + Theme.small)
            focusPolicy: Qt.StrongFocus
            onClicked: root.desk.open(documentId)
            Accessible.role: Accessible.ListItem
            Accessible.name: changed ? qsTr("%1, %2, not saved yet").arg(name).arg(detail) : qsTr("%1, %2").arg(name).arg(detail)
            Accessible.selected: here
            Keys.onReturnPressed: clicked()
            Keys.onEnterPressed: clicked()
            Keys.onDownPressed: nextItemInFocusChain(true).forceActiveFocus(Qt.TabFocusReason)
            Keys.onUpPressed: nextItemInFocusChain(false).forceActiveFocus(Qt.BacktabFocusReason)

            Symbol {
                id: sign
                x: Theme.small
                shape: row.symbol
                color: Theme.ink
                anchors.verticalCenter: parent.verticalCenter
            }
            Column {
                id: words
                anchors { left: sign.right; leftMargin: Theme.small; right: parent.right; rightMargin: Theme.small; verticalCenter: parent.verticalCenter }

                Text {
                    width: parent.width
                    text: row.name
                    color: Theme.ink
                    font { pixelSize: Theme.bodySize; bold: row.here }
                    wrapMode: Text.Wrap
                    maximumLineCount: 2
                    elide: Text.ElideRight
                    textFormat: Text.PlainText
                }
                Text {
                    width: parent.width
                    text: row.changed ? qsTr("not saved yet · %1").arg(row.detail) : row.detail
                    color: row.changed ? Theme.late : Theme.inkMuted
                    font.pixelSize: Theme.captionSize
                    elide: Text.ElideRight
                    textFormat: Text.PlainText
                }
            }
            background: Rectangle {
                radius: Theme.radius
                color: row.here || row.down ? Theme.accent : "transparent"
                border.width: row.visualFocus ? 3 : 0
                border.color: Theme.focus
            }
        }
        EmptyState {
            anchors.fill: parent
            visible: root.desk.library.count === 0
            symbol: root.desk.kind === Document.Recipe ? Symbol.Pot : root.desk.kind === Document.Kitchen ? Symbol.Oven : Symbol.Jar
            headline: root.desk.filter.length > 0 ? qsTr("Nothing of that name") : root.desk.kind === Document.Recipe ? qsTr("No recipes yet") : root.desk.kind === Document.Kitchen ? qsTr("No kitchen yet") : qsTr("No starter yet")
            advice: root.desk.filter.length > 0 ? "" : root.desk.kind === Document.Recipe ? qsTr("A dish needs a name and its steps; amounts and everything else can come later.") : root.desk.kind === Document.Kitchen ? qsTr("A plan needs to know your ovens, burners and where things stand.") : qsTr("Add the starter in your jar, and plans know when to feed it.")
        }
    }
}
