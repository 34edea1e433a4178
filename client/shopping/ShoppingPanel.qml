import QtQuick
import Suppertide.Ui
import Suppertide.Shopping

// Of one line: for which dishes, whether it is in the house, who buys it.
Column {
    id: root

    required property ShoppingLine line
    required property ShoppingController shopping

    width: parent ? parent.width : 0
    spacing: Theme.small

    Text {
        visible: root.line.detail.length > 0
        width: parent.width
        text: qsTr("For %1").arg(root.line.detail)
        color: Theme.ink
        font.pixelSize: Theme.bodySize
        wrapMode: Text.Wrap
        textFormat: Text.PlainText
    }
    SwitchEntry {
        visible: !root.line.own
        width: parent.width
        text: qsTr("It is in the house already")
        on: root.line.atHand
        readOnly: !root.shopping.mayEdit
        onEdited: on => root.shopping.setAtHand(root.line.itemId, on)
    }
    PickEntry {
        visible: !root.line.own
        width: parent.width
        label: qsTr("Who buys it")
        choices: root.shopping.members
        chosen: root.line.buyerPlace
        readOnly: !root.shopping.mayEdit
        onPicked: index => root.shopping.setBuyer(root.line.itemId, index === chosen ? -1 : index)
    }
    ActionButton {
        visible: !root.line.own && root.line.buyer.length > 0 && root.shopping.mayEdit
        text: qsTr("%1 buys all of this section").arg(root.line.buyer)
        onClicked: root.shopping.setSectionBuyer(root.line.shopSection, root.line.buyerPlace)
    }
    ActionButton {
        visible: root.line.own && root.shopping.mayEdit
        symbol: Symbol.Close
        text: qsTr("Take it off the list")
        onClicked: root.shopping.removeOwn(root.line.itemId)
    }
}
