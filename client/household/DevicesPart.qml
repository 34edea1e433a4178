pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Session
import Suppertide.Household

// The devices that may look into the household; a host takes one off that was lost.
Card {
    id: root

    required property HouseholdSession session
    required property HouseholdController household
    // The device that was asked about once; a second tap takes it off.
    property string asked
    readonly property bool wanted: visible && session.state === HouseholdSession.Live
    onWantedChanged: if (wanted) household.refreshDevices()
    Component.onCompleted: if (wanted) household.refreshDevices()

    SectionTitle {
        text: qsTr("Devices")
        topPadding: 0
    }
    WordsText {
        width: parent.width
        visible: text.length > 0
        text: root.household.devicesProblem.length > 0 ? root.household.devicesProblem : root.household.devices.count === 0 ? qsTr("The devices are listed here when the connection is live.") : ""
        color: Theme.inkMuted
    }
    Repeater {
        model: root.household.devices

        Item {
            id: row

            required property string id
            required property string name
            required property string whose
            required property string seen
            required property bool here
            required property bool revoked

            width: root.room
            height: Math.max(Theme.target, words.height)

            Column {
                id: words
                anchors { left: parent.left; right: take.left; rightMargin: Theme.small; verticalCenter: parent.verticalCenter }

                WordsText {
                    width: parent.width
                    text: row.here ? qsTr("%1 (this one)").arg(row.name) : row.name
                    font { bold: true; strikeout: row.revoked }
                }
                WordsText {
                    width: parent.width
                    text: row.revoked ? qsTr("%1, taken off").arg(row.whose) : qsTr("%1, last seen %2").arg(row.whose).arg(row.seen)
                    color: Theme.inkMuted
                }
            }
            ActionButton {
                id: take
                objectName: "revoke/" + row.name
                anchors { right: parent.right; verticalCenter: parent.verticalCenter }
                width: visible ? implicitWidth : 0
                visible: !row.here && !row.revoked
                symbol: Symbol.Close
                text: root.asked === row.id ? qsTr("Yes, take it off") : qsTr("Take off")
                spoken: qsTr("%1: %2").arg(text).arg(row.name)
                onClicked: {
                    if (root.asked === row.id)
                        root.household.revoke(row.id)
                    root.asked = root.asked === row.id ? "" : row.id
                }
            }
        }
    }
}
