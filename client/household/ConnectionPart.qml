pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Session
import Suppertide.Household

// Whether the household is live here, what waits to be sent and what was refused.
Card {
    id: root

    required property HouseholdSession session
    required property HouseholdController household

    SectionTitle {
        text: root.session.householdName
        topPadding: 0
    }
    StatusPill {
        objectName: "householdConnection"
        label: root.session.stateText
        symbol: root.session.state === HouseholdSession.Live ? Symbol.Live : root.session.state === HouseholdSession.Refused ? Symbol.Refused : Symbol.Offline
        tone: root.session.state === HouseholdSession.Live ? Theme.live : root.session.state === HouseholdSession.Refused ? Theme.late : Theme.offline
    }
    WordsText {
        width: parent.width
        visible: text.length > 0
        text: root.session.why
        color: Theme.inkMuted
    }
    WordsText {
        width: parent.width
        text: root.session.waitingCount > 0 ? qsTr("%n things done here wait on this device. They are sent by themselves, in order, as soon as the server answers.", "", root.session.waitingCount) : qsTr("Everything done here has reached the server.")
    }
    Row {
        visible: root.session.mayHost
        width: parent.width
        spacing: Theme.small

        TextEntry {
            id: nameEntry
            objectName: "householdName"
            property string typed: root.session.householdName
            width: Math.min(320, root.room - keepName.width - Theme.small)
            label: qsTr("Name of the household")
            value: root.session.householdName
            longest: 100
            onEdited: value => nameEntry.typed = value
            onValueChanged: nameEntry.typed = value
            onAccepted: keepName.clicked()
        }
        ActionButton {
            id: keepName
            objectName: "keepHouseholdName"
            anchors.bottom: parent.bottom
            symbol: Symbol.Done
            text: qsTr("Keep")
            spoken: qsTr("Keep this name")
            enabled: nameEntry.typed.trim().length > 0 && nameEntry.typed !== root.session.householdName
            onClicked: if (enabled) root.household.rename(nameEntry.typed)
        }
    }
    WordsText {
        width: parent.width
        visible: root.session.refused.count > 0
        text: qsTr("The server did not take these. Nothing of them is lost: try again, or let go of them.")
        font.bold: true
    }
    Repeater {
        model: root.session.refused

        Column {
            id: row

            required property int number
            required property string what
            required property string why
            required property bool conflict

            width: root.room
            spacing: Theme.tiny

            Row {
                spacing: Theme.small
                Symbol {
                    shape: Symbol.Refused
                    color: Theme.late
                }
                WordsText {
                    width: root.room - 28
                    text: row.what
                    font.bold: true
                }
            }
            WordsText {
                width: parent.width
                text: row.conflict ? qsTr("Somebody else changed the same thing meanwhile. Theirs holds for now.") : row.why
                color: Theme.inkMuted
            }
            Flow {
                width: parent.width
                spacing: Theme.small

                ActionButton {
                    objectName: "sendAgain"
                    text: row.conflict ? qsTr("Use mine after all") : qsTr("Try again")
                    spoken: qsTr("%1: %2").arg(text).arg(row.what)
                    onClicked: root.session.sendAgain(row.number)
                }
                ActionButton {
                    objectName: "letGo"
                    text: row.conflict ? qsTr("Keep theirs") : qsTr("Let go")
                    spoken: qsTr("%1: %2").arg(text).arg(row.what)
                    onClicked: root.session.letGo(row.number)
                }
            }
        }
    }
}
