import QtQuick
import Suppertide.Timeline

// Pinch to zoom and drag to pan, around what it holds. Up and down are left to
// the list inside; taps reach the bars, as this lies beneath them.
Item {
    id: root

    required property Timeline timeline
    required property int headerWidth

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
        // A chosen bar that is dragged keeps its drag: with a property of its own this counts as another type.
        grabPermissions: PointerHandler.CanTakeOverFromItems | PointerHandler.ApprovesTakeOverByAnything
        onActiveChanged: before = 0
        onTranslationChanged: {
            root.timeline.panBy(before - translation.x)
            before = translation.x
        }
    }
}
