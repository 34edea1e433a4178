pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Kitchen

// A recipe: what goes into it and what is done, in a cook's order. What few recipes need comes last.
Column {
    id: root

    required property Draft draft
    required property HouseholdUnits units
    readonly property bool readOnly: !draft.editable
    property bool more: false

    width: parent ? parent.width : 0
    spacing: Theme.medium

    readonly property FormulaLines formula: FormulaLines {
        draft: root.draft
    }

    Flow {
        width: parent.width
        spacing: Theme.medium

        DraftText { id: dishName; width: parent.width < 480 ? parent.width : parent.width - 240 - Theme.medium; label: qsTr("Dish"); example: qsTr("Fennel soup"); draft: root.draft; path: "displayName" }
        DraftNumber { id: servings; width: parent.width < 480 ? parent.width : 240; label: qsTr("For how many guests"); from: 1; to: 200; draft: root.draft; path: "servingCount" }
    }

    SectionTitle { text: root.formula.bread ? qsTr("Dough") : qsTr("Ingredients") }
    FormulaEditor {
        visible: root.formula.bread
        draft: root.draft
        units: root.units
        formula: root.formula
    }
    IngredientsEditor {
        draft: root.draft
    }

    SectionTitle { text: qsTr("Steps") }
    StepsEditor {
        draft: root.draft
        units: root.units
    }

    SectionTitle { text: qsTr("Waiting to be served") }
    DraftNumber { width: Math.min(parent.width, 320); label: qsTr("At most so long after it is done"); hint: qsTr("0: served at once"); to: 14400; step: 5; unit: qsTr("min"); draft: root.draft; path: "holding.longest" }
    DraftPick { width: parent.width; label: qsTr("How it waits"); choices: KitchenChoices.holdings; noneAllowed: true; draft: root.draft; path: "holding.kind" }
    DraftChoice { width: Math.min(parent.width, 420); label: qsTr("Which food-safety limits hold"); choices: KitchenChoices.safetyClasses; draft: root.draft; path: "safetyClass" }

    ActionButton {
        objectName: "more"
        symbol: root.more ? Symbol.Up : Symbol.Down
        text: root.more ? qsTr("Less") : qsTr("Another size, notes, bread…")
        onClicked: root.more = !root.more
    }
    Column {
        visible: root.more
        width: parent.width
        spacing: Theme.medium

        SectionTitle { text: qsTr("In another size") }
        ScalePanel { draft: root.draft; asking: root.more }

        SectionTitle { text: qsTr("Note") }
        DraftLines { width: parent.width; label: qsTr("For the cooks"); draft: root.draft; path: "note" }

        Flow {
            width: parent.width
            spacing: Theme.medium

            DraftNumber { width: Math.min(parent.width, 300); label: qsTr("Best from, after it is done"); to: 14400; step: 5; unit: qsTr("min"); draft: root.draft; path: "holding.bestFrom" }
            DraftNumber { width: Math.min(parent.width, 300); label: qsTr("Best until"); to: 14400; step: 5; unit: qsTr("min"); draft: root.draft; path: "holding.bestUntil" }
        }
        ActionButton {
            objectName: "bread"
            visible: !root.readOnly
            symbol: Symbol.Dough
            text: root.formula.bread ? qsTr("This is no bread: take the dough out") : qsTr("This is a bread: give it a dough")
            onClicked: root.formula.bread ? root.formula.endBread() : root.formula.beginBread()
        }
    }
}
