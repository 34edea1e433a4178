import QtQuick
import Suppertide.Ui
import Suppertide.Kitchen

// One of many of a draft.
ChoiceEntry {
    id: root

    required property Draft draft
    required property string path
    property int first: 0

    chosen: field.choice - root.first
    problem: field.problem
    readOnly: root.draft === null || !root.draft.editable
    onPicked: index => field.choice = index + root.first

    DraftField {
        id: field
        draft: root.draft
        path: root.path
    }
}
