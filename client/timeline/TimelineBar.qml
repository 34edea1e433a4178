import QtQuick
import QtQuick.Layouts
import Suppertide.Ui
import Suppertide.Timeline

// Buttons for zoom and place: everything that gestures do, for one finger.
Rectangle {
    id: root

    required property Timeline timeline
    required property bool narrow
    property bool mayPlan: false
    signal planWanted

    implicitHeight: row.implicitHeight + Theme.small
    color: Theme.surface

    RowLayout {
        id: row
        anchors { left: parent.left; right: parent.right; leftMargin: Theme.small; rightMargin: Theme.small }
        spacing: Theme.small

        ActionButton {
            objectName: "zoomOut"
            symbol: Symbol.Minus
            spoken: qsTr("Zoom out")
            onClicked: root.timeline.zoomOut()
        }
        ActionButton {
            objectName: "zoomIn"
            symbol: Symbol.Plus
            spoken: qsTr("Zoom in")
            onClicked: root.timeline.zoomIn()
        }
        ActionButton {
            objectName: "fitAll"
            text: qsTr("All")
            spoken: qsTr("Show the whole plan")
            onClicked: root.timeline.fitAll()
        }
        ActionButton {
            objectName: "showNow"
            text: qsTr("Now")
            spoken: qsTr("Go to now")
            enabled: root.timeline.nowKnown
            onClicked: root.timeline.showNow()
        }
        ActionButton {
            objectName: "showServing"
            text: qsTr("Serving")
            spoken: qsTr("Go to the serving")
            onClicked: root.timeline.showServing()
        }
        ActionButton {
            objectName: "planAnew"
            visible: root.mayPlan
            symbol: Symbol.Hourglass
            text: root.narrow ? "" : qsTr("Plan anew")
            spoken: qsTr("Plan this event anew")
            onClicked: root.planWanted()
        }
        Text {
            visible: !root.narrow
            text: root.timeline.rangeText
            color: Theme.inkMuted
            font.pixelSize: Theme.bodySize
            elide: Text.ElideRight
            horizontalAlignment: Text.AlignRight
            Layout.fillWidth: true
        }
        Item {
            visible: root.narrow
            Layout.fillWidth: true
        }
    }
}
