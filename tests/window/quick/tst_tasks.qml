import QtQuick
import QtTest
import Sample
import Suppertide.Ui
import Suppertide.Tasks

// The tasks screen on the sample dinner, Saturday 15:20, as Ines.
Item {
    id: root
    width: 1000
    height: 4000

    SampleSession {
        id: session
    }
    TasksController {
        id: tasks
        session: session
    }
    TasksPage {
        id: page
        anchors.fill: parent
        focus: true
        session: session
        tasks: tasks
    }

    TestCase {
        name: "TasksPage"
        when: windowShown

        function cleanup() {
            tasks.cookId = "ines"
            root.width = 1000
        }
        function test_theLargeButtonIsLargeAndSaysWhatItDoes() {
            const done = findChild(page, "main/rolls/shape")
            verify(done !== null)
            verify(done.height >= 56)
            compare(done.Accessible.name, "Done: Shape the rolls")
        }
        function test_doneTellsByMouseAndByKey() {
            // There is no server behind the sample: what is told is shown at once and waits.
            const waiting = session.waitingCount
            mouseClick(findChild(page, "main/rolls/shape"))
            compare(session.waitingCount, waiting + 1)
            tryVerify(() => findChild(page, "main/rolls/shape") === null)
            compare(session.undoText, "“Shape the rolls” done")
            session.undo()
            tryVerify(() => findChild(page, "main/rolls/shape") !== null)
            findChild(page, "main/rolls/shape").forceActiveFocus()
            keyClick(Qt.Key_Return)
            tryVerify(() => findChild(page, "main/rolls/shape") === null)
            session.undo()
            tryVerify(() => findChild(page, "main/rolls/shape") !== null)
        }
        function test_anotherCookCanBeChosen() {
            mouseClick(findChild(page, "cook/tomas"))
            compare(tasks.cookId, "tomas")
            verify(findChild(page, "main/rolls/shape") === null)
        }
        function test_aNoteIsWrittenBelowItsTask() {
            mouseClick(findChild(page, "note/rolls/shape"))
            const field = findChild(findChild(page, "task/rolls/shape"), "field")
            verify(field !== null)
            tryCompare(field, "activeFocus", true)
            const waiting = session.waitingCount
            keyClick(Qt.Key_H)
            keyClick(Qt.Key_Return)
            compare(session.waitingCount, waiting + 1)
        }
        function test_nothingIsWiderThanAPhone() {
            root.width = 390
            waitForRendering(page)
            const card = findChild(page, "task/rolls/shape")
            verify(card.width <= 390)
            const others = findChild(page, "others/rolls/shape")
            // What wet hands say most is one touch away.
            verify(findChild(page, "main/rolls/shape").visible && findChild(page, "more/rolls/shape").visible)
            verify(!findChild(page, "skip/rolls/shape").visible)
            mouseClick(others)
            waitForRendering(page)
            for (const name of ["main/", "more/", "hand/", "note/", "skip/"]) {
                const button = findChild(page, name + "rolls/shape")
                verify(button.visible && button.width >= 44 && button.height >= 44, name)
                const place = button.mapToItem(root, 0, 0)
                verify(place.x >= 0 && place.x + button.width <= 390, name)
            }
        }
    }
}
