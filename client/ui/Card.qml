import QtQuick
import Suppertide.Ui

// A sheet that holds what belongs together; as high as its content.
Rectangle {
    id: root

    default property alias content: column.data
    property int padding: Theme.medium
    property alias spacing: column.spacing
    // The width that its content may use.
    readonly property real room: width - 2 * padding

    implicitHeight: column.implicitHeight + 2 * padding
    radius: Theme.radius
    color: Theme.raised
    border.color: Theme.divider

    Column {
        id: column
        x: root.padding
        y: root.padding
        width: root.room
        spacing: Theme.small
    }
}
