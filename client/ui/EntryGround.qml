import QtQuick
import Suppertide.Ui

// The ground of a field: the focus and what is wrong with it are seen in its edge.
Rectangle {
    required property bool focused
    property bool wrong: false

    implicitHeight: Theme.target
    radius: Theme.radius
    color: Theme.raised
    border.width: focused ? 3 : wrong ? 2 : 1
    border.color: focused ? Theme.focus : wrong ? Theme.late : Theme.outline
}
