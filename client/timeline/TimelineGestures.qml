import QtQuick
import Suppertide.Timeline

// Wheel, pinch and drag over the lanes. Up and down are left to the list.
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
    PinchHandler {
        property real before: 1
        target: null
        onActiveChanged: before = 1
        onActiveScaleChanged: {
            root.timeline.zoomBy(activeScale / before, centroid.position.x - root.headerWidth)
            before = activeScale
        }
    }
    DragHandler {
        property real before: 0
        target: null
        yAxis.enabled: false
        onActiveChanged: before = 0
        onTranslationChanged: {
            root.timeline.panBy(before - translation.x)
            before = translation.x
        }
    }
}
