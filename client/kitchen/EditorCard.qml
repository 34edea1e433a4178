import QtQuick
import QtQuick.Templates as T
import Suppertide.Ui

// One member of a list that is edited: in short, and opened with all its fields.
Rectangle {
    id: root

    required property string title
    required property string detail
    required property int symbol
    required property int problems
    property bool open: false
    property bool readOnly: false
    // Its place in the list matters; where it is.
    property bool ordered: false
    property bool isFirst: false
    property bool isLast: false
    // The file of its fields, and their required properties.
    required property url body
    required property var given
    signal toggled()
    signal removed()
    signal moved(places: int)

    width: parent ? parent.width : 0
    implicitHeight: head.height + (open && loader.item ? loader.height + 2 * Theme.medium : 0)
    radius: Theme.radius
    color: Theme.raised
    border.color: problems > 0 ? Theme.late : Theme.divider
    border.width: problems > 0 ? 2 : 1

    T.AbstractButton {
        id: head
        objectName: "card"
        width: parent.width - actions.width
        implicitHeight: Math.max(Theme.target + Theme.small, words.implicitHeight + Theme.small)
        focusPolicy: Qt.StrongFocus
        onClicked: root.toggled()

        Accessible.role: Accessible.Button
        Accessible.name: root.detail.length > 0 ? qsTr("%1, %2").arg(root.title).arg(root.detail) : root.title
        Accessible.description: root.problems > 0 ? qsTr("%n things are wrong", "", root.problems) : root.open ? qsTr("Open") : ""
        Keys.onReturnPressed: clicked()
        Keys.onEnterPressed: clicked()
        Keys.onDeletePressed: if (!root.readOnly) root.removed()
        Keys.onPressed: event => {
            if (root.ordered && !root.readOnly && (event.modifiers & Qt.AltModifier) && (event.key === Qt.Key_Up || event.key === Qt.Key_Down)) {
                root.moved(event.key === Qt.Key_Up ? -1 : 1)
                event.accepted = true
            }
        }

        Symbol {
            id: sign
            visible: shape !== Symbol.Nothing
            x: Theme.small + Theme.tiny
            width: visible ? 22 : 0
            height: 22
            shape: root.symbol
            color: Theme.ink
            anchors.verticalCenter: parent.verticalCenter
        }
        Column {
            id: words
            anchors { left: sign.right; leftMargin: Theme.small + Theme.tiny; right: parent.right; rightMargin: Theme.small; verticalCenter: parent.verticalCenter }

            Text {
                width: parent.width
                text: root.title.length > 0 ? root.title : qsTr("Without a name yet")
                color: root.title.length > 0 ? Theme.ink : Theme.inkMuted
                font { pixelSize: Theme.bodySize; bold: true }
                wrapMode: Text.Wrap
                textFormat: Text.PlainText
            }
            Text {
                visible: text.length > 0
                width: parent.width
                text: root.detail
                color: Theme.inkMuted
                font.pixelSize: Theme.captionSize
                wrapMode: Text.Wrap
                textFormat: Text.PlainText
            }
            Row {
                visible: root.problems > 0
                spacing: Theme.tiny

                Symbol {
                    width: 16
                    height: 16
                    shape: Symbol.Refused
                    color: Theme.late
                }
                Text {
                    text: qsTr("%n things to put right", "", root.problems)
                    color: Theme.late
                    font.pixelSize: Theme.captionSize
                }
            }
        }
        background: Rectangle {
            radius: Theme.radius
            color: head.down ? Theme.accent : "transparent"
            border.width: head.visualFocus ? 3 : 0
            border.color: Theme.focus
        }
    }
    Row {
        id: actions
        anchors { right: parent.right; rightMargin: Theme.tiny; verticalCenter: head.verticalCenter }
        spacing: Theme.tiny

        ActionButton {
            objectName: "up"
            visible: root.ordered && !root.readOnly && root.open
            enabled: !root.isFirst
            symbol: Symbol.Up
            spoken: qsTr("%1: earlier").arg(root.title)
            onClicked: root.moved(-1)
        }
        ActionButton {
            objectName: "down"
            visible: root.ordered && !root.readOnly && root.open
            enabled: !root.isLast
            symbol: Symbol.Down
            spoken: qsTr("%1: later").arg(root.title)
            onClicked: root.moved(1)
        }
        ActionButton {
            objectName: "remove"
            visible: !root.readOnly
            symbol: Symbol.Close
            spoken: qsTr("Take out %1").arg(root.title)
            onClicked: root.removed()
        }
    }
    Loader {
        id: loader
        visible: root.open
        y: head.height + Theme.small
        x: Theme.medium
        width: root.width - 2 * Theme.medium
    }
    onOpenChanged: root.fill()
    onGivenChanged: root.fill()
    Component.onCompleted: root.fill()

    function fill(): void {
        if (root.open)
            loader.setSource(root.body, root.given)
        else
            loader.source = ""
    }
}
