import QtQuick
import QtTest
import Sample
import Suppertide.Ui
import Suppertide.Ovens

// The ovens screen on the sample dinner: one cursor for all ovens, moved by finger and by keys.
Item {
    id: root
    width: 1100
    height: 900

    SamplePlanning {
        id: sample
    }
    readonly property OvensController ovens: page.ovens
    OvensPage {
        id: page
        anchors.fill: parent
        focus: true
        session: sample.planning.session
        planning: sample.planning
    }

    TestCase {
        name: "OvensPage"
        when: windowShown

        function cleanup() {
            root.ovens.toNow()
        }
        function test_theCursorFollowsFingerAndKeys() {
            const chart = findChild(page, "chart/large")
            verify(chart !== null)
            mouseClick(chart, chart.width * 0.25, 60)
            verify(Math.abs(root.ovens.cursorX - 0.25) < 0.05)
            const before = root.ovens.cursorX
            chart.forceActiveFocus()
            keyClick(Qt.Key_Right)
            verify(root.ovens.cursorX > before)
            keyClick(Qt.Key_Left)
            fuzzyCompare(root.ovens.cursorX, before, 0.001)
            keyClick(Qt.Key_PageDown)
            verify(root.ovens.cursorX > before)
            keyClick(Qt.Key_Home)
            verify(root.ovens.atNow)
        }
        function test_whatCannotBeHadIsShownWithWhatWouldHelp() {
            sample.clash()
            const remedy = findChild(page, "remedy/1")
            verify(remedy !== null && remedy.visible)
            mouseClick(remedy)
            compare(sample.planning.remedies.chosen, 1)
            verify(sample.planning.previewing)
            mouseClick(findChild(page, "closeClash"))
            verify(!sample.planning.previewing)
        }
        function test_everyOvenHasAPanel() {
            for (const id of ["large", "small"]) {
                const panel = findChild(page, "oven/" + id)
                verify(panel !== null, id)
                verify(panel.width <= root.width)
            }
        }
    }
}
