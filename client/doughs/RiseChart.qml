pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Doughs

// How a dough rises: its forecast with the band between slow and fast, the window in which it is
// ready, now, what was seen; beside it the curve corrected by what is being told. A finger on the
// chart tells the rise at its height; up and down do the same.
FocusScope {
    id: root

    required property DoughsController doughs
    readonly property bool comparing: doughs.corrected.known

    implicitHeight: 260
    activeFocusOnTab: true
    Accessible.role: Accessible.Graphic
    Accessible.name: qsTr("Rise of %1. %2. %3").arg(doughs.title).arg(doughs.stateText).arg(doughs.windowText)
    Accessible.description: doughs.mayTell ? qsTr("Up and down tell how far it has risen") : ""
    Keys.onUpPressed: doughs.nudgeRise(1)
    Keys.onDownPressed: doughs.nudgeRise(-1)
    Keys.onReturnPressed: doughs.tell()
    Keys.onEscapePressed: doughs.forget()

    Rectangle {
        anchors.fill: parent
        radius: Theme.radius
        color: Theme.raised
        border.width: root.activeFocus ? 3 : 1
        border.color: root.activeFocus ? Theme.focus : Theme.divider
    }
    Item {
        id: field
        anchors { fill: parent; margins: Theme.small; bottomMargin: 28; topMargin: 26 }

        Rectangle {
            readonly property bool known: root.doughs.curve.readyFrom >= 0

            visible: known
            x: root.doughs.curve.readyFrom * field.width
            width: (Math.min(1, root.doughs.curve.readyUntil) - root.doughs.curve.readyFrom) * field.width
            height: field.height
            color: Theme.ready
            border { width: 1; color: Theme.readyEdge }
            opacity: root.comparing ? 0.4 : 1

            Text {
                // Not under the line of now.
                readonly property real past: root.doughs.nowX * field.width - parent.x + Theme.tiny
                x: past > Theme.tiny - width - 4 && past < width + 2 * Theme.tiny ? past : Theme.tiny
                anchors { bottom: parent.bottom; bottomMargin: Theme.tiny }
                visible: !root.comparing
                text: qsTr("ready")
                color: Theme.ink
                font { pixelSize: Theme.captionSize; bold: true }
            }
        }
        Rectangle {
            visible: root.comparing && root.doughs.corrected.readyFrom >= 0
            x: root.doughs.corrected.readyFrom * field.width
            width: (Math.min(1, root.doughs.corrected.readyUntil) - root.doughs.corrected.readyFrom) * field.width
            height: field.height
            color: "transparent"
            border { width: 3; color: Theme.readyEdge }

            Text {
                anchors { left: parent.left; leftMargin: Theme.tiny; bottom: parent.bottom; bottomMargin: Theme.tiny }
                text: qsTr("ready then")
                color: Theme.ink
                font { pixelSize: Theme.captionSize; bold: true }
            }
        }
        Rectangle {
            y: (1 - root.doughs.curve.wanted) * field.height
            width: field.width
            height: 1
            color: Theme.outline
            visible: root.doughs.curve.known

            Text {
                anchors { left: parent.left; leftMargin: Theme.tiny; bottom: parent.top }
                text: qsTr("wanted")
                color: Theme.inkMuted
                font.pixelSize: Theme.captionSize
            }
        }
        PlotLine {
            anchors.fill: parent
            points: root.doughs.curve.fast
            base: root.doughs.curve.slow
            fill: Theme.dough
            opacity: root.comparing ? 0.35 : 1
        }
        PlotLine {
            anchors.fill: parent
            points: root.doughs.curve.rise
            color: Theme.doughEdge
            lineWidth: 3
            dashed: root.comparing
        }
        PlotLine {
            anchors.fill: parent
            visible: root.comparing
            points: root.doughs.corrected.fast
            base: root.doughs.corrected.slow
            fill: Theme.dough
            opacity: 0.6
        }
        PlotLine {
            anchors.fill: parent
            visible: root.comparing
            points: root.doughs.corrected.rise
            color: Theme.ink
            lineWidth: 3
        }
        Rectangle {
            visible: root.doughs.nowX >= 0 && root.doughs.nowX <= 1
            x: root.doughs.nowX * field.width - 1
            y: -18
            width: 3
            height: field.height + 18
            color: Theme.now

            Rectangle {
                x: parent.x > field.width / 2 ? -width : parent.width
                width: nowLabel.implicitWidth + Theme.small
                height: nowLabel.implicitHeight + 2
                color: Theme.now

                Text {
                    id: nowLabel
                    anchors.centerIn: parent
                    text: qsTr("now %1").arg(root.doughs.nowText)
                    color: Theme.surface
                    font { pixelSize: Theme.captionSize; bold: true }
                }
            }
        }
        Repeater {
            model: root.doughs.seen

            Rectangle {
                required property real x_
                required property real y_
                required property string label

                x: x_ * field.width - width / 2
                y: (1 - y_) * field.height - height / 2
                width: 14
                height: 14
                radius: 7
                color: Theme.surface
                border { width: 3; color: Theme.ink }
                Accessible.role: Accessible.StaticText
                Accessible.name: label
            }
        }
        Rectangle {
            visible: root.doughs.toldRise > 0
            x: root.doughs.nowX * field.width - width / 2
            y: (1 - root.doughs.toldRiseY) * field.height - height / 2
            width: 22
            height: 22
            radius: 11
            color: Theme.accent
            border { width: 3; color: Theme.ink }
        }
        Repeater {
            model: root.doughs.ticks

            Rectangle {
                required property real x_
                required property string label

                x: x_ * field.width
                y: field.height
                width: 1
                height: 6
                color: Theme.outline

                Text {
                    x: Math.max(-parent.x, Math.min(-width / 2, field.width - parent.x - width))
                    y: 7
                    text: parent.label
                    color: Theme.inkMuted
                    font.pixelSize: Theme.captionSize
                    textFormat: Text.PlainText
                }
            }
        }
        Rectangle {
            y: field.height
            width: field.width
            height: 1
            color: Theme.outline
        }
        TapHandler {
            enabled: root.doughs.mayTell
            onTapped: eventPoint => {
                root.forceActiveFocus()
                root.doughs.riseAtHeight(1 - eventPoint.position.y / field.height)
            }
        }
        DragHandler {
            enabled: root.doughs.mayTell
            target: null
            xAxis.enabled: false
            onCentroidChanged: if (active) root.doughs.riseAtHeight(1 - centroid.position.y / field.height)
        }
    }
}
