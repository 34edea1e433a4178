import QtQuick
import Suppertide.Ui
import Suppertide.Shopping

// How the list is looked at, and how much of it is left.
Rectangle {
    id: root

    required property ShoppingController shopping
    required property bool tabs
    required property int shown
    signal wanted(tab: int)

    implicitHeight: column.height + 2 * Theme.small
    color: Theme.surface

    Column {
        id: column
        x: Theme.medium
        y: Theme.small
        width: parent.width - 2 * Theme.medium
        spacing: Theme.small

        PickEntry {
            objectName: "tabs"
            visible: root.tabs
            width: parent.width
            label: ""
            choices: [root.shopping.openCount > 0 ? qsTr("To buy: %1").arg(root.shopping.openCount) : qsTr("To buy"), qsTr("To take out")]
            symbols: [Symbol.Basket, Symbol.Snowflake]
            chosen: root.shown
            onPicked: index => root.wanted(index)
        }
        Flow {
            visible: !root.tabs || root.shown === 0
            width: parent.width
            spacing: Theme.small

            Text {
                objectName: "left"
                // On a phone the tab counts what is left.
                visible: !root.tabs || root.shopping.openCount === 0 && text.length > 0
                height: Theme.target
                verticalAlignment: Text.AlignVCenter
                text: root.shopping.allCount === 0 ? "" : root.shopping.openCount === 0 ? qsTr("All of it is in the basket or at hand") : qsTr("%1 of %2 still to buy").arg(root.shopping.openCount).arg(root.shopping.allCount)
                color: Theme.ink
                font { pixelSize: Theme.titleSize; bold: true }
                Accessible.role: Accessible.StaticText
                Accessible.name: text
            }
            PickEntry {
                objectName: "order"
                width: Math.min(implicitWidth, parent.width)
                label: ""
                choices: [qsTr("By day"), qsTr("By section")]
                chosen: root.shopping.bySection ? 1 : 0
                onPicked: index => root.shopping.bySection = index === 1
            }
            PickEntry {
                objectName: "filters"
                width: Math.min(implicitWidth, parent.width)
                label: ""
                several: true
                choices: [qsTr("Only mine"), qsTr("Only open")]
                marked: (root.shopping.onlyMine ? [0] : []).concat(root.shopping.onlyOpen ? [1] : [])
                onPicked: index => {
                    if (index === 0)
                        root.shopping.onlyMine = !root.shopping.onlyMine
                    else
                        root.shopping.onlyOpen = !root.shopping.onlyOpen
                }
            }
        }
        Text {
            visible: text.length > 0
            width: parent.width
            text: root.shopping.trouble
            color: Theme.late
            font.pixelSize: Theme.bodySize
            wrapMode: Text.Wrap
            textFormat: Text.PlainText
        }
    }
}
