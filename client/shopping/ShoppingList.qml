pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Shopping

// The lines, under their day or their section, and a field for what no recipe asks for.
FocusScope {
    id: root

    required property ShoppingController shopping
    property string opened

    ListView {
        id: list
        objectName: "shoppingList"
        anchors { left: parent.left; right: parent.right; top: parent.top; bottom: foot.top }
        model: root.shopping.items
        clip: true
        focus: true
        spacing: 0
        boundsBehavior: Flickable.StopAtBounds
        cacheBuffer: 2000
        Accessible.role: Accessible.List
        Accessible.name: qsTr("To buy")

        delegate: ShoppingLine {
            width: ListView.view.width
            shopping: root.shopping
            open: root.opened === itemId
            onToggled: root.opened = open ? "" : itemId
        }
    }
    EmptyState {
        anchors.fill: list
        visible: list.count === 0
        symbol: Symbol.Basket
        headline: root.shopping.allCount > 0 ? qsTr("Nothing left here") : root.shopping.known ? qsTr("Nothing to buy") : qsTr("The list is being made…")
        advice: root.shopping.allCount > 0 ? qsTr("What is in the basket, or bought by others, is left out. Change that above.") : root.shopping.known ? qsTr("As soon as the event has dishes with ingredients, all of them stand here as one list.") : qsTr("It comes from the server the first time, and is then here without a connection, too.")
    }
    Rectangle {
        id: foot
        anchors { left: parent.left; right: parent.right; bottom: parent.bottom }
        height: more.height + (more.height > 0 ? 2 * Theme.small : 0)
        color: Theme.sunken

        Column {
            id: more
            x: Theme.medium
            y: Theme.small
            width: parent.width - 2 * Theme.medium
            spacing: Theme.small

            Text {
                visible: root.shopping.needless.length > 0
                width: parent.width
                text: qsTr("Bought, but no dish asks for it any more: %1").arg(root.shopping.needless)
                color: Theme.inkMuted
                font.pixelSize: Theme.bodySize
                wrapMode: Text.Wrap
                textFormat: Text.PlainText
            }
            Row {
                visible: root.shopping.mayEdit
                width: parent.width
                spacing: Theme.small

                TextEntry {
                    id: own
                    objectName: "own"
                    property string typed
                    width: parent.width - add.width - Theme.small
                    label: qsTr("Something no recipe asks for")
                    example: qsTr("12 candles")
                    value: typed
                    onEdited: value => typed = value
                    onAccepted: add.clicked()
                }
                ActionButton {
                    id: add
                    objectName: "addOwn"
                    anchors.bottom: parent.bottom
                    symbol: Symbol.Plus
                    text: qsTr("Add")
                    enabled: own.typed.trim().length > 0
                    onClicked: {
                        root.shopping.addOwn(own.typed)
                        own.typed = ""
                    }
                }
            }
        }
    }
}
