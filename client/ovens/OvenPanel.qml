pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Ovens

// One oven: its day as a chart, and its racks at the time under the cursor.
Card {
    id: root

    required property OvensController ovens
    required property string ovenId
    required property string name
    required property string headline
    required property string detail
    required property var temperatures
    required property var setpoints
    required property var blocks
    required property var racks
    required property string loose
    readonly property bool wide: room > 620
    readonly property bool numbered: room < 480

    objectName: "oven/" + ovenId
    Accessible.role: Accessible.Grouping
    Accessible.name: name

    Row {
        width: root.room
        spacing: Theme.small

        Symbol {
            id: sign
            width: 28
            height: 28
            shape: Symbol.Oven
            color: Theme.ink
        }
        Column {
            width: parent.width - sign.width - Theme.small

            Text {
                width: parent.width
                text: root.name
                color: Theme.ink
                font { pixelSize: Theme.titleSize; bold: true }
                wrapMode: Text.Wrap
                textFormat: Text.PlainText
                Accessible.role: Accessible.Heading
                Accessible.name: text
            }
            Text {
                width: parent.width
                text: qsTr("%1: %2, %3").arg(root.ovens.cursorText).arg(root.headline).arg(root.detail)
                color: Theme.ink
                font.pixelSize: Theme.bodySize
                wrapMode: Text.Wrap
                textFormat: Text.PlainText
            }
        }
    }
    Grid {
        width: root.room
        columns: root.wide ? 2 : 1
        spacing: Theme.medium

        HeatChart {
            objectName: "chart/" + root.ovenId
            width: root.wide ? root.room - front.width - Theme.medium : root.room
            ovens: root.ovens
            name: root.name
            headline: root.headline
            temperatures: root.temperatures
            setpoints: root.setpoints
            blocks: root.blocks
            numbered: root.numbered
        }
        Column {
            visible: root.numbered
            width: root.room
            spacing: 2

            Repeater {
                model: root.numbered ? root.blocks : []

                Text {
                    required property var modelData
                    required property int index

                    width: root.room
                    text: qsTr("%1  %2").arg(index + 1).arg(modelData.spoken)
                    color: Theme.ink
                    font.pixelSize: Theme.captionSize
                    wrapMode: Text.Wrap
                    textFormat: Text.PlainText
                    Accessible.ignored: true
                }
            }
        }
        OvenFront {
            id: front
            width: root.wide ? 240 : root.room
            racks: root.racks
            loose: root.loose
        }
    }
}
