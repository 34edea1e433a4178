import QtQuick
import Suppertide.Ui
import Suppertide.Kitchen

// One ingredient.
Column {
    id: root

    required property Draft draft
    required property string path

    width: parent ? parent.width : 0
    spacing: Theme.medium

    AmountField {
        id: amount
        draft: root.draft
        path: root.path
    }
    DraftText { width: parent.width; label: qsTr("Name, as on a shopping list"); draft: root.draft; path: root.path + ".name" }
    Flow {
        width: parent.width
        spacing: Theme.medium

        NumberEntry {
            objectName: "amount"
            visible: amount.unit > 0
            width: Math.min(root.width, 260)
            label: qsTr("Amount")
            value: amount.number
            step: amount.unit === 3 ? 1 : 10
            decimals: 2
            to: 100000
            unit: KitchenChoices.amountUnits[amount.unit]
            problem: amount.problem
            readOnly: !root.draft.editable
            onEdited: value => amount.number = value
        }
        PickEntry {
            width: Math.min(root.width, 340)
            label: qsTr("Measured in")
            choices: KitchenChoices.amountUnits
            chosen: amount.unit
            readOnly: !root.draft.editable
            onPicked: index => amount.unit = index
        }
    }
    DraftText { width: parent.width; label: qsTr("How"); example: qsTr("chopped"); longest: 200; draft: root.draft; path: root.path + ".note" }
    DraftText { width: parent.width; label: qsTr("Allergens and animal origin it holds, with commas between"); example: qsTr("milk, wheat"); longest: 400; draft: root.draft; path: root.path + ".contains" }
    DraftSwitch { width: parent.width; text: qsTr("That is all it holds: the label was read"); draft: root.draft; path: root.path + ".knownContents" }
    DraftPick { width: parent.width; label: qsTr("Kept before use in"); choices: KitchenChoices.placeKinds; noneAllowed: true; draft: root.draft; path: root.path + ".keptIn" }
}
