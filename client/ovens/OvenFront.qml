pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui

// The oven as one stands before it: its racks, and what stands on each.
Rectangle {
    id: root

    required property var racks
    // "Where there is room: ...", below the racks.
    required property string loose
    property real heat: 0

    implicitHeight: column.implicitHeight + 2 * Theme.small
    radius: Theme.radius
    color: Theme.sunken
    border { color: Theme.outline; width: 2 }
    Accessible.role: Accessible.List
    Accessible.name: qsTr("Racks, from the top")

    Column {
        id: column
        x: Theme.small
        y: Theme.small
        width: parent.width - 2 * Theme.small
        spacing: Theme.tiny

        Repeater {
            model: root.racks

            Item {
                id: rack

                required property var modelData

                width: column.width
                height: Math.max(Theme.target, words.implicitHeight + 6)
                Accessible.role: Accessible.ListItem
                Accessible.name: modelData.dish.length > 0 ? qsTr("Rack %1: %2, %3").arg(modelData.level).arg(modelData.dish).arg(modelData.until) : qsTr("Rack %1: empty").arg(modelData.level)

                Text {
                    id: number
                    width: 20
                    anchors { bottom: bars.top; bottomMargin: 4 }
                    text: rack.modelData.level
                    color: Theme.inkMuted
                    font.pixelSize: Theme.captionSize
                }
                Rectangle {
                    visible: rack.modelData.dish.length > 0
                    x: number.width + Theme.tiny
                    width: parent.width - x
                    anchors { top: parent.top; topMargin: 2; bottom: bars.top }
                    radius: 4
                    color: Theme.heatFill
                    border.color: Theme.heat
                }
                Text {
                    id: words
                    x: number.width + Theme.small + Theme.tiny
                    width: parent.width - x - Theme.tiny
                    anchors { bottom: bars.top; bottomMargin: 3 }
                    text: rack.modelData.dish.length > 0 ? qsTr("%1\n%2").arg(rack.modelData.dish).arg(rack.modelData.until) : qsTr("empty")
                    color: rack.modelData.dish.length > 0 ? Theme.ink : Theme.inkMuted
                    font { pixelSize: Theme.captionSize; bold: rack.modelData.dish.length > 0 }
                    wrapMode: Text.Wrap
                    textFormat: Text.PlainText
                }
                Rectangle {
                    id: bars
                    anchors.bottom: parent.bottom
                    width: parent.width
                    height: 2
                    color: Theme.outline
                }
            }
        }
        WordsText {
            width: parent.width
            visible: text.length > 0
            text: root.loose
            font.pixelSize: Theme.captionSize
        }
    }
}
