pragma Singleton
import QtQuick
import Suppertide.Ui

// The hue of each kind of step. Never alone: each kind has its sign and word as well.
QtObject {
    // By v1.StepKind: hands-on, wait, ferment, oven, burner, chill, thaw, rest, hold, fetch.
    readonly property list<color> hues: [Theme.grey, Theme.orange, Theme.grey, Theme.yellow, Theme.vermillion, Theme.reddishPurple, Theme.skyBlue, Theme.blue, Theme.grey, Theme.bluishGreen, Theme.orange]

    readonly property list<color> fills: Array.from(hues, hue => Theme.thin(hue))
    readonly property list<color> edges: Array.from(hues, hue => Theme.edge(hue))

    function hue(kind: int): color {
        return hues[kind] ?? Theme.grey
    }
}
