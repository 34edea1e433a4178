import QtQuick
import Suppertide.Ui
import Suppertide.Household

// One person: each change is kept as soon as it is made.
Column {
    id: root

    required property HouseholdController household
    required property string memberId
    required property string name
    required property int role
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
    // Whether one may change more than one's own hours and reminders.
    required property bool host
    readonly property real fieldWidth: Math.min(320, (width - Theme.medium) / (width < 480 ? 1 : 2))

    spacing: Theme.medium

    TextEntry {
        id: nameEntry
        objectName: "memberName"
        visible: root.host
        width: root.fieldWidth
        label: qsTr("Name")
        value: root.name
        longest: 60
        problem: typed.trim().length === 0 ? qsTr("A name is needed.") : ""
        property string typed: root.name
        onEdited: value => nameEntry.typed = value
        onAccepted: root.keepName()
    }
    PickEntry {
        visible: root.host
        width: parent.width
        label: qsTr("Role")
        choices: root.household.roleNames
        chosen: root.role
        readOnly: root.me
        hint: root.me ? qsTr("Another host can change your role.") : root.household.roleAdvice(root.role)
        onPicked: index => root.household.setRole(root.memberId, index)
    }
    Flow {
        width: parent.width
        spacing: Theme.medium

        TimeEntry {
            objectName: "awakeStart"
            width: root.fieldWidth
            label: qsTr("Up from")
            minutes: root.awakeStart
            hint: qsTr("A plan asks for nothing before.")
            onEdited: minutes => root.household.setAwake(root.memberId, minutes, root.awakeLimit)
        }
        TimeEntry {
            objectName: "awakeLimit"
            width: root.fieldWidth
            label: qsTr("Up until")
            minutes: root.awakeLimit
            endOfDay: true
            hint: qsTr("A time before “up from” means after midnight.")
            onEdited: minutes => root.household.setAwake(root.memberId, root.awakeStart, minutes)
        }
        TimeEntry {
            width: root.fieldWidth
            label: qsTr("Likes to work from")
            minutes: root.socialStart
            hint: qsTr("Work outside these hours is avoided where it can be.")
            onEdited: minutes => root.household.setSocial(root.memberId, minutes, root.socialLimit)
        }
        TimeEntry {
            width: root.fieldWidth
            label: qsTr("Likes to work until")
            minutes: root.socialLimit
            endOfDay: true
            onEdited: minutes => root.household.setSocial(root.memberId, root.socialStart, minutes)
        }
        TimeEntry {
            objectName: "quietStart"
            width: root.fieldWidth
            label: qsTr("Reminders make no sound from")
            minutes: root.quietStart
            hint: qsTr("They are shown all the same.")
            onEdited: minutes => root.household.setQuiet(root.memberId, minutes, root.quietLimit)
        }
        TimeEntry {
            objectName: "quietLimit"
            width: root.fieldWidth
            label: qsTr("Reminders make no sound until")
            minutes: root.quietLimit
            endOfDay: true
            onEdited: minutes => root.household.setQuiet(root.memberId, root.quietStart, minutes)
        }
        NumberEntry {
            objectName: "soonMinutes"
            width: root.fieldWidth
            label: qsTr("Told ahead of a step")
            unit: qsTr("min")
            value: root.soonMinutes
            from: 0
            to: 120
            step: 5
            hint: root.soonMinutes === 0 ? qsTr("Only when it is due.") : ""
            onEdited: value => root.household.setSoon(root.memberId, value)
        }
        NumberEntry {
            visible: root.host
            width: root.fieldWidth
            label: qsTr("Part of the work")
            value: root.share
            from: 0
            to: 10
            hint: qsTr("Against the others' numbers: 2 takes twice as much as 1.")
            onEdited: value => root.household.setShare(root.memberId, value)
        }
        TextEntry {
            id: skillsEntry
            visible: root.host
            width: root.fieldWidth
            label: qsTr("Special skills")
            example: qsTr("shaping, carving")
            value: root.skills
            hint: qsTr("Words that recipe steps ask for, with commas between.")
            property string typed: root.skills
            onEdited: value => skillsEntry.typed = value
            onAccepted: root.household.setSkills(root.memberId, skillsEntry.typed)
        }
    }
    ActionButton {
        objectName: "keepWords"
        visible: nameEntry.typed !== root.name || skillsEntry.typed !== root.skills
        symbol: Symbol.Done
        text: qsTr("Keep")
        enabled: nameEntry.typed.trim().length > 0
        onClicked: {
            root.keepName()
            if (skillsEntry.typed !== root.skills)
                root.household.setSkills(root.memberId, skillsEntry.typed)
        }
    }
    ActionButton {
        objectName: "removeMember"
        visible: root.host && !root.me
        symbol: Symbol.Close
        text: qsTr("Take out of the household")
        spoken: qsTr("Take %1 out of the household").arg(root.name)
        onClicked: root.household.removePerson(root.memberId)
    }

    function keepName(): void {
        if (nameEntry.typed.trim().length > 0 && nameEntry.typed !== root.name)
            root.household.setName(root.memberId, nameEntry.typed)
    }
}
