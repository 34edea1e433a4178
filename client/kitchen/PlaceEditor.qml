pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Kitchen

// One place where food stands.
Column {
    id: root

    required property Draft draft
    required property string path
    required property HouseholdUnits units

    width: parent ? parent.width : 0
    spacing: Theme.medium

    DraftText { width: parent.width; label: qsTr("Name"); draft: root.draft; path: root.path + ".displayName" }
    DraftPick { id: kind; width: parent.width; label: qsTr("What kind of place"); choices: KitchenChoices.placeKinds; draft: root.draft; path: root.path + ".kind" }
    PlaceOven { visible: kind.chosen === 2; width: parent.width; draft: root.draft; path: root.path }
    Flow {
        width: parent.width
        spacing: root.spacing

        DraftNumber {
            visible: hours.count === 1
            width: Math.min(root.width, 260)
            label: qsTr("Temperature")
            from: -40
            to: 140
            decimals: 1
            degrees: root.units
            draft: root.draft
            path: root.path + ".temperature.celsius[0]"
        }
        DraftNumber {
            width: Math.min(root.width, 260)
            label: qsTr("Room for food")
            hint: present ? "" : qsTr("Empty: as much as needed")
            to: 5000
            step: 5
            unit: qsTr("l")
            draft: root.draft
            path: root.path + ".volumeL"
        }
    }
    SwitchEntry {
        width: parent.width
        text: qsTr("Warmer and colder by the hour")
        on: hours.count > 1
        readOnly: !root.draft.editable
        onEdited: on => hours.spread(on)
    }
    Flow {
        visible: hours.count > 1
        width: parent.width
        spacing: Theme.small

        Repeater {
            model: hours.count > 1 ? hours.count : 0

            DraftNumber {
                required property int index
                width: 104
                steppers: false
                label: String(index).padStart(2, "0") + ":00"
                from: -40
                to: 140
                decimals: 1
                degrees: root.units
                draft: root.draft
                path: root.path + ".temperature.celsius[" + index + "]"
            }
        }
    }
    PlaceHours {
        id: hours
        draft: root.draft
        path: root.path
    }
    Text {
        visible: text.length > 0
        width: parent.width
        text: hours.learned
        color: Theme.ink
        font.pixelSize: Theme.bodySize
        wrapMode: Text.Wrap
        textFormat: Text.PlainText
    }
}
