import QtQuick
import QtTest
import Suppertide.Ui

// The fields of forms: typed, stepped, by key, and what they say of themselves.
Item {
    id: root
    width: 400
    height: 700

    property real number: 20
    property string words: "Soup"
    property int minutes: 630
    property int picked: 0
    property bool on: false
    property int cleared: 0

    Column {
        width: parent.width

        NumberEntry {
            id: entry
            width: parent.width
            label: "Oven"
            unit: "°C"
            value: root.number
            from: 0
            to: 250
            step: 5
            decimals: 1
            onEdited: value => root.number = value
            onCleared: ++root.cleared
        }
        TextEntry {
            id: textEntry
            width: parent.width
            label: "Dish"
            value: root.words
            problem: root.words.length === 0 ? "must have a name" : ""
            onEdited: value => root.words = value
        }
        TimeEntry {
            id: time
            width: parent.width
            label: "Awake from"
            minutes: root.minutes
            onEdited: minutes => root.minutes = minutes
        }
        PickEntry {
            id: pick
            width: parent.width
            label: "Kind"
            choices: ["Hands-on", "Oven"]
            chosen: root.picked
            onPicked: index => root.picked = index
        }
        SwitchEntry {
            id: toggle
            width: parent.width
            text: "It has a fan"
            on: root.on
            onEdited: on => root.on = on
        }
    }

    TestCase {
        name: "Entries"
        when: windowShown

        function init() {
            root.number = 20
            root.words = "Soup"
            root.minutes = 630
            root.picked = 0
            root.on = false
            root.cleared = 0
            root.forceActiveFocus()
        }
        function type(field, text) {
            field.forceActiveFocus(Qt.TabFocusReason)
            field.selectAll()
            keyClick(Qt.Key_Delete)
            for (const letter of text)
                keyClick(letter)
        }

        function test_typingANumberTellsItAtOnce() {
            const field = findChild(entry, "field")
            compare(field.text, "20")
            type(field, "37.5")
            compare(root.number, 37.5)
            compare(field.text, "37.5")
            root.forceActiveFocus()
            compare(field.text, "37.5")
        }
        function test_whatIsNoNumberIsMarkedAndChangesNothing() {
            const field = findChild(entry, "field")
            type(field, "abc")
            compare(root.number, 20)
            verify(entry.unreadable)
            compare(field.Accessible.description, "Not a number")
        }
        function test_anEmptiedNumberIsToldAsNone() {
            type(findChild(entry, "field"), "")
            compare(root.cleared, 1)
        }
        function test_stepsByButtonAndKeyAndStaysInItsRange() {
            mouseClick(findChild(entry, "more"))
            compare(root.number, 25)
            const field = findChild(entry, "field")
            field.forceActiveFocus(Qt.TabFocusReason)
            keyClick(Qt.Key_Down)
            compare(root.number, 20)
            root.number = 248
            keyClick(Qt.Key_Up)
            compare(root.number, 250)
        }
        function test_buttonsAreLargeEnoughForAFinger() {
            for (const name of ["more", "less", "field"]) {
                const item = findChild(entry, name)
                verify(item.height >= 44, name)
                verify(item.width >= 44, name)
            }
            verify(findChild(pick, "pick0").height >= 44)
            verify(findChild(toggle, "field").height >= 44)
        }
        function test_whatIsWrongIsSaidAtTheField() {
            type(findChild(textEntry, "field"), "")
            compare(root.words, "")
            compare(findChild(textEntry, "problem").text, "must have a name")
            compare(findChild(textEntry, "field").Accessible.description, "must have a name")
        }
        function test_aTimeIsTypedInManyWays_data() {
            return [{tag: "18:30", minutes: 1110}, {tag: "1830", minutes: 1110}, {tag: "7", minutes: 420}, {tag: "9.05", minutes: 545}]
        }
        function test_aTimeIsTypedInManyWays(data) {
            type(findChild(time, "field"), data.tag)
            compare(root.minutes, data.minutes)
        }
        function test_whatIsNoTimeChangesNothing() {
            type(findChild(time, "field"), "25:00")
            verify(time.unreadable)
            verify(root.minutes < 630 + 1 && root.minutes !== 1500)
        }
        function test_picksByKeyAndSaysWhich() {
            const oven = findChild(pick, "pick1")
            oven.forceActiveFocus(Qt.TabFocusReason)
            keyClick(Qt.Key_Space)
            compare(root.picked, 1)
            compare(oven.Accessible.name, "Kind: Oven")
            verify(oven.Accessible.checked)
        }
        function test_aTickBoxIsToggledByReturn() {
            const box = findChild(toggle, "field")
            box.forceActiveFocus(Qt.TabFocusReason)
            keyClick(Qt.Key_Return)
            verify(root.on)
            verify(box.Accessible.checked)
        }
    }
}
