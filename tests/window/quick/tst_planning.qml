import QtQuick
import QtTest
import Sample
import Suppertide.Planning
import Suppertide.Timeline
import Suppertide.Ui

// The timeline's page with planning around it, without a server: what can be asked, and by which keys.
Item {
    id: root
    width: 1100
    height: 760

    SamplePlanning {
        id: sample
    }
    TimelinePage {
        id: page
        anchors.fill: parent
        focus: true
        timeline: sample.timeline
        planning: sample.planning
    }
    function find(item: Item, name: string): Item {
        if (!item.visible)
            return null
        if (item.objectName === name)
            return item
        for (let i = 0; i < item.children.length; ++i) {
            const found = root.find(item.children[i], name)
            if (found)
                return found
        }
        return null
    }

    TestCase {
        name: "TimelinePage"
        when: windowShown

        function init() {
            sample.planning.whatIf.leave()
            sample.planning.remedies.close()
            sample.timeline.closeDetails()
            sample.timeline.showNow()
            tryVerify(() => root.find(page, "rolls/shape"))
            page.forceActiveFocus()
        }
        function bar(step) {
            const found = root.find(page, step)
            verify(found, step + " is not on the screen")
            return found
        }
        function choose(step) {
            bar(step).forceActiveFocus(Qt.TabFocusReason)
            keyClick(Qt.Key_Return)
            compare(sample.timeline.details.id, step)
        }

        function test_aChosenBarIsDraggedAndAsks() {
            choose("rolls/shape")
            const shape = bar("rolls/shape")
            const before = shape.x
            const at = shape.mapToItem(page, 20, 20)
            const offset = sample.timeline.offset
            mouseDrag(page, at.x, at.y, 60 * sample.timeline.pixelsPerMinute, 0)
            compare(sample.timeline.offset, offset, "the view stays")
            verify(sample.timeline.movingMinutes >= 30)
            compare(sample.timeline.movingMinutes % 5, 0)
            verify(shape.x > before)
            verify(sample.planning.whatIf.open)
            compare(sample.planning.whatIf.stepId, "rolls/shape")
        }
        function test_aDraggedBarIsLeftWhereItWas() {
            choose("rolls/shape")
            const shape = bar("rolls/shape")
            const before = shape.x
            keyClick(Qt.Key_Right, Qt.ControlModifier)
            fuzzyCompare(shape.x, before + 5 * sample.timeline.pixelsPerMinute, 0.01)
            keyClick(Qt.Key_Escape)
            compare(shape.x, before)
            compare(sample.timeline.movingId, "")
            verify(sample.timeline.detailsOpen)
        }
        function test_everyDragHasAKey_data() {
            return [
                {tag: "pan", key: Qt.Key_Right, modifiers: Qt.NoModifier, what: () => sample.timeline.offset},
                {tag: "zoom", key: Qt.Key_Plus, modifiers: Qt.NoModifier, what: () => sample.timeline.pixelsPerMinute},
                {tag: "move a step", key: Qt.Key_Right, modifiers: Qt.ControlModifier, what: () => sample.timeline.movingMinutes}
            ]
        }
        function test_everyDragHasAKey(data) {
            choose("rolls/shape")
            const before = data.what()
            keyClick(data.key, data.modifiers)
            verify(data.what() !== before)
        }
        function test_askingByKeyOpensThePanelAndEscapeLeaves() {
            choose("rolls/shape")
            keyClick(Qt.Key_Right, Qt.ControlModifier)
            keyClick(Qt.Key_Return)
            verify(sample.planning.whatIf.open)
            sample.answer()
            tryVerify(() => sample.planning.whatIf.answered)
            verify(sample.timeline.comparing)
            verify(root.find(page, "applyWhatIf").enabled)
            keyClick(Qt.Key_Escape)
            verify(!sample.planning.whatIf.open)
            verify(!sample.timeline.comparing)
        }
        function test_buttonsDoWhatTheDragDoes() {
            choose("rolls/shape")
            mouseClick(root.find(page, "moveLater"))
            mouseClick(root.find(page, "moveLater"))
            compare(sample.timeline.movingMinutes, 10)
            mouseClick(root.find(page, "askMove"))
            verify(sample.planning.whatIf.open)
            mouseClick(root.find(page, "leaveWhatIf"))
            verify(!sample.planning.whatIf.open)
            compare(sample.timeline.movingMinutes, 0)
        }
        function test_theClashPanelNamesWishesAndPreviewsWhatIsChosen() {
            sample.clash()
            const remedy = root.find(page, "remedy/1")
            verify(remedy)
            verify(remedy.height >= 44)
            verify(remedy.Accessible.name.length > 0)
            mouseClick(remedy)
            compare(sample.planning.remedies.chosen, 1)
            verify(sample.timeline.comparing)
            verify(root.find(page, "applyRemedy").enabled)
            mouseClick(root.find(page, "closeClash"))
            verify(!sample.timeline.comparing)
        }
    }
}
