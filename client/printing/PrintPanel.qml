import QtQuick
import Suppertide.Ui
import Suppertide.Session
import Suppertide.Printing

// The run sheet on paper: for whom, on which paper.
FocusScope {
    id: root

    required property HouseholdSession session
    signal closed()

    Accessible.role: Accessible.Dialog
    Accessible.name: title.text
    Keys.onEscapePressed: root.closed()

    SheetPrinter {
        id: printer
        objectName: "printer"
        session: root.session
        onMade: printer.open()
    }
    Rectangle {
        anchors.fill: parent
        color: Theme.surface
        opacity: 0.8

        // Nothing below it is pressed by mistake. Escape does the same.
        objectName: "veil"
        MouseArea {
            anchors.fill: parent
            onClicked: root.closed()
        }
    }
    Card {
        id: card
        anchors.centerIn: parent
        width: Math.min(520, root.width - 2 * Theme.medium)
        spacing: Theme.medium

        SectionTitle {
            id: title
            text: qsTr("Print the run sheet")
            topPadding: 0
        }
        WordsText {
            width: parent.width
            text: printer.ready ? qsTr("Large type for the kitchen wall: each cook's steps with their warnings; for everybody also the ovens' programs, the breads and the shopping.") : qsTr("There is nothing to print before the event has a plan.")
            color: Theme.inkMuted
        }
        PickEntry {
            objectName: "reader"
            width: parent.width
            label: qsTr("For")
            choices: printer.readers
            chosen: printer.reader
            onPicked: index => printer.reader = index
        }
        PickEntry {
            objectName: "paper"
            width: parent.width
            label: qsTr("Paper")
            choices: ["A4", qsTr("US Letter")]
            chosen: printer.letter ? 1 : 0
            onPicked: index => printer.letter = index === 1
        }
        WordsText {
            objectName: "sheetFile"
            width: parent.width
            visible: printer.file.length > 0
            text: qsTr("%n pages, kept at %1", "", printer.pages).arg(printer.file)
            wrapMode: Text.WrapAnywhere
            Accessible.role: Accessible.AlertMessage
            Accessible.name: text
        }
        WordsText {
            objectName: "sheetProblem"
            width: parent.width
            visible: text.length > 0
            text: printer.problem
            color: Theme.late
            Accessible.role: Accessible.AlertMessage
            Accessible.name: text
        }
        Flow {
            width: parent.width
            spacing: Theme.small

            ActionButton {
                id: makeButton
                objectName: "makeSheet"
                focus: true
                strong: true
                symbol: Symbol.Paper
                text: printer.busy ? qsTr("One moment…") : qsTr("Make and open the PDF")
                enabled: printer.ready && !printer.busy
                onClicked: printer.make()
            }
            ActionButton {
                objectName: "closeSheet"
                height: makeButton.height
                text: qsTr("Close")
                onClicked: root.closed()
            }
        }
    }
}
