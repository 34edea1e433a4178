import QtQuick
import QtTest
import Sample
import Suppertide.Kitchen
import Suppertide.Ui

// A host adds and changes a dish without a manual, by pointer and by keys.
Item {
    id: root
    width: 1000
    height: 800

    KitchenSession {
        id: sample
    }
    KitchenPage {
        id: page
        anchors.fill: parent
        focus: true
        session: sample
    }

    TestCase {
        name: "KitchenPage"
        when: windowShown

        function initTestCase() {
            page.desk.draftFolder = ""
        }
        function cleanup() {
            while (page.desk.changedCount > 0 && page.desk.draft)
                page.desk.discard()
            page.desk.close()
            root.width = 1000
        }
        function type(item, text) {
            item.forceActiveFocus(Qt.TabFocusReason)
            for (const letter of text)
                keyClick(letter)
        }
        function openSoup() {
            page.desk.open("r-soup")
            tryVerify(() => findChild(page, "form"))
        }

        function test_aDishWithThreeSteps() {
            mouseClick(findChild(page, "begin"))
            tryVerify(() => page.desk.draft)
            const steps = ["Rinse", "Toast", "Serve"]
            for (const step of steps) {
                type(findChild(findChild(page, "newStepTitle"), "field"), step)
                keyClick(Qt.Key_Return)
            }
            tryVerify(() => findChild(page, "step2"))
            compare(findChild(page, "step1").title, "Toast")
            compare(findChild(page, "draftState").text, "New, not saved yet: only you see it.")
            verify(findChild(page, "save").enabled)
        }
        function test_undoTakesBackAndKeysReachIt() {
            openSoup()
            const card = findChild(page, "step0")
            const count = () => findChild(page, "step2") !== null
            verify(count())
            mouseClick(findChild(card, "remove"))
            tryVerify(() => !count())
            const undo = findChild(page, "undo")
            undo.forceActiveFocus(Qt.TabFocusReason)
            keyClick(Qt.Key_Return)
            tryVerify(count)
        }
        function test_aStepOpensWithAllItsFields() {
            openSoup()
            const card = findChild(page, "step1")
            const head = findChild(card, "card")
            head.forceActiveFocus(Qt.TabFocusReason)
            keyClick(Qt.Key_Return)
            tryVerify(() => findChild(card, "moreOfStep"))
            compare(head.Accessible.name, "Simmer, Hands-on · 15 min")
        }
        function test_escapeGoesBackToTheListAndTheDraftStays() {
            openSoup()
            type(findChild(findChild(page, "newStepTitle"), "field"), "Taste")
            keyClick(Qt.Key_Return)
            tryVerify(() => page.desk.draft.dirty)
            keyClick(Qt.Key_Escape)
            tryVerify(() => page.desk.draft === null)
            compare(page.desk.changedCount, 1)
            openSoup()
            verify(page.desk.draft.dirty)
        }
        function test_onAPhoneTheListGivesWayToTheEditor() {
            root.width = 390
            tryVerify(() => page.narrow)
            verify(findChild(page, "library").visible)
            openSoup()
            tryVerify(() => !findChild(page, "library").visible)
            mouseClick(findChild(page, "back"))
            tryVerify(() => findChild(page, "library").visible)
        }
        function test_cooksOnlyRead() {
            sample.become("noor")
            openSoup()
            verify(!findChild(page, "save").visible)
            verify(!findChild(page, "begin").visible)
            verify(!findChild(page, "newStepTitle").visible)
            sample.become("ines")
        }
    }
}
