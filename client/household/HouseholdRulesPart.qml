import QtQuick
import Suppertide.Ui
import Suppertide.Session
import Suppertide.Household

// What holds for everybody in the household: where it is, its measures, its food-safety rules.
Card {
    id: root

    required property HouseholdSession session
    required property HouseholdController household
    // Who reads in units of their own does not see the household's.
    required property Preferences preferences

    SectionTitle {
        text: qsTr("For the whole household")
        topPadding: 0
    }
    Row {
        width: parent.width
        spacing: Theme.small

        TextEntry {
            id: zoneEntry
            objectName: "householdZone"
            property string typed: root.household.zone
            width: Math.min(320, root.room - keepZone.width - Theme.small)
            label: qsTr("Time zone")
            example: qsTr("Europe/Lisbon")
            value: root.household.zone
            problem: typed.length === 0 || root.household.isZone(typed) ? "" : qsTr("Not known. Write it as continent/city.")
            hint: qsTr("All times of day are told in it.")
            longest: 60
            onEdited: value => zoneEntry.typed = value
            onValueChanged: zoneEntry.typed = value
            onAccepted: keepZone.clicked()
        }
        ActionButton {
            id: keepZone
            objectName: "keepHouseholdZone"
            anchors.top: parent.top
            anchors.topMargin: Theme.captionSize + Theme.small
            symbol: Symbol.Done
            text: qsTr("Keep")
            spoken: qsTr("Keep this time zone")
            enabled: zoneEntry.typed !== root.household.zone && root.household.isZone(zoneEntry.typed)
            onClicked: if (enabled) root.household.setZone(zoneEntry.typed)
        }
    }
    PickEntry {
        objectName: "householdDegrees"
        width: parent.width
        label: qsTr("Temperatures")
        choices: ["°C", "°F"]
        chosen: root.preferences.degrees === Preferences.HouseholdDegrees ? root.household.degrees : -1
        hint: chosen < 0 ? qsTr("This device reads in its own; what you choose here holds for the others.") : ""
        onPicked: index => root.household.setDegrees(index)
    }
    PickEntry {
        objectName: "householdMeasures"
        width: parent.width
        label: qsTr("Measures")
        choices: [qsTr("Grams and litres"), qsTr("Cups and ounces")]
        chosen: root.preferences.measures === Preferences.HouseholdMeasures ? root.household.measures : -1
        hint: chosen < 0 ? qsTr("This device reads in its own; what you choose here holds for the others.") : ""
        onPicked: index => root.household.setMeasures(index)
    }
    PickEntry {
        objectName: "safetyRules"
        width: parent.width
        label: qsTr("Food-safety rules")
        choices: [qsTr("For home cooks"), qsTr("For food service"), qsTr("United Kingdom")]
        chosen: root.household.safetyRules
        hint: qsTr("They hold from the next plan on. Where your local rules ask for more, those hold.")
        onPicked: index => root.household.setSafetyRules(index)
    }
}
