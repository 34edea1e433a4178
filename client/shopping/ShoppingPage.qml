pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Session
import Suppertide.Shopping

// What to buy, ticked off together; beside it, on a phone behind a tab, what to take out when.
FocusScope {
    id: root
    objectName: "shoppingPage"

    required property HouseholdSession session
    readonly property bool narrow: width < 900
    readonly property alias list: shopping
    // On a phone: 0 buys, 1 fetches.
    property int shown: 0

    ShoppingController {
        id: shopping
        session: root.session
    }
    ShoppingBar {
        id: bar
        width: parent.width
        shopping: shopping
        tabs: root.narrow
        shown: root.shown
        onWanted: tab => root.shown = tab
    }
    ShoppingList {
        id: list
        visible: !root.narrow || root.shown === 0
        anchors { top: bar.bottom; bottom: parent.bottom; left: parent.left }
        width: root.narrow ? parent.width : Math.round(parent.width * 0.6)
        focus: true
        shopping: shopping
    }
    Rectangle {
        visible: !root.narrow
        anchors { top: bar.bottom; bottom: parent.bottom; left: list.right }
        width: 1
        color: Theme.divider
    }
    FetchList {
        visible: !root.narrow || root.shown === 1
        anchors { top: bar.bottom; bottom: parent.bottom; right: parent.right }
        width: root.narrow ? parent.width : parent.width - list.width - 1
        shopping: shopping
    }
}
