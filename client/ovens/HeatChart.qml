pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Ovens

// One oven over a day: what it is set to, how hot it really is, the dishes in it, and the cursor
// that every oven shares. Drag it, or left and right.
FocusScope {
    id: root

    required property OvensController ovens
    required property string name
    required property string headline
    required property var temperatures
    required property var setpoints
    required property var blocks
    // Names would be cut: each dish has its number, and the list below the chart its name.
    property bool numbered: false
    readonly property int rowCount: {
        let rows = 0
        for (const block of blocks)
            rows = Math.max(rows, block.row + 1)
        return rows
    }
    readonly property int blocksHeight: rowCount * 24

    implicitHeight: 170 + blocksHeight
    activeFocusOnTab: true
    Accessible.role: Accessible.Graphic
    Accessible.name: qsTr("%1 at %2: %3").arg(name).arg(ovens.cursorText).arg(headline)
    Accessible.description: qsTr("Left and right move the time, page keys go from change to change")
    Keys.onLeftPressed: ovens.nudgeCursor(-5)
    Keys.onRightPressed: ovens.nudgeCursor(5)
    Keys.onPressed: event => {
        if (event.key === Qt.Key_PageDown)
            root.ovens.toChange(1)
        else if (event.key === Qt.Key_PageUp)
            root.ovens.toChange(-1)
        else if (event.key === Qt.Key_Home)
            root.ovens.toNow()
        else
            return
        event.accepted = true
    }

    Rectangle {
        anchors.fill: parent
        radius: Theme.radius
        color: Theme.surface
        border.width: root.activeFocus ? 3 : 1
        border.color: root.activeFocus ? Theme.focus : Theme.divider
    }
    Item {
        id: field
        anchors { fill: parent; margins: Theme.small; topMargin: 20; bottomMargin: 24 }
        clip: true

        Item {
            id: heat
            width: parent.width
            height: parent.height - root.blocksHeight

            Repeater {
                model: root.temperatures

                PlotLine {
                    required property var modelData

                    anchors.fill: parent
                    points: modelData
                    color: Theme.heat
                    fill: Theme.heatFill
                }
            }
            Repeater {
                model: root.setpoints

                Item {
                    id: span

                    required property var modelData

                    x: modelData.from * heat.width
                    y: (1 - modelData.height) * (heat.height - 1)
                    width: (modelData.until - modelData.from) * heat.width

                    Rectangle {
                        width: parent.width
                        height: 2
                        color: Theme.setpoint
                    }
                    Rectangle {
                        visible: width < span.width
                        // Above its line; under it where the chart ends.
                        y: span.y < height + 2 ? 4 : -height - 1
                        anchors.horizontalCenter: parent.horizontalCenter
                        width: setting.implicitWidth + 4
                        height: setting.implicitHeight
                        radius: 3
                        // No line runs through the words.
                        color: Theme.surface

                        Text {
                            id: setting
                            anchors.centerIn: parent
                            text: span.modelData.label
                            color: Theme.ink
                            font { pixelSize: Theme.captionSize; bold: true }
                        }
                    }
                }
            }
        }
        Repeater {
            model: root.blocks

            Rectangle {
                id: block

                required property var modelData
                required property int index

                x: Math.max(0, modelData.from * field.width)
                y: heat.height + modelData.row * 24 + 2
                width: Math.min(field.width, modelData.until * field.width) - x
                height: 21
                radius: 4
                color: Theme.heatFill
                border.color: Theme.heat
                Accessible.role: Accessible.StaticText
                Accessible.name: modelData.spoken

                // A short stay's name stands beside it, where its row is kept free.
                Text {
                    readonly property bool inside: root.numbered || block.modelData.fits

                    x: root.numbered ? (block.width - width) / 2 : inside ? 4 : block.modelData.leans ? -width - 4 : block.width + 4
                    width: root.numbered ? implicitWidth : Math.min(implicitWidth, inside ? block.width - 6 : (block.modelData.room - block.modelData.until + block.modelData.from) * field.width)
                    height: parent.height
                    text: root.numbered ? block.index + 1 : block.modelData.label
                    color: Theme.ink
                    font { pixelSize: Theme.captionSize; bold: root.numbered }
                    verticalAlignment: Text.AlignVCenter
                    elide: Text.ElideRight
                    textFormat: Text.PlainText
                }
            }
        }
    }
    Repeater {
        model: root.ovens.ticks

        Text {
            required property real part
            required property string label
            required property int index
            // Where they would stand too close, only some are said.
            readonly property int every: Math.max(1, Math.ceil(root.ovens.ticks.count * (implicitWidth + Theme.small) / Math.max(1, field.width)))

            visible: index % every === 0
            x: Math.max(2, Math.min(root.width - width - 2, field.x + part * field.width - width / 2))
            y: root.height - height - 4
            text: label
            color: Theme.inkMuted
            font.pixelSize: Theme.captionSize
        }
    }
    Rectangle {
        visible: root.ovens.nowX >= 0 && root.ovens.nowX <= 1
        x: field.x + root.ovens.nowX * field.width - 1
        y: 20
        width: 2
        height: parent.height - 44
        color: Theme.now
    }
    Rectangle {
        x: field.x + root.ovens.cursorX * field.width - 1
        y: 4
        width: 3
        height: parent.height - 28
        color: Theme.ink

        Rectangle {
            x: root.ovens.cursorX > 0.5 ? 3 - width : 0
            width: cursorLabel.implicitWidth + Theme.small
            height: cursorLabel.implicitHeight + 2
            color: Theme.ink

            Text {
                id: cursorLabel
                anchors.centerIn: parent
                text: root.ovens.cursorText
                color: Theme.surface
                font { pixelSize: Theme.captionSize; bold: true }
            }
        }
    }
    TapHandler {
        onTapped: eventPoint => {
            root.forceActiveFocus()
            root.ovens.moveCursor((eventPoint.position.x - field.x) / field.width)
        }
    }
    DragHandler {
        target: null
        yAxis.enabled: false
        onCentroidChanged: if (active) root.ovens.moveCursor((centroid.position.x - field.x) / field.width)
    }
}
