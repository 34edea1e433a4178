import QtQuick
import Suppertide.Ui

// A dough from the side after a finger has pressed it: how deep the dent stays.
Item {
    id: root

    // What is left of the dent, 0 to 1; and how deep the finger went is drawn dashed.
    required property real depth
    implicitWidth: 64
    implicitHeight: 34

    function outline(left: real): var {
        const points = []
        for (let i = 0; i <= 32; ++i) {
            const x = i / 32
            const dome = 0.92 * Math.sqrt(Math.max(0, 1 - Math.pow(2 * x - 1, 2)))
            points.push(Qt.point(x, dome - 0.6 * left * Math.exp(-Math.pow((x - 0.5) / 0.1, 2))))
        }
        return points
    }
    PlotLine {
        anchors.fill: parent
        points: root.outline(1)
        color: Theme.inkMuted
        lineWidth: 1
        dashed: true
    }
    PlotLine {
        anchors.fill: parent
        points: root.outline(root.depth)
        color: Theme.ink
        fill: Theme.dough
    }
}
