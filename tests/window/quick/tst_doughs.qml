import QtQuick
import QtTest
import Sample
import Suppertide.Ui
import Suppertide.Doughs

// The doughs screen on the sample dinner: what is seen is told with large targets, the chart and keys.
Item {
    id: root
    width: 1000
    height: 900

    SampleSession {
        id: session
        clock: "2026-06-20T15:45:00+01:00"
    }
    readonly property DoughsController doughs: page.doughs
    DoughsPage {
        id: page
        anchors.fill: parent
        focus: true
        session: session
    }

    TestCase {
        name: "DoughsPage"
        when: windowShown

        function cleanup() {
            root.doughs.forget()
        }
        function test_aDentIsToldInOneTap() {
            mouseClick(findChild(page, "dent/2"))
            compare(root.doughs.toldDent, 2)
            verify(findChild(page, "tell").visible)
        }
        function test_theRiseIsSteppedTappedAndKeyed() {
            mouseClick(findChild(page, "riseMore"))
            const first = root.doughs.toldRise
            verify(first > 0)
            mouseClick(findChild(page, "riseMore"))
            fuzzyCompare(root.doughs.toldRise, first + 0.1, 0.001)
            const chart = findChild(page, "riseChart")
            chart.forceActiveFocus()
            keyClick(Qt.Key_Down)
            fuzzyCompare(root.doughs.toldRise, first, 0.001)
            mouseClick(chart, chart.width / 2, 60)
            verify(root.doughs.toldRise > first)
            keyClick(Qt.Key_Escape)
            verify(!root.doughs.telling)
        }
        function test_targetsAreLarge() {
            for (const name of ["dent/1", "dent/2", "dent/3", "riseLess", "riseMore", "colder", "warmer"]) {
                const target = findChild(page, name)
                verify(target.width >= 44 && target.height >= 44, name)
                verify(target.Accessible.name.length > 0, name)
            }
        }
        function test_anotherDoughIsLookedAt() {
            mouseClick(findChild(page, "dough/loaf"))
            compare(root.doughs.doughId, "loaf")
            verify(!root.doughs.mayTell)
            mouseClick(findChild(page, "dough/rolls"))
            verify(root.doughs.mayTell)
        }
    }
}
