import QtQuick
import Suppertide.Timeline

// The wheel over the lanes: zoom with Control, pan with Shift or sideways. Lies
// on top of the list, which would take each turn for its own; without a key the
// list scrolls.
Item {
    id: root

    required property Timeline timeline
    required property int headerWidth

    WheelHandler {
        acceptedModifiers: Qt.ControlModifier
        acceptedDevices: PointerDevice.Mouse | PointerDevice.TouchPad
        onWheel: event => root.timeline.zoomBy(Math.pow(1.2, event.angleDelta.y / 120), event.x - root.headerWidth)
    }
    WheelHandler {
        acceptedModifiers: Qt.NoModifier
        acceptedDevices: PointerDevice.Mouse | PointerDevice.TouchPad
        orientation: Qt.Horizontal
        onWheel: event => root.timeline.panBy(-event.angleDelta.x)
    }
    WheelHandler {
        acceptedModifiers: Qt.ShiftModifier
        acceptedDevices: PointerDevice.Mouse | PointerDevice.TouchPad
        onWheel: event => root.timeline.panBy(-event.angleDelta.y)
    }
}
