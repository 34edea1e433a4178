pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Event

// The courses on a line of time. While the event is changed, left and right move a flag.
Card {
    id: root

    required property EventController dinner

    visible: dinner.courses.count > 0

    Item {
        id: field
        width: root.room
        height: 44 * Math.min(3, root.dinner.courses.count) + 46

        Rectangle {
            id: line
            y: field.height - 28
            width: parent.width
            height: 3
            radius: 1.5
            color: Theme.outline
        }
        Repeater {
            model: root.dinner.marks

            Text {
                required property real part
                required property string label

                x: Math.max(0, Math.min(field.width - width, part * field.width - width / 2))
                y: line.y + 8
                text: label
                color: Theme.inkMuted
                font.pixelSize: Theme.captionSize
            }
        }
        Repeater {
            model: root.dinner.courses

            FocusScope {
                id: flag

                required property string courseId
                required property string name
                required property string serving
                required property int minutes
                required property real part
                required property int index

                objectName: "flag/" + courseId
                // The flag points away from the end of the line.
                readonly property bool toLeft: part * field.width + wanted > field.width
                readonly property real wanted: Math.max(Theme.target, Math.min(words.implicitWidth + 2 * Theme.small, field.width * 0.8))

                x: toLeft ? part * field.width + 1 - wanted : part * field.width - 1
                y: (index % 3) * 44
                width: wanted
                height: line.y - y
                activeFocusOnTab: root.dinner.editing
                Accessible.role: root.dinner.editing ? Accessible.Slider : Accessible.StaticText
                Accessible.name: qsTr("%1 served at %2").arg(name).arg(serving)
                Keys.onLeftPressed: if (root.dinner.editing) root.dinner.setServing(courseId, minutes - 5)
                Keys.onRightPressed: if (root.dinner.editing) root.dinner.setServing(courseId, minutes + 5)

                Rectangle {
                    x: flag.toLeft ? flag.width - 2 : 0
                    width: 3
                    height: parent.height
                    color: Theme.serving
                }
                Rectangle {
                    width: flag.width
                    height: 38
                    radius: 4
                    color: Theme.serving
                    border.width: flag.activeFocus ? 3 : 0
                    border.color: Theme.ink

                    Text {
                        id: words
                        anchors { fill: parent; leftMargin: Theme.small; rightMargin: Theme.small }
                        text: qsTr("%1  %2").arg(flag.serving).arg(flag.name)
                        color: Theme.surface
                        font { pixelSize: Theme.bodySize; bold: true }
                        verticalAlignment: Text.AlignVCenter
                        elide: Text.ElideRight
                        textFormat: Text.PlainText
                    }
                }
            }
        }
    }
}
