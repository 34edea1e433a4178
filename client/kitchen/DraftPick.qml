import QtQuick
import Suppertide.Ui
import Suppertide.Kitchen

// One of a few, or any of a few, of a draft. A choice that is chosen again is taken back where none may be.
PickEntry {
    id: root

    required property Draft draft
    required property string path
    // The value of the first choice.
    property int first: 1
    property bool noneAllowed: false

    chosen: field.choice - root.first
    marked: field.marks
    markedFrom: root.first
    problem: field.problem
    readOnly: root.draft === null || !root.draft.editable
    onPicked: index => {
        if (root.several)
            field.toggleMark(index + root.first)
        else if (root.noneAllowed && index === root.chosen)
            field.choice = 0
        else
            field.choice = index + root.first
    }

    DraftField {
        id: field
        draft: root.draft
        path: root.path
    }
}
