import QtQuick
import Suppertide.Ui

// An hour, or the name of a day where it begins.
Text {
    id: root

    required property double minute
    required property string label
    required property string shortLabel
    required property bool midnight
    required property bool shown
    required property real dayWidth
    // Where the view ends: a name stands before it.
    required property real viewWidth
    readonly property real dayRoom: Math.min(dayWidth, viewWidth - x) - Theme.tiny
    // Where now stands, which has a label of its own.
    required property real nowX

    y: midnight ? Theme.tiny : Theme.captionSize + Theme.small + 2
    leftPadding: midnight ? Theme.small : 0
    // Hours stand centred on their mark.
    transform: Translate { x: root.midnight ? 0 : -root.implicitWidth / 2 }
    // The day at the edge has its own label.
    visible: shown && (midnight ? x > Theme.small && dayRoom > Theme.target : Math.abs(x - nowX) > implicitWidth)
    // The longest of these forms that has room is shown.
    text: midnight ? label + "\u009c" + shortLabel : label
    width: midnight ? Math.min(implicitWidth, dayRoom) : implicitWidth
    elide: midnight ? Text.ElideRight : Text.ElideNone
    color: midnight ? Theme.ink : Theme.inkMuted
    font { pixelSize: Theme.captionSize; bold: midnight }
}
