import QtQuick
import QtTest
import Suppertide.Ui

// Contrast as WCAG 2.2 counts it: text 4.5:1, lines of signs and controls 3:1.
Item {
    id: root
    width: 300
    height: 200

    ActionButton {
        id: button
        text: "All"
        spoken: "Show the whole plan"
    }
    StatusPill {
        id: pill
        label: "Offline"
        symbol: Symbol.Offline
    }

    TestCase {
        name: "Theme"
        when: windowShown

        function linear(part) {
            return part <= 0.04045 ? part / 12.92 : Math.pow((part + 0.055) / 1.055, 2.4)
        }
        function luminance(c) {
            return 0.2126 * linear(c.r) + 0.7152 * linear(c.g) + 0.0722 * linear(c.b)
        }
        function contrast(a, b) {
            const la = luminance(a), lb = luminance(b)
            return (Math.max(la, lb) + 0.05) / (Math.min(la, lb) + 0.05)
        }
        function atLeast(wanted, a, b, what) {
            verify(contrast(a, b) >= wanted, what + ": " + contrast(a, b).toFixed(2))
        }
        function cleanup() {
            Theme.dark = false
        }

        function test_contrastIsAsCounted() {
            // Published: Okabe-Ito blue 5.19 and orange 2.25 on white.
            fuzzyCompare(contrast(Theme.blue, Qt.color("white")), 5.19, 0.01)
            fuzzyCompare(contrast(Theme.orange, Qt.color("white")), 2.25, 0.01)
        }
        function test_contrast_data() {
            return [{tag: "light", dark: false}, {tag: "dark", dark: true}]
        }
        function test_contrast(data) {
            Theme.dark = data.dark
            for (const ground of [Theme.surface, Theme.raised, Theme.sunken, Theme.night]) {
                atLeast(7, Theme.ink, ground, "text")
                atLeast(4.5, Theme.inkMuted, ground, "muted text")
                atLeast(3, Theme.outline, ground, "outline")
                for (const line of [Theme.focus, Theme.now, Theme.late, Theme.serving, Theme.moved, Theme.live, Theme.offline, Theme.heat])
                    atLeast(3, line, ground, "line " + line)
            }
            atLeast(4.5, Theme.surface, Theme.serving, "text on a course's flag")
            atLeast(4.5, Theme.surface, Theme.late, "text on a late flag")
            for (const hue of [Theme.orange, Theme.skyBlue, Theme.bluishGreen, Theme.yellow, Theme.blue, Theme.vermillion, Theme.reddishPurple, Theme.grey]) {
                atLeast(4.5, Theme.ink, Theme.thin(hue), "text on a bar " + hue)
                atLeast(3, Theme.edge(hue), Theme.surface, "edge on surface " + hue)
                atLeast(3, Theme.edge(hue), Theme.night, "edge at night " + hue)
                atLeast(3, Theme.edge(hue), Theme.thin(hue), "edge on its own fill " + hue)
            }
            atLeast(4.5, Theme.ink, Theme.ready, "text on a ready dough")
        }
        function test_buttonsAreLargeAndHaveNames() {
            verify(button.width >= 44 && button.height >= 44)
            compare(button.Accessible.name, "Show the whole plan")
            compare(button.Accessible.role, Accessible.Button)
        }
        function test_statusIsSaidInWords() {
            compare(pill.Accessible.name, "Offline")
        }
    }
}
