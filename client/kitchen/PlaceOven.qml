import QtQuick
import Suppertide.Ui
import Suppertide.Kitchen

// The oven whose light warms a place.
ChoiceEntry {
    id: root

    required property Draft draft
    required property string path

    label: qsTr("Which oven")
    choices: hours.ovens
    chosen: hours.oven
    problem: field.problem
    readOnly: !root.draft.editable
    onPicked: index => hours.setOven(index)

    PlaceHours {
        id: hours
        draft: root.draft
        path: root.path
    }
    DraftField {
        id: field
        draft: root.draft
        path: root.path + ".ovenId"
    }
}
