import QtQuick
import QtQuick.Controls.Basic
import Suppertide.Ui

// A column of fields that scrolls; the field that has the focus is brought into sight.
ScrollView {
    id: root

    default property alias content: column.data
    property int gap: Theme.medium
    property int mostWidth: 760
    readonly property int columnWidth: column.width

    contentWidth: availableWidth
    contentHeight: column.implicitHeight + 2 * Theme.medium

    function bringIntoSight(item: Item): void {
        const view = root.contentItem as Flickable
        const top = item.mapToItem(column, 0, 0).y + Theme.medium
        if (top - Theme.large < view.contentY)
            view.contentY = Math.max(0, top - Theme.large)
        else if (top + item.height + Theme.large > view.contentY + view.height)
            view.contentY = Math.min(Math.max(0, view.contentHeight - view.height), top + item.height + Theme.large - view.height)
    }
    readonly property Item focused: Window.activeFocusItem
    onFocusedChanged: {
        for (let item = root.focused; item; item = item.parent)
            if (item === column) {
                root.bringIntoSight(root.focused)
                return
            }
    }

    Column {
        id: column
        x: Math.max(Theme.medium, (root.availableWidth - width) / 2)
        y: Theme.medium
        width: Math.min(root.mostWidth, root.availableWidth - 2 * Theme.medium)
        spacing: root.gap
    }
}
