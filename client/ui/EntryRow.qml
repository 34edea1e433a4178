import QtQuick
import Suppertide.Ui

// One row of a list that is edited: what is in it, and a button to take it out. Delete on the
// focused button does it, too; what was taken out comes back by the list's undo.
Item {
    id: root

    // What the row is: "Large oven".
    required property string spoken
    property bool readOnly: false
    default property alias content: slot.data
    signal removed()

    implicitHeight: Math.max(Theme.target, slot.childrenRect.height)

    Item {
        id: slot
        anchors { left: parent.left; right: parent.right; rightMargin: root.readOnly ? 0 : remove.width + Theme.small }
        height: childrenRect.height
    }
    ActionButton {
        id: remove
        objectName: "remove"
        visible: !root.readOnly
        anchors { right: parent.right; bottom: slot.bottom }
        symbol: Symbol.Close
        spoken: qsTr("Take out %1").arg(root.spoken)
        onClicked: root.removed()
        Keys.onDeletePressed: root.removed()
    }
}
