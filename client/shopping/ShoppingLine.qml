import QtQuick
import QtQuick.Templates as T
import Suppertide.Ui
import Suppertide.Shopping

// One line: the left of it ticks, the right of it opens who buys it and what is at hand.
Item {
    id: root

    required property ShoppingController shopping
    required property string itemId
    required property string name
    required property string shown
    required property string detail
    // Said above the line, where a group begins.
    required property string heading
    required property string note
    required property string buyer
    required property int buyerPlace
    required property string tickedBy
    required property int shopSection
    required property bool ticked
    required property bool own
    required property bool atHand
    required property bool waits
    required property int index
    property bool open: false
    signal toggled()

    readonly property bool settled: ticked || atHand
    readonly property string stateText: {
        const parts = []
        if (ticked)
            parts.push(tickedBy.length > 0 ? qsTr("in the basket, %1").arg(tickedBy) : qsTr("in the basket"))
        if (note.length > 0)
            parts.push(note)
        if (!ticked && buyer.length > 0)
            parts.push(qsTr("%1 buys it").arg(buyer))
        if (waits)
            parts.push(qsTr("to be told"))
        return parts.join(" · ")
    }

    implicitHeight: group.height + tick.height + (open ? panel.height + Theme.medium : 0)

    Rectangle {
        id: group
        width: parent.width
        height: root.heading.length > 0 ? headingText.implicitHeight + Theme.medium : 0
        visible: height > 0
        color: Theme.sunken

        Text {
            id: headingText
            x: Theme.medium
            width: parent.width - 2 * Theme.medium
            anchors.verticalCenter: parent.verticalCenter
            text: root.heading
            color: Theme.ink
            font { pixelSize: Theme.bodySize; bold: true }
            elide: Text.ElideRight
            textFormat: Text.PlainText
            Accessible.role: Accessible.Heading
            Accessible.name: text
        }
    }
    T.AbstractButton {
        id: tick
        y: group.height
        objectName: "tick/" + root.itemId
        width: parent.width - more.width - Theme.small
        height: Math.max(60, words.implicitHeight + 2 * Theme.small)
        focusPolicy: Qt.StrongFocus
        enabled: root.shopping.mayEdit && (!root.atHand || root.ticked)
        checked: root.ticked
        onClicked: root.shopping.toggle(root.itemId)

        Accessible.role: Accessible.CheckBox
        Accessible.checked: root.ticked
        Accessible.name: root.shown.length > 0 ? qsTr("%1, %2").arg(root.name).arg(root.shown) : root.name
        Accessible.description: root.stateText
        Keys.onReturnPressed: clicked()
        Keys.onEnterPressed: clicked()
        Keys.onRightPressed: root.toggled()
        Keys.onDownPressed: nextItemInFocusChain(true).forceActiveFocus(Qt.TabFocusReason)
        Keys.onUpPressed: nextItemInFocusChain(false).forceActiveFocus(Qt.BacktabFocusReason)

        Rectangle {
            id: mark
            x: Theme.medium
            width: 32
            height: 32
            radius: Theme.tiny
            anchors.verticalCenter: parent.verticalCenter
            color: root.ticked ? Theme.ready : Theme.raised
            border.width: tick.visualFocus ? 3 : 2
            border.color: tick.visualFocus ? Theme.focus : root.ticked ? Theme.readyEdge : Theme.outline

            Symbol {
                visible: root.settled
                anchors.centerIn: parent
                width: 22
                height: 22
                shape: root.ticked ? Symbol.Done : Symbol.House
                color: Theme.ink
            }
        }
        Column {
            id: words
            anchors { left: mark.right; leftMargin: Theme.medium; right: amount.left; rightMargin: Theme.small; verticalCenter: parent.verticalCenter }

            Text {
                width: parent.width
                text: root.name
                color: root.settled ? Theme.inkMuted : Theme.ink
                font { pixelSize: Theme.titleSize; strikeout: root.settled }
                wrapMode: Text.Wrap
                textFormat: Text.PlainText
            }
            Text {
                visible: text.length > 0
                width: parent.width
                text: root.stateText.length > 0 ? root.stateText : root.detail
                color: Theme.inkMuted
                font.pixelSize: Theme.captionSize
                wrapMode: Text.Wrap
                maximumLineCount: 2
                elide: Text.ElideRight
                textFormat: Text.PlainText
            }
        }
        Text {
            id: amount
            anchors { right: parent.right; rightMargin: Theme.small; verticalCenter: parent.verticalCenter }
            width: Math.min(implicitWidth, tick.width * 0.34)
            text: root.shown
            color: root.settled ? Theme.inkMuted : Theme.ink
            font { pixelSize: Theme.titleSize; bold: !root.settled }
            horizontalAlignment: Text.AlignRight
            wrapMode: Text.Wrap
            textFormat: Text.PlainText
        }
        background: Rectangle {
            color: tick.down ? Theme.accent : "transparent"
        }
    }
    ActionButton {
        id: more
        objectName: "more/" + root.itemId
        anchors { right: parent.right; rightMargin: Theme.small; verticalCenter: tick.verticalCenter }
        symbol: root.open ? Symbol.Up : Symbol.Down
        spoken: root.open ? qsTr("%1: close").arg(root.name) : qsTr("%1: who buys it, what is at hand").arg(root.name)
        onClicked: root.toggled()
    }
    Loader {
        id: panel
        visible: root.open
        y: group.height + tick.height
        x: Theme.medium
        width: root.width - 2 * Theme.medium
    }
    onOpenChanged: root.fill()
    Component.onCompleted: root.fill()

    function fill(): void {
        if (root.open)
            panel.setSource("ShoppingPanel.qml", { line: root, shopping: root.shopping })
        else
            panel.source = ""
    }
    Rectangle {
        anchors { left: parent.left; right: parent.right; bottom: parent.bottom }
        height: 1
        color: Theme.divider
    }
}
