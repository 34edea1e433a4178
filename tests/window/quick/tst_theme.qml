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
            // Published: WCAG 2.2 1.4.3, 1.4.6 and 1.4.11, greys just inside and outside on white.
            fuzzyCompare(contrast(Qt.color("#767676"), Qt.color("white")), 4.54, 0.01)
            fuzzyCompare(contrast(Qt.color("#777777"), Qt.color("white")), 4.48, 0.01)
            fuzzyCompare(contrast(Qt.color("#949494"), Qt.color("white")), 3.03, 0.01)
            fuzzyCompare(contrast(Qt.color("#595959"), Qt.color("white")), 7.00, 0.01)
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
        function test_linesOfWhatCanBeTakenHoldOf_data() {
            return test_contrast_data()
        }
        // Ghosts, slack, sliders, chosen remedies: lines 3:1, words 4.5:1.
        function test_linesOfWhatCanBeTakenHoldOf(data) {
            Theme.dark = data.dark
            for (const ground of [Theme.surface, Theme.night])
                atLeast(3, Theme.outline, ground, "ghost")
            atLeast(3, Theme.accentOutline, Theme.sunken, "progress in its groove")
            atLeast(4.5, Theme.ink, Theme.accent, "words on what is chosen")
            atLeast(4.5, Theme.inkMuted, Theme.accent, "muted words on what is chosen")
            atLeast(3, Theme.outline, Theme.accent, "the ring on what is chosen")
            atLeast(4.5, Theme.late, Theme.raised, "what gets worse")
            atLeast(4.5, Theme.live, Theme.raised, "what gets better")
            atLeast(4.5, Theme.surface, Theme.now, "now")
            atLeast(4.5, Theme.surface, Theme.ink, "a notice")
        }

        // What is missing to the eye, on linear red, green and blue: Machado, Oliveira and Fernandes 2009
        // at full severity; the numbers are from memory.
        readonly property var eyes: ({
                protan: [[0.152286, 1.052583, -0.204868], [0.114503, 0.786281, 0.099216], [-0.003882, -0.048116, 1.051998]],
                deutan: [[0.367322, 0.860646, -0.227968], [0.280085, 0.672501, 0.047413], [-0.01182, 0.04294, 0.968881]],
                tritan: [[1.255528, -0.076749, -0.178779], [-0.078411, 0.930809, 0.147602], [0.004733, 0.691367, 0.3039]],
                usual: [[1, 0, 0], [0, 1, 0], [0, 0, 1]]
            })
        function seen(c, eye) {
            const l = [linear(c.r), linear(c.g), linear(c.b)]
            return eyes[eye].map(row => Math.min(1, Math.max(0, row[0] * l[0] + row[1] * l[1] + row[2] * l[2])))
        }
        // CIE L*a*b* under D65, and the plain distance in it.
        function lab(l) {
            const x = (0.4124 * l[0] + 0.3576 * l[1] + 0.1805 * l[2]) / 0.9505
            const y = 0.2126 * l[0] + 0.7152 * l[1] + 0.0722 * l[2]
            const z = (0.0193 * l[0] + 0.1192 * l[1] + 0.9505 * l[2]) / 1.089
            const f = t => t > 0.008856 ? Math.cbrt(t) : 7.787 * t + 16 / 116
            return [116 * f(y) - 16, 500 * (f(x) - f(y)), 200 * (f(y) - f(z))]
        }
        function apart(a, b, eye) {
            const p = lab(seen(a, eye)), q = lab(seen(b, eye))
            return Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2])
        }
        function test_huesStayApartForEveryEye_data() {
            const rows = []
            for (const eye of ["usual", "protan", "deutan", "tritan"])
                for (const dark of [false, true])
                    rows.push({tag: eye + (dark ? " dark" : " light"), eye: eye, dark: dark})
            return rows
        }
        // Hues never tell alone; still, those of steps and states must not fall together.
        function test_huesStayApartForEveryEye(data) {
            Theme.dark = data.dark
            const groups = {
                steps: [Theme.orange, Theme.yellow, Theme.vermillion, Theme.reddishPurple, Theme.skyBlue, Theme.blue, Theme.bluishGreen].map(hue => Theme.edge(hue)),
                states: [Theme.late, Theme.serving, Theme.ink],
                connection: [Theme.live, Theme.late]
            }
            for (const name in groups)
                for (let i = 0; i < groups[name].length; ++i)
                    for (let k = 0; k < i; ++k) {
                        const distance = apart(groups[name][i], groups[name][k], data.eye)
                        verify(distance >= 5, name + " " + i + " and " + k + ": " + distance.toFixed(1))
                    }
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
