import QtQuick
import QtTest
import Sample
import Suppertide.Timeline
import Suppertide.Ui

Item {
    id: root
    width: 1000
    height: 700

    SampleTimeline {
        id: sample
    }
    TimelineView {
        id: view
        anchors.fill: parent
        focus: true
        timeline: sample
    }
    function findStep(item: Item, name: string): Item {
        if (!item.visible)
            return null
        if (item.objectName === name)
            return item
        for (let i = 0; i < item.children.length; ++i) {
            const found = root.findStep(item.children[i], name)
            if (found)
                return found
        }
        return null
    }

    TestCase {
        name: "TimelineView"
        when: windowShown

        function init() {
            sample.closeDetails()
            sample.showNow()
            // Until the view has come to rest: by then all its bars are there, where they belong.
            wait(300)
            tryVerify(() => root.findStep(root.findStep(view, "cook/tomas"), "soup/cook"))
            view.forceActiveFocus()
        }
        function lane(id) {
            const found = root.findStep(view, id)
            verify(found, id + " is not on the screen")
            return found
        }
        function bar(laneId, step) {
            const found = root.findStep(lane(laneId), step)
            verify(found, step + " is not in " + laneId)
            return found
        }

        function test_barStandsAtItsTime() {
            const shape = bar("cook/ines", "rolls/shape")
            const now = view.headerWidth + sample.offset + sample.nowMinute * sample.pixelsPerMinute
            fuzzyCompare(shape.mapToItem(root, 0, 0).x, now - 15 * sample.pixelsPerMinute, 0.5)
            fuzzyCompare(shape.width, 25 * sample.pixelsPerMinute - 2, 0.5)
            verify(shape.height >= 44, "large enough for a finger")
        }
        function test_accessibleNamesSayWhatAPersonWould() {
            compare(bar("cook/ines", "rolls/shape").Accessible.name, "Shape the rolls, 15:05 to 15:30, Ines")
            compare(bar("dough/rolls", "rolls/proof").Accessible.name, "Proof the rolls, 15:30 to 16:40")
            compare(bar("cook/ines", "rolls/shape").Accessible.role, Accessible.Button)
        }
        function test_barsOfOneMomentDoNotCoverEachOther() {
            const roast = bar("oven/large", "chicken/roast")
            const gratin = bar("oven/large", "gratin/bake")
            verify(Math.abs(roast.y - gratin.y) >= roast.height)
        }
        function test_zoomKeys_data() {
            return [{tag: "plus", key: Qt.Key_Plus, closer: true}, {tag: "minus", key: Qt.Key_Minus, closer: false}]
        }
        function test_zoomKeys(data) {
            const before = sample.pixelsPerMinute
            keyClick(data.key)
            compare(sample.pixelsPerMinute > before, data.closer)
        }
        function test_buttonsDoWhatTheKeysDo() {
            const before = sample.pixelsPerMinute
            mouseClick(root.findStep(view, "zoomIn"))
            verify(sample.pixelsPerMinute > before)
            mouseClick(root.findStep(view, "fitAll"))
            verify(sample.pixelsPerMinute < before)
            mouseClick(root.findStep(view, "showNow"))
            fuzzyCompare(sample.pixelsPerMinute, before, 1e-6)
        }
        function test_wheelWithControlZoomsAboutThePointer() {
            const x = 500
            const minute = (x - view.headerWidth - sample.offset) / sample.pixelsPerMinute
            const before = sample.pixelsPerMinute
            mouseWheel(view, x, 300, 0, 120, Qt.NoButton, Qt.ControlModifier)
            verify(sample.pixelsPerMinute > before)
            fuzzyCompare((x - view.headerWidth - sample.offset) / sample.pixelsPerMinute, minute, 0.1)
        }
        function test_dragPans() {
            const before = sample.offset
            mouseDrag(view, 600, 180, -200, 0)
            verify(sample.offset < before - 100)
        }
        function test_dragThatBeginsOnABarPansAndOpensNothing() {
            const before = sample.offset
            const shape = bar("cook/ines", "rolls/shape")
            const at = shape.mapToItem(view, 10, 10)
            mouseDrag(view, at.x, at.y, -200, 0)
            verify(sample.offset < before - 100)
            verify(!sample.detailsOpen)
        }
        function test_wheelAloneScrollsTheLanes() {
            const lanes = root.findStep(view, "lanes")
            const scale = sample.pixelsPerMinute
            mouseWheel(view, 500, 300, 0, -120)
            tryVerify(() => lanes.contentY > 0)
            compare(sample.pixelsPerMinute, scale)
            lanes.contentY = 0
        }
        function test_tabWalksALaneInTheOrderOfTime() {
            const carve = bar("cook/tomas", "soup/cook")
            carve.forceActiveFocus(Qt.TabFocusReason)
            keyClick(Qt.Key_Tab)
            verify(bar("cook/tomas", "chicken/roast").activeFocus)
            verify(bar("cook/tomas", "chicken/roast").visualFocus)
        }
        function test_tabComesIntoALaneAndOutOfIt() {
            const others = root.findStep(lane("cook/ines"), "others")
            others.forceActiveFocus(Qt.TabFocusReason)
            const first = root.Window.activeFocusItem
            verify(first.stepId.length > 0, "at a step in view")
            keyClick(Qt.Key_Backtab)
            for (let i = 0; i < 50 && root.findStep(lane("cook/ines"), root.Window.activeFocusItem.objectName); ++i)
                keyClick(Qt.Key_Tab)
            verify(!root.findStep(lane("cook/ines"), root.Window.activeFocusItem.objectName), "the last step leads on")
        }
        function test_farOutATapChoosesAStepWithoutABarOfItsOwn() {
            const steps = [["cook/ines", "rolls/shape"], ["cook/tomas", "soup/cook"], ["cook/tomas", "chicken/roast"]].map(names => {
                const found = bar(names[0], names[1])
                return { lane: names[0], id: names[1], minute: found.start + found.length / 2, y: found.mapToItem(view, 0, found.height / 2).y }
            })
            sample.zoomBy(0.001, 500)
            const far = steps.find(step => !root.findStep(lane(step.lane), step.id))
            verify(far, "one of them has no room for words")
            mouseClick(view, view.headerWidth + sample.offset + far.minute * sample.pixelsPerMinute, far.y)
            compare(sample.details.id, far.id)
            verify(bar(far.lane, far.id).activeFocus)
        }
        function test_returnOpensTheDetailsAndEscapeClosesThem() {
            bar("cook/ines", "rolls/shape").forceActiveFocus(Qt.TabFocusReason)
            keyClick(Qt.Key_Return)
            verify(sample.detailsOpen)
            compare(sample.details.title, "Shape the rolls")
            keyClick(Qt.Key_Escape)
            verify(!sample.detailsOpen)
        }
        function test_aTapOpensTheDetails() {
            mouseClick(bar("oven/large", "gratin/bake"))
            compare(sample.details.title, "Bake the root gratin")
        }
        function test_aChangeMovesTheSameBar() {
            const shape = bar("cook/ines", "rolls/shape")
            const before = shape.x
            sample.moveStep("rolls/shape", 10)
            verify(shape.moved)
            tryCompare(shape, "x", before + 10 * sample.pixelsPerMinute)
            sample.moveStep("rolls/shape", 0)
            tryCompare(shape, "x", before)
        }
        function test_aNarrowViewPutsNamesAboveTheLanes() {
            view.anchors.fill = null
            view.width = 390
            view.height = 700
            compare(view.headerWidth, 0)
            tryVerify(() => sample.viewWidth === 390)
            verify(bar("cook/ines", "rolls/shape").y + lane("cook/ines").barsTop >= 20)
            view.anchors.fill = root
            compare(view.headerWidth, 168)
            tryVerify(() => sample.viewWidth === 1000 - 168)
        }
    }
}
