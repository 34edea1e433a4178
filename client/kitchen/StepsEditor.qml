pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Kitchen

// The steps in a cook's order, and a row to add the next one: what, what kind, how long.
Column {
    id: root

    required property Draft draft
    required property HouseholdUnits units
    readonly property bool readOnly: !draft.editable
    property string opened

    width: parent ? parent.width : 0
    spacing: Theme.small

    Repeater {
        model: DraftRows { id: rows; draft: root.draft; path: "steps" }

        EditorCard {
            id: card
            required property string rowPath
            required property int index
            objectName: "step" + index
            readOnly: root.readOnly
            ordered: true
            isFirst: index === 0
            isLast: index === rows.count - 1
            open: root.opened === rowPath
            onToggled: root.opened = open ? "" : rowPath
            onRemoved: rows.remove(index)
            onMoved: places => {
                rows.moveBy(index, places)
                if (open)
                    root.opened = "steps[" + (index + places) + "]"
            }
            body: "StepEditor.qml"
            given: ({ draft: root.draft, path: card.rowPath, units: root.units })
        }
    }
    Rectangle {
        visible: !root.readOnly
        width: parent.width
        implicitHeight: adding.height + 2 * Theme.medium
        radius: Theme.radius
        color: Theme.sunken

        Column {
            id: adding
            x: Theme.medium
            y: Theme.medium
            width: parent.width - 2 * Theme.medium
            spacing: Theme.small + Theme.tiny

            TextEntry {
                id: title
                objectName: "newStepTitle"
                property string typed
                width: parent.width
                label: rows.count > 0 ? qsTr("The next step, as said to a cook") : qsTr("The first step, as said to a cook")
                example: qsTr("Chop the fennel")
                value: typed
                onEdited: value => typed = value
                onAccepted: root.add()
            }
            PickEntry {
                id: picks
                property int kind: 0
                width: parent.width
                label: qsTr("What kind of step")
                choices: KitchenChoices.stepKinds
                symbols: KitchenChoices.stepSymbols
                chosen: picks.kind
                onPicked: index => picks.kind = index
            }
            Row {
                width: parent.width
                spacing: Theme.small

                NumberEntry {
                    id: length
                    objectName: "newStepMinutes"
                    property real minutes: 10
                    visible: picks.kind !== 2
                    width: Math.min(parent.width - add.width - Theme.small, 260)
                    label: qsTr("How long")
                    value: minutes
                    from: 1
                    to: 14400
                    step: 5
                    unit: qsTr("min")
                    onEdited: value => minutes = value
                }
                ActionButton {
                    id: add
                    objectName: "addStep"
                    anchors.bottom: parent.bottom
                    enabled: title.typed.trim().length > 0
                    symbol: Symbol.Plus
                    text: qsTr("Add")
                    spoken: qsTr("Add the step")
                    onClicked: root.add()
                }
            }
        }
    }
    readonly property StepController steps: StepController {
        draft: root.draft
        path: ""
    }

    function add(): void {
        if (title.typed.trim().length === 0)
            return
        root.steps.addStep(root.draft, title.typed, picks.kind + 1, length.minutes)
        title.typed = ""
        title.take()
    }
}
