import QtQuick
import Suppertide.Ui

// Where now is. An item of its own: its move repaints nothing else.
Item {
    width: 0

    Rectangle {
        x: -1.5
        width: 3
        height: parent.height
        color: Theme.now
    }
}
