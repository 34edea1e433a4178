import QtQuick
import Suppertide.Ui
import Suppertide.Kitchen

// A longer text of a draft.
LinesEntry {
    id: root

    required property Draft draft
    required property string path

    value: field.text
    problem: field.problem
    readOnly: root.draft === null || !root.draft.editable
    onEdited: value => field.text = value

    DraftField {
        id: field
        draft: root.draft
        path: root.path
    }
}
