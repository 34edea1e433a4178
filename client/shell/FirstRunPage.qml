import QtQuick
import Suppertide.Ui
import Suppertide.Shell

// The first thing on a new device: a household on this computer, or one to join.
Rectangle {
    id: root

    required property FirstRun firstRun
    property string person: firstRun.personName
    property string address
    property string code

    color: Theme.surface
    Accessible.role: Accessible.Pane
    Accessible.name: qsTr("Welcome to Suppertide")

    FormView {
        anchors.fill: parent
        mostWidth: 560
        gap: Theme.large

        Column {
            width: parent.width
            topPadding: Theme.medium
            spacing: Theme.small

            Symbol {
                width: 64
                height: 64
                shape: Symbol.Cover
                color: Theme.accentOutline
            }
            Text {
                width: parent.width
                text: qsTr("A dinner with fresh bread, planned backward from serving time")
                color: Theme.ink
                font { pixelSize: Theme.headlineSize; bold: true }
                wrapMode: Text.Wrap
                Accessible.role: Accessible.Heading
                Accessible.name: text
            }
            WordsText {
                width: parent.width
                text: qsTr("Suppertide keeps one plan for everybody who cooks. Where does your household live?")
                color: Theme.inkMuted
            }
        }
        TextEntry {
            id: person
            objectName: "person"
            width: parent.width
            label: qsTr("Your name")
            example: qsTr("As the others know you")
            value: root.person
            longest: 60
            readOnly: root.firstRun.busy
            onEdited: value => root.person = value
        }
        Card {
            width: parent.width

            SectionTitle {
                text: qsTr("On this computer only")
                topPadding: 0
            }
            WordsText {
                width: parent.width
                text: qsTr("Nothing leaves this computer. A sample feast is there to look at; change it or throw it away.")
                color: Theme.inkMuted
            }
            ActionButton {
                objectName: "stayHere"
                strong: true
                symbol: Symbol.House
                text: root.firstRun.busy ? qsTr("One moment…") : qsTr("This computer only")
                enabled: !root.firstRun.busy
                onClicked: root.firstRun.stayHere(root.person)
            }
        }
        Card {
            width: parent.width

            SectionTitle {
                text: qsTr("Join a household")
                topPadding: 0
            }
            WordsText {
                width: parent.width
                text: qsTr("A host of the household makes an invitation under Household and tells you its address and code.")
                color: Theme.inkMuted
            }
            TextEntry {
                objectName: "address"
                width: parent.width
                label: qsTr("Address")
                example: "192.168.1.4:50710"
                value: root.address
                longest: 300
                readOnly: root.firstRun.busy
                onEdited: value => root.address = value
                onAccepted: join.clicked()
            }
            TextEntry {
                objectName: "code"
                width: parent.width
                label: qsTr("Invitation code")
                example: "ABCD-EFGH-JKLM"
                hint: qsTr("All of it as one word, with what stands after a dot. The whole line from a camera will do, too.")
                value: root.code
                longest: 500
                readOnly: root.firstRun.busy
                onEdited: value => root.code = value
                onAccepted: join.clicked()
            }
            ActionButton {
                id: join
                objectName: "join"
                symbol: Symbol.Cook
                text: root.firstRun.busy ? qsTr("One moment…") : qsTr("Join")
                spoken: qsTr("Join the household")
                enabled: !root.firstRun.busy
                onClicked: root.firstRun.join(root.address, root.code, root.person)
            }
        }
        Row {
            visible: root.firstRun.problem.length > 0
            width: parent.width
            spacing: Theme.small

            Symbol {
                shape: Symbol.Refused
                color: Theme.late
            }
            WordsText {
                objectName: "problem"
                width: parent.width - 30
                text: root.firstRun.problem
                color: Theme.late
                Accessible.role: Accessible.AlertMessage
            }
        }
    }
}
