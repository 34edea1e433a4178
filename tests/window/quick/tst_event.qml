import QtQuick
import QtTest
import Sample
import Suppertide.Ui
import Suppertide.Event

// The event screen on the sample dinner, as its host.
Item {
    id: root
    width: 1100
    height: 900

    SampleSession {
        id: session
    }
    readonly property EventController dinner: page.dinner
    EventPage {
        id: page
        anchors.fill: parent
        focus: true
        session: session
    }

    TestCase {
        name: "EventPage"
        when: windowShown

        function cleanup() {
            root.dinner.putBack()
        }
        function test_aGuestIsAddedByKeys() {
            mouseClick(findChild(page, "changeEvent"))
            verify(root.dinner.editing)
            const field = findChild(findChild(page, "newGuest"), "field")
            field.forceActiveFocus()
            for (const letter of ["M", "i", "r", "a"])
                keyClick(letter)
            keyClick(Qt.Key_Return)
            compare(root.dinner.guests.count, 1)
            compare(root.dinner.guests.value(0, "name"), "Mira")
        }
        function test_aDishIsAddedAndTakenOut() {
            root.dinner.edit()
            const count = root.dinner.dishes.count
            const course = findChild(page, "course/sweet")
            mouseClick(findChild(course, "addDish"))
            const soup = findChild(course, "recipe/r-soup")
            verify(soup !== null)
            soup.clicked()
            compare(root.dinner.dishes.count, count + 1)
            root.dinner.removeDish("r-soup")
            compare(root.dinner.dishes.count, count)
        }
        function test_aFlagMovesByKeys() {
            root.dinner.edit()
            const row = root.dinner.courses.rowOf("main")
            const before = root.dinner.courses.value(row, "minutes")
            const flag = findChild(page, "flag/main")
            flag.forceActiveFocus()
            keyClick(Qt.Key_Right)
            compare(root.dinner.courses.value(root.dinner.courses.rowOf("main"), "minutes"), before + 5)
        }
        function test_escapePutsTheChangeBack() {
            root.dinner.addGuest("Mira")
            verify(root.dinner.editing)
            page.forceActiveFocus()
            keyClick(Qt.Key_Escape)
            verify(!root.dinner.editing)
        }
        function test_lookingHasNoFields() {
            verify(!root.dinner.editing)
            verify(!findChild(page, "newGuest").visible)
            verify(!findChild(page, "keepEvent").visible)
        }
    }
}
