import QtQuick
import Suppertide.Ui
import Suppertide.Session
import Suppertide.Household

// Lets another device in: a code to type and a picture of it.
Card {
    id: root

    required property HouseholdSession session
    required property HouseholdController household
    property int role: 1
    readonly property bool shown: household.invitationCode.length > 0

    SectionTitle {
        text: qsTr("Invite")
        topPadding: 0
    }
    WordsText {
        visible: root.household.dataFile.length > 0
        width: parent.width
        text: root.household.othersIn ? qsTr("Phones and other computers on this network may join and look in, as long as this window is open. What they send is encrypted.") : qsTr("Only this computer reaches this household. Let others in, and phones and other computers on this network can join with an invitation, as long as this window is open.")
    }
    ActionButton {
        objectName: "letOthersIn"
        visible: root.household.dataFile.length > 0
        enabled: !root.household.changingWho
        symbol: root.household.othersIn ? Symbol.Close : Symbol.House
        text: root.household.changingWho ? qsTr("One moment…") : root.household.othersIn ? qsTr("This computer only") : qsTr("Let others in")
        onClicked: root.household.letOthersIn(!root.household.othersIn)
    }
    WordsText {
        width: parent.width
        visible: root.household.othersIn && root.household.address.length === 0
        text: qsTr("This computer is on no network now.")
        color: Theme.late
    }
    WordsText {
        width: parent.width
        text: root.household.onlyHere ? qsTr("An invitation made now is good for another person on this computer.") : qsTr("The other device opens Suppertide, chooses “Join a household” and types this, or reads the picture with its camera. A code works once.")
        color: Theme.inkMuted
    }
    PickEntry {
        visible: !root.shown
        width: parent.width
        label: qsTr("As")
        choices: root.household.roleNames
        chosen: root.role
        hint: root.household.roleAdvice(root.role)
        onPicked: index => root.role = index
    }
    ActionButton {
        objectName: "invite"
        visible: !root.shown
        strong: true
        symbol: Symbol.Plus
        text: root.household.inviting ? qsTr("One moment…") : qsTr("Make an invitation")
        enabled: !root.household.inviting
        onClicked: root.household.invite(root.role, "")
    }
    WordsText {
        width: parent.width
        visible: text.length > 0
        text: root.household.invitationProblem
        color: Theme.late
        Accessible.role: Accessible.AlertMessage
    }
    Flow {
        visible: root.shown
        width: parent.width
        spacing: Theme.large

        QrCode {
            id: picture
            objectName: "invitationPicture"
            width: 260
            height: 260
            // A camera is on another device, which cannot come in.
            visible: modules > 0 && !root.household.onlyHere
            text: root.household.invitationLine
            Accessible.role: Accessible.Graphic
            Accessible.name: qsTr("Picture of the invitation, for a camera")
        }
        Column {
            width: picture.visible ? Math.max(220, Math.min(420, root.room - picture.width - Theme.large)) : root.room
            spacing: Theme.small

            WordsText {
                width: parent.width
                text: root.household.invitationFor
                font.bold: true
            }
            WordsText {
                visible: root.household.address.length > 0
                width: parent.width
                text: qsTr("Address")
                color: Theme.inkMuted
                font.pixelSize: Theme.captionSize
            }
            TextEdit {
                visible: text.length > 0
                width: parent.width
                height: Math.max(Theme.target, implicitHeight)
                verticalAlignment: TextEdit.AlignVCenter
                text: root.household.address
                readOnly: true
                selectByMouse: true
                activeFocusOnTab: true
                wrapMode: TextEdit.WrapAnywhere
                color: Theme.ink
                font { pixelSize: Theme.titleSize; bold: true }
                Accessible.role: Accessible.StaticText
                Accessible.name: qsTr("Address: %1").arg(text)
            }
            WordsText {
                width: parent.width
                text: qsTr("Code")
                color: Theme.inkMuted
                font.pixelSize: Theme.captionSize
            }
            TextEdit {
                objectName: "invitationCode"
                width: parent.width
                height: Math.max(Theme.target, implicitHeight)
                verticalAlignment: TextEdit.AlignVCenter
                text: root.household.invitationCode
                readOnly: true
                selectByMouse: true
                activeFocusOnTab: true
                wrapMode: TextEdit.WrapAnywhere
                color: Theme.ink
                font { pixelSize: Theme.titleSize; bold: true }
                Accessible.role: Accessible.StaticText
                Accessible.name: qsTr("Code: %1").arg(text)
            }
            WordsText {
                width: parent.width
                text: qsTr("Good once, until %1.").arg(root.household.invitationUntil)
            }
            ActionButton {
                symbol: Symbol.Done
                text: qsTr("Put away")
                onClicked: root.household.closeInvitation()
            }
        }
    }
}
