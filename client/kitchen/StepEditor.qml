pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Kitchen

// One step: what is asked first depends on its kind; order, things and bounds come after.
Column {
    id: root

    required property Draft draft
    required property string path
    required property HouseholdUnits units
    readonly property bool readOnly: !draft.editable
    readonly property int pairWidth: width < 420 ? width : (width - spacing) / 2
    readonly property int kind: root.step.kind
    readonly property bool bake: kind === 4
    readonly property bool ferment: kind === 3
    readonly property bool waits: kind === 2 || kind >= 6
    property bool more: false

    width: parent ? parent.width : 0
    spacing: Theme.medium

    readonly property StepController step: StepController {
        draft: root.draft
        path: root.path
    }
    DraftText { width: parent.width; label: qsTr("As said to a cook"); draft: root.draft; path: root.path + ".title" }
    PickEntry {
        width: parent.width
        label: qsTr("What kind of step")
        choices: KitchenChoices.stepKinds
        symbols: KitchenChoices.stepSymbols
        chosen: root.step.kind - 1
        problem: kindField.problem
        readOnly: root.readOnly
        onPicked: index => root.step.setKind(index + 1)

        DraftField {
            id: kindField
            draft: root.draft
            path: root.path + ".kind"
        }
    }
    Flow {
        width: parent.width
        spacing: root.spacing

        DraftNumber { visible: !root.bake && !root.ferment; width: root.pairWidth; label: qsTr("How long"); to: 14400; step: 5; unit: qsTr("min"); draft: root.draft; path: root.path + ".duration.likely" }
        DraftNumber { visible: root.waits; width: root.pairWidth; label: qsTr("May last up to"); hint: present ? "" : qsTr("Empty: just as long"); to: 14400; step: 15; unit: qsTr("min"); draft: root.draft; path: root.path + ".longestDuration" }
        DraftNumber { visible: root.kind === 5; width: root.pairWidth; label: qsTr("Burners"); hint: present ? "" : qsTr("Empty: one"); to: 4; draft: root.draft; path: root.path + ".burnerCount" }
        DraftNumber { visible: root.kind === 6 || root.kind === 7; width: root.pairWidth; label: qsTr("Mass, for the time it needs"); hint: qsTr("Empty: as long as said"); zeroIsNone: true; to: 100000; step: 100; unit: qsTr("g"); draft: root.draft; path: root.path + ".massG" }
    }
    DraftPick { visible: root.kind === 7; width: parent.width; label: qsTr("How it thaws"); choices: KitchenChoices.thawWays; noneAllowed: true; draft: root.draft; path: root.path + ".thawWay" }
    DraftPick { visible: root.ferment; width: parent.width; label: qsTr("Which stage of the dough"); choices: KitchenChoices.fermentStages; draft: root.draft; path: root.path + ".ferment.stage" }
    Text {
        visible: root.ferment
        width: parent.width
        text: root.step.bread ? qsTr("The dough decides how long: flour, levain and temperature are known.") : qsTr("Only a bread ferments: give the recipe a dough, below.")
        color: root.step.bread ? Theme.inkMuted : Theme.late
        font.pixelSize: Theme.bodySize
        wrapMode: Text.Wrap
    }
    OvenNeedEditor {
        visible: root.bake
        draft: root.draft
        path: root.path + ".oven"
        units: root.units
    }
    DraftPick { visible: root.ferment || root.waits; width: parent.width; label: qsTr("Where it may stand"); hint: marked.length === 0 ? qsTr("None marked: anywhere that suits") : ""; several: true; choices: KitchenChoices.placeKinds; draft: root.draft; path: root.path + ".placeKinds" }
    PickEntry {
        visible: root.step.equipment.length > 0
        width: parent.width
        label: qsTr("Takes of the things there are few of")
        choices: root.step.equipment
        several: true
        marked: root.step.usedEquipment
        readOnly: root.readOnly
        onPicked: index => root.step.toggleEquipment(index)
    }
    DraftLines { width: parent.width; label: qsTr("What to do, and how to tell that it is done"); draft: root.draft; path: root.path + ".instructions" }

    ActionButton {
        objectName: "moreOfStep"
        symbol: root.more ? Symbol.Up : Symbol.Down
        text: root.more ? qsTr("Less") : qsTr("Order, bounds, attention…")
        onClicked: root.more = !root.more
    }
    StepMore {
        visible: root.more
        draft: root.draft
        path: root.path
        step: root.step
        ferment: root.ferment
        bake: root.bake
    }
}
