import QtQuick
import Suppertide.Ui

// When a course is served: a flag on its line.
Item {
    id: root

    required property string title
    required property string spoken
    required property double minute
    required property double roomAfter
    required property int subRow
    required property bool late
    required property real room
    // The pixels to the end of the view, before which the flag stands.
    required property real roomInView

    Accessible.role: Accessible.StaticText
    Accessible.name: spoken

    Rectangle {
        id: flag
        x: label.visible && root.roomInView >= 0 ? Math.max(1 - width, Math.min(-1, root.roomInView - width)) : -1
        width: label.visible ? label.width + 2 * Theme.small + (lateSign.visible ? lateSign.width + Theme.tiny : 0) : 10
        height: parent.height - 3
        color: root.late ? Theme.late : Theme.serving
        radius: 3

        Symbol {
            id: lateSign
            visible: root.late && label.visible
            x: Theme.tiny
            width: 14
            height: 14
            anchors.verticalCenter: parent.verticalCenter
            shape: Symbol.Late
            color: Theme.surface
        }
        Text {
            id: label
            x: lateSign.visible ? lateSign.width + Theme.small : Theme.small
            anchors.verticalCenter: parent.verticalCenter
            visible: root.room > Theme.target
            width: Math.min(implicitWidth, root.room - 2 * Theme.small - (lateSign.visible ? lateSign.width : 0))
            elide: Text.ElideRight
            text: root.title
            color: Theme.surface
            font { pixelSize: Theme.captionSize; bold: true }
        }
    }
}
