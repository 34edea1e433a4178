pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Kitchen

// What a bake asks of an oven.
Column {
    id: root

    required property Draft draft
    required property string path
    required property HouseholdUnits units
    readonly property bool readOnly: !draft.editable
    readonly property int pairWidth: width < 420 ? width : (width - spacing) / 2
    property bool more: false

    width: parent ? parent.width : 0
    spacing: Theme.medium

    Flow {
        width: parent.width
        spacing: root.spacing

        DraftNumber { width: root.pairWidth; label: qsTr("Temperature"); step: 5; to: 700; degrees: root.units; draft: root.draft; path: root.path + ".setpointCelsius" }
        DraftNumber { width: root.pairWidth; label: qsTr("How long"); step: 5; to: 1440; unit: qsTr("min"); draft: root.draft; path: root.path + ".duration.likely" }
        DraftChoice { width: root.pairWidth; label: qsTr("What is baked"); choices: KitchenChoices.foodClasses; draft: root.draft; path: root.path + ".foodClass" }
        DraftText { width: root.pairWidth; label: qsTr("Pan"); example: qsTr("loaf tin"); draft: root.draft; path: root.path + ".pan.name" }
        DraftNumber { width: root.pairWidth; label: qsTr("Pan, width with handles"); zeroIsNone: true; step: 10; to: 1000; unit: qsTr("mm"); draft: root.draft; path: root.path + ".pan.widthMm" }
        DraftNumber { width: root.pairWidth; label: qsTr("Pan, depth"); zeroIsNone: true; step: 10; to: 1000; unit: qsTr("mm"); draft: root.draft; path: root.path + ".pan.depthMm" }
        DraftNumber { width: root.pairWidth; label: qsTr("Pan, height with what stands out"); zeroIsNone: true; step: 10; to: 1000; unit: qsTr("mm"); draft: root.draft; path: root.path + ".pan.heightMm" }
        DraftNumber { width: root.pairWidth; label: qsTr("How many pans"); zeroIsNone: true; example: "1"; to: 50; draft: root.draft; path: root.path + ".pan.count" }
    }
    Flow {
        width: parent.width
        spacing: root.spacing

        DraftSwitch { width: root.pairWidth; text: qsTr("With steam at the beginning"); draft: root.draft; path: root.path + ".steam" }
        DraftSwitch { width: root.pairWidth; text: qsTr("On a hot stone or in a hot pot"); draft: root.draft; path: root.path + ".stone" }
        DraftSwitch { width: root.pairWidth; text: qsTr("Goes in before the oven is hot"); draft: root.draft; path: root.path + ".coldStart" }
    }
    ActionButton {
        symbol: root.more ? Symbol.Up : Symbol.Down
        text: root.more ? qsTr("Less") : qsTr("Later temperatures, core, range…")
        onClicked: root.more = !root.more
    }
    Column {
        visible: root.more
        width: parent.width
        spacing: Theme.medium

        Flow {
            width: parent.width
            spacing: root.spacing

            DraftNumber { width: root.pairWidth; label: qsTr("Also right from"); hint: present ? "" : qsTr("Empty: by what is baked"); step: 5; to: 700; degrees: root.units; draft: root.draft; path: root.path + ".minSetpointCelsius" }
            DraftNumber { width: root.pairWidth; label: qsTr("Also right up to"); step: 5; to: 700; degrees: root.units; draft: root.draft; path: root.path + ".maxSetpointCelsius" }
            DraftNumber { width: root.pairWidth; label: qsTr("If it goes quickly"); step: 5; to: 1440; unit: qsTr("min"); draft: root.draft; path: root.path + ".duration.least" }
            DraftNumber { width: root.pairWidth; label: qsTr("If it drags on"); step: 5; to: 1440; unit: qsTr("min"); draft: root.draft; path: root.path + ".duration.most" }
            DraftNumber { width: root.pairWidth; label: qsTr("Centre when it goes in"); from: -40; to: 260; degrees: root.units; draft: root.draft; path: root.path + ".startCoreCelsius" }
            DraftNumber { width: root.pairWidth; label: qsTr("Centre when it is done"); from: 0; to: 260; degrees: root.units; draft: root.draft; path: root.path + ".endCoreCelsius" }
            DraftNumber { width: root.pairWidth; label: qsTr("Thinnest dimension"); zeroIsNone: true; step: 5; to: 1000; unit: qsTr("mm"); draft: root.draft; path: root.path + ".thicknessMm" }
            DraftNumber { width: root.pairWidth; label: qsTr("Loads one after the other, at most"); zeroIsNone: true; to: 6; draft: root.draft; path: root.path + ".mostLoads" }
            DraftNumber { width: root.pairWidth; label: qsTr("Steam until"); step: 5; to: 240; unit: qsTr("min"); draft: root.draft; path: root.path + ".steamDuration" }
            DraftNumber { width: root.pairWidth; label: qsTr("Under a lid until"); step: 5; to: 240; unit: qsTr("min"); draft: root.draft; path: root.path + ".lidDuration" }
        }
        Repeater {
            model: DraftRows { id: phases; draft: root.draft; path: root.path + ".laterPhases" }

            EntryRow {
                id: phase
                required property string rowPath
                required property string title
                required property int index
                width: root.width
                readOnly: root.readOnly
                spoken: qsTr("then %1").arg(title)
                onRemoved: phases.remove(index)

                Flow {
                    width: parent.width
                    spacing: Theme.small

                    DraftNumber { width: Math.min(parent.width, 230); label: qsTr("Then at"); step: 5; to: 700; degrees: root.units; draft: root.draft; path: phase.rowPath + ".setpointCelsius" }
                    DraftNumber { width: Math.min(parent.width, 230); label: qsTr("for"); step: 5; to: 1440; unit: qsTr("min"); draft: root.draft; path: phase.rowPath + ".duration" }
                }
            }
        }
        ActionButton {
            visible: !root.readOnly
            symbol: Symbol.Plus
            text: qsTr("Then at another temperature")
            onClicked: phases.add()
        }
    }
}
