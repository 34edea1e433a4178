pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Kitchen

// Whether the dough is raised by a starter, and by how much levain.
Column {
    id: root

    required property Draft draft
    readonly property bool readOnly: !draft.editable

    width: parent ? parent.width : 0
    spacing: Theme.small

    LevainController {
        id: levain
        draft: root.draft
    }
    SwitchEntry {
        width: parent.width
        text: levain.starters.length > 0 || levain.on ? qsTr("Raised by a starter") : qsTr("Raised by a starter (the household has none yet)")
        on: levain.on
        readOnly: root.readOnly || (levain.starters.length === 0 && !levain.on)
        onEdited: on => levain.on = on
    }
    Flow {
        visible: levain.on
        width: parent.width
        spacing: Theme.medium

        ChoiceEntry {
            width: Math.min(root.width, 260)
            label: qsTr("Starter")
            choices: levain.starters
            chosen: levain.starter
            readOnly: root.readOnly
            onPicked: index => levain.starter = index
        }
        DraftNumber { visible: levain.on; width: Math.min(root.width, 260); label: qsTr("Ripe levain in 100 of dough"); decimals: 1; to: 60; unit: qsTr("g"); draft: root.draft; path: "formula.levain.doughSharePercent" }
        DraftNumber { visible: levain.on; width: Math.min(root.width, 260); label: qsTr("Levain, water on 100 of flour"); step: 5; to: 200; unit: "%"; draft: root.draft; path: "formula.levain.hydrationPercent" }
        DraftNumber { visible: levain.on; width: Math.min(root.width, 260); label: qsTr("Levain, whole grain in its flour"); step: 5; to: 100; unit: "%"; draft: root.draft; path: "formula.levain.wholeGrainPercent" }
    }
}
