import QtQuick
import Suppertide.Ui
import Suppertide.Kitchen

// A number of a draft; a length is in minutes.
NumberEntry {
    id: root

    required property Draft draft
    required property string path
    // 0 means that nothing is said, and is shown as nothing.
    property bool zeroIsNone: false
    // For temperatures: shown and typed as the household reads them.
    property HouseholdUnits degrees: null

    unit: root.degrees !== null ? root.degrees.degreeUnit : ""
    value: root.degrees !== null ? Number(root.degrees.shown(field.number).toFixed(root.decimals)) : field.number
    present: field.present && (!root.zeroIsNone || field.number !== 0)
    problem: field.problem
    readOnly: root.draft === null || !root.draft.editable
    onEdited: value => field.number = root.degrees !== null ? root.degrees.celsius(value) : value
    onCleared: {
        if (root.zeroIsNone || field.present)
            field.clear()
    }

    DraftField {
        id: field
        draft: root.draft
        path: root.path
    }
}
