import QtQuick
import Suppertide.Ui
import Suppertide.Kitchen

// Yes or no of a draft.
SwitchEntry {
    id: root

    required property Draft draft
    required property string path

    on: field.flag
    problem: field.problem
    readOnly: root.draft === null || !root.draft.editable
    onEdited: on => field.flag = on

    DraftField {
        id: field
        draft: root.draft
        path: root.path
    }
}
