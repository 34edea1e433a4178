pragma Singleton
import QtQuick

// Sizes and named colour roles, light and dark. The only place with colour values.
//
// The hues are those of Okabe and Ito, which stay apart in the common kinds of
// colour blindness; a fill is a hue thinned with the surface, and its outline is
// darkened (light) or full (dark) until it stands out 3:1 from the surface.
QtObject {
    property bool dark: false
    // People who read from further away turn this up.
    property real textScale: 1

    readonly property int captionSize: Math.round(13 * textScale)
    readonly property int bodySize: Math.round(15 * textScale)
    readonly property int titleSize: Math.round(19 * textScale)
    readonly property int headlineSize: Math.round(26 * textScale)

    readonly property int tiny: 4
    readonly property int small: 8
    readonly property int medium: 16
    readonly property int large: 24
    // The least side of anything to be tapped with floury hands.
    readonly property int target: 44
    readonly property int radius: 8
    readonly property int narrowWidth: 640
    readonly property int moveDuration: 250

    readonly property color surface: dark ? "#1d1916" : "#fbf7ef"
    readonly property color raised: dark ? "#2a241f" : "#fffdf9"
    readonly property color sunken: dark ? "#151210" : "#f1e9db"
    readonly property color ink: dark ? "#f5eee3" : "#2b231b"
    readonly property color inkMuted: dark ? "#c3b7a7" : "#5d5246"
    readonly property color divider: dark ? "#453c33" : "#ddd2c1"
    readonly property color tick: dark ? "#372f28" : "#e8dfd0"
    readonly property color outline: dark ? "#a1937f" : "#7a6d5d"
    readonly property color night: dark ? "#100e18" : "#e6e3ea"

    readonly property color orange: "#e69f00"
    readonly property color skyBlue: "#56b4e9"
    readonly property color bluishGreen: "#009e73"
    readonly property color yellow: "#f0e442"
    readonly property color blue: "#0072b2"
    readonly property color vermillion: "#d55e00"
    readonly property color reddishPurple: "#cc79a7"
    readonly property color grey: dark ? "#a89c8c" : "#8a7d6c"

    readonly property color focus: dark ? skyBlue : blue
    readonly property color accent: mix(orange, raised, 0.26)
    readonly property color accentOutline: edge(orange)
    readonly property color now: dark ? mix(vermillion, ink, 0.75) : mix(vermillion, ink, 0.8)
    readonly property color late: dark ? mix(vermillion, ink, 0.7) : mix(vermillion, ink, 0.75)
    readonly property color serving: dark ? skyBlue : blue
    readonly property color live: edge(bluishGreen)
    readonly property color offline: edge(orange)
    readonly property color heat: edge(vermillion)
    readonly property color heatFill: thin(vermillion)
    readonly property color setpoint: inkMuted
    readonly property color dough: thin(yellow)
    readonly property color doughEdge: edge(yellow)
    readonly property color ready: dark ? mix(bluishGreen, raised, 0.55) : mix(bluishGreen, raised, 0.34)
    readonly property color readyEdge: edge(bluishGreen)
    readonly property color moved: dark ? skyBlue : blue

    function mix(over: color, under: color, part: real): color {
        return Qt.rgba(over.r * part + under.r * (1 - part), over.g * part + under.g * (1 - part), over.b * part + under.b * (1 - part), 1)
    }
    // A fill that text in ink can stand on.
    function thin(hue: color): color {
        return mix(hue, raised, dark ? 0.32 : 0.26)
    }
    // A line in this hue that stands out from surface and from its own fill.
    function edge(hue: color): color {
        return dark ? mix(hue, ink, 0.8) : mix(hue, ink, 0.5)
    }
}
