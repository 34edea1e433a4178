pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Session
import Suppertide.Household

// The household's people with their roles and hours; a host changes them.
Card {
    id: root

    required property HouseholdSession session
    required property HouseholdController household
    // Whose details are open; empty: nobody's.
    property string chosen

    SectionTitle {
        text: qsTr("People")
        topPadding: 0
    }
    Repeater {
        model: root.household.people

        Column {
            id: row

            required property string id
            required property string name
            required property int role
            required property string roleName
            required property string hours
            required property int awakeStart
            required property int awakeLimit
            required property int socialStart
            required property int socialLimit
            required property int quietStart
            required property int quietLimit
            required property int soonMinutes
            required property int share
            required property string skills
            required property bool me
            readonly property bool mine: root.session.mayHost || me && root.session.mayReport
            readonly property bool open: root.chosen === id && mine

            width: root.room
            spacing: Theme.small

            Item {
                width: parent.width
                height: Math.max(Theme.target, words.height)

                Symbol {
                    id: sign
                    shape: Symbol.Cook
                    color: Theme.ink
                    anchors.verticalCenter: parent.verticalCenter
                }
                Column {
                    id: words
                    anchors { left: sign.right; leftMargin: Theme.small; right: change.left; rightMargin: Theme.small; verticalCenter: parent.verticalCenter }

                    WordsText {
                        width: parent.width
                        text: row.me ? qsTr("%1 (you)").arg(row.name) : row.name
                        font.bold: true
                    }
                    WordsText {
                        width: parent.width
                        text: qsTr("%1, up %2").arg(row.roleName).arg(row.hours.replace("–", "\u2060–\u2060"))
                        color: Theme.inkMuted
                    }
                }
                ActionButton {
                    id: change
                    objectName: "change/" + row.id
                    anchors { right: parent.right; verticalCenter: parent.verticalCenter }
                    width: visible ? implicitWidth : 0
                    visible: row.mine
                    text: row.open ? qsTr("Close") : qsTr("Change")
                    spoken: row.open ? qsTr("Close %1").arg(row.name) : qsTr("Change %1").arg(row.name)
                    onClicked: root.chosen = row.open ? "" : row.id
                }
            }
            MemberEditor {
                visible: row.open
                width: row.width
                household: root.household
                memberId: row.id
                name: row.name
                role: row.role
                awakeStart: row.awakeStart
                awakeLimit: row.awakeLimit
                socialStart: row.socialStart
                socialLimit: row.socialLimit
                quietStart: row.quietStart
                quietLimit: row.quietLimit
                soonMinutes: row.soonMinutes
                share: row.share
                skills: row.skills
                me: row.me
                host: root.session.mayHost
            }
            Rectangle {
                width: parent.width
                height: 1
                color: Theme.divider
            }
        }
    }
    Row {
        visible: root.session.mayHost
        width: parent.width
        spacing: Theme.small

        TextEntry {
            id: newName
            objectName: "newPerson"
            width: Math.min(320, root.room - add.width - Theme.small)
            label: qsTr("Somebody without a device")
            example: qsTr("Name")
            longest: 60
            onEdited: value => newName.value = value
            onAccepted: add.clicked()
        }
        ActionButton {
            id: add
            objectName: "addPerson"
            anchors.bottom: parent.bottom
            symbol: Symbol.Plus
            text: qsTr("Add")
            enabled: newName.value.trim().length > 0
            onClicked: {
                root.household.addPerson(newName.value, 1)
                newName.value = ""
            }
        }
    }
    WordsText {
        visible: root.session.mayHost
        width: parent.width
        text: qsTr("A cook who is planned for, but does not look here.")
        color: Theme.inkMuted
        font.pixelSize: Theme.captionSize
    }
    WordsText {
        visible: !root.session.mayHost
        width: parent.width
        text: qsTr("Hosts change people; your own hours are yours to change.")
        color: Theme.inkMuted
    }
}
