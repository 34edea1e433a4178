pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Kitchen

// A dough: grams and baker's percentages side by side; typing in one moves the other at once.
Column {
    id: root

    required property Draft draft
    required property HouseholdUnits units
    required property FormulaLines formula
    readonly property bool readOnly: !draft.editable
    readonly property bool narrow: width < 520
    readonly property int numberWidth: narrow ? (width - Theme.target - 3 * Theme.small) / 2 : 140

    width: parent ? parent.width : 0
    spacing: Theme.medium

    Rectangle {
        width: parent.width
        implicitHeight: totals.height + 2 * Theme.medium
        radius: Theme.radius
        color: Theme.dough
        border.color: Theme.doughEdge

        Flow {
            id: totals
            x: Theme.medium
            y: Theme.medium
            width: parent.width - 2 * Theme.medium
            spacing: Theme.large

            FormulaFigure { label: qsTr("Flour in all"); value: qsTr("%1 g").arg(Math.round(root.formula.flourGrams)) }
            FormulaFigure { label: qsTr("Of it fermented ahead"); value: qsTr("%1 g, %2 %").arg(Math.round(root.formula.prefermentedGrams)).arg(Number(root.formula.prefermented.toFixed(1)).toLocaleString(Qt.locale(), "f", 1)) }
            FormulaFigure { label: qsTr("Hydration"); value: qsTr("%1 %").arg(Number(root.formula.hydration.toFixed(1)).toLocaleString(Qt.locale(), "f", 1)) }
            FormulaFigure { label: qsTr("Salt"); value: qsTr("%1 %").arg(Number(root.formula.salt.toFixed(2)).toLocaleString(Qt.locale(), "f", 2)) }
            FormulaFigure { label: qsTr("Whole grain"); value: qsTr("%1 %").arg(Math.round(root.formula.wholeGrain)) }
            FormulaFigure { label: qsTr("Dough"); value: qsTr("%1 g").arg(Math.round(root.formula.doughGrams)) }
        }
    }
    Row {
        visible: root.formula.trouble.length > 0
        width: parent.width
        spacing: Theme.tiny

        Symbol {
            shape: Symbol.Refused
            color: Theme.late
        }
        Text {
            objectName: "formulaTrouble"
            width: parent.width - 24
            text: root.formula.trouble
            color: Theme.late
            font.pixelSize: Theme.bodySize
            wrapMode: Text.Wrap
            textFormat: Text.PlainText
        }
    }
    Repeater {
        model: root.formula

        EntryRow {
            id: line
            required property string name
            required property int role
            required property real percent
            required property real grams
            required property string rowPath
            required property int index
            width: root.width
            readOnly: root.readOnly
            spoken: name
            onRemoved: root.formula.removeLine(index)

            Flow {
                width: parent.width
                spacing: Theme.small

                DraftText {
                    width: root.narrow ? parent.width : parent.width - 2 * (root.numberWidth + Theme.small)
                    label: root.narrow || line.index === 0 ? KitchenChoices.formulaRoles[line.role - 1] : ""
                    spoken: KitchenChoices.formulaRoles[line.role - 1]
                    draft: root.draft
                    path: line.rowPath + ".name"
                }
                NumberEntry {
                    objectName: "grams" + line.index
                    width: root.numberWidth
                    label: line.index === 0 || root.narrow ? qsTr("Grams") : ""
                    steppers: false
                    unit: qsTr("g")
                    decimals: line.grams < 10 ? 1 : 0
                    to: 200000
                    step: 10
                    value: Number(line.grams.toFixed(line.grams < 10 ? 1 : 0))
                    readOnly: root.readOnly
                    onEdited: value => root.formula.setGrams(line.index, value)
                    Accessible.name: qsTr("%1 in grams").arg(line.name)
                }
                NumberEntry {
                    objectName: "percent" + line.index
                    width: root.numberWidth
                    label: line.index === 0 || root.narrow ? qsTr("Baker's per cent") : ""
                    steppers: false
                    unit: "%"
                    decimals: line.percent < 10 ? 2 : 1
                    to: 300
                    value: Number(line.percent.toFixed(line.percent < 10 ? 2 : 1))
                    problem: percentField.problem
                    readOnly: root.readOnly
                    onEdited: value => root.formula.setPercent(line.index, value)

                    DraftField {
                        id: percentField
                        draft: root.draft
                        path: line.rowPath + ".percent"
                    }
                }
            }
        }
    }
    Rectangle {
        visible: !root.readOnly
        width: parent.width
        implicitHeight: adding.height + 2 * Theme.medium
        radius: Theme.radius
        color: Theme.sunken

        Flow {
            id: adding
            x: Theme.medium
            y: Theme.medium
            width: parent.width - 2 * Theme.medium
            spacing: Theme.small

            TextEntry {
                id: newName
                property string typed
                width: Math.min(parent.width, 220)
                label: qsTr("Something more in the dough")
                example: qsTr("rye flour")
                value: typed
                onEdited: value => typed = value
            }
            ChoiceEntry {
                id: newRole
                property int role: 0
                width: Math.min(parent.width, 170)
                label: qsTr("as")
                choices: KitchenChoices.formulaRoles
                chosen: role
                onPicked: index => role = index
            }
            NumberEntry {
                id: newPercent
                property real percent: 10
                width: Math.min(parent.width, 140)
                label: qsTr("Baker's per cent")
                steppers: false
                decimals: 2
                unit: "%"
                value: percent
                onEdited: value => percent = value
            }
            Item {
                implicitWidth: add.implicitWidth
                implicitHeight: newName.height

                ActionButton {
                    id: add
                    objectName: "addLine"
                    anchors.bottom: parent.bottom
                    symbol: Symbol.Plus
                    text: qsTr("Add")
                    spoken: qsTr("Add it to the dough")
                    enabled: newName.typed.trim().length > 0
                    onClicked: {
                        root.formula.addLine(newName.typed, newRole.role + 1, newPercent.percent)
                        newName.typed = ""
                    }
                }
            }
        }
    }
    Flow {
        width: parent.width
        spacing: Theme.medium

        NumberEntry {
            objectName: "pieces"
            width: Math.min(root.width, 220)
            label: qsTr("Pieces")
            from: 1
            to: 500
            value: pieces.number
            problem: pieces.problem
            readOnly: root.readOnly
            onEdited: value => root.formula.setPieces(value, mass.number)
        }
        NumberEntry {
            objectName: "pieceMass"
            width: Math.min(root.width, 220)
            label: qsTr("Dough of one")
            from: 20
            to: 5000
            step: 10
            unit: qsTr("g")
            value: Math.round(mass.number)
            problem: mass.problem
            readOnly: root.readOnly
            onEdited: value => root.formula.setPieces(pieces.number, value)
        }
        DraftNumber { width: Math.min(root.width, 220); label: qsTr("Wanted warmth of the dough"); step: 1; decimals: 1; to: 90; degrees: root.units; draft: root.draft; path: "formula.doughCelsius" }
        DraftPick { width: Math.min(root.width, 220); label: qsTr("Kind of dough"); choices: KitchenChoices.doughClasses; draft: root.draft; path: "formula.doughClass" }
    }
    DraftField { id: pieces; draft: root.draft; path: "formula.pieceCount" }
    DraftField { id: mass; draft: root.draft; path: "formula.pieceMassG" }

    LevainEditor {
        draft: root.draft
    }
    Text {
        visible: root.formula.parts.length > 0
        width: parent.width
        text: root.formula.parts
        color: Theme.inkMuted
        font.pixelSize: Theme.bodySize
        lineHeight: 1.3
        wrapMode: Text.Wrap
        textFormat: Text.PlainText
        Accessible.name: qsTr("To be weighed: %1").arg(text)
    }
}
