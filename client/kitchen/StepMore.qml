pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Kitchen

// What few steps need: order, how long it may turn out, bounds to the serving, attention.
Column {
    id: root

    required property Draft draft
    required property string path
    required property StepController step
    required property bool ferment
    required property bool bake
    readonly property bool readOnly: !draft.editable
    readonly property int pairWidth: width < 420 ? width : (width - spacing) / 2

    width: parent ? parent.width : 0
    spacing: Theme.medium

    Text {
        width: parent.width
        text: root.step.ordered ? qsTr("It comes after the marked steps.") : qsTr("It comes after the step listed before it. Mark steps to say it otherwise.")
        color: Theme.inkMuted
        font.pixelSize: Theme.bodySize
        wrapMode: Text.Wrap
    }
    Repeater {
        model: root.step

        Column {
            id: other
            required property string title
            required property bool marked
            required property bool fromStart
            required property real least
            required property real most
            required property int index
            width: root.width
            spacing: Theme.small

            SwitchEntry {
                width: parent.width
                text: qsTr("After “%1”").arg(other.title)
                on: other.marked
                readOnly: root.readOnly
                onEdited: root.step.toggleAfter(other.index)
            }
            Flow {
                visible: other.marked
                x: Theme.large
                width: parent.width - Theme.large
                spacing: Theme.medium

                NumberEntry {
                    width: Math.min(parent.width, 230)
                    label: qsTr("At least later by")
                    present: other.least >= 0
                    value: Math.max(0, other.least)
                    to: 14400
                    step: 5
                    unit: qsTr("min")
                    readOnly: root.readOnly
                    onEdited: value => root.step.setGaps(other.index, value, other.most)
                    onCleared: root.step.setGaps(other.index, -1, other.most)
                }
                NumberEntry {
                    width: Math.min(parent.width, 230)
                    label: qsTr("At most later by")
                    present: other.most >= 0
                    value: Math.max(0, other.most)
                    to: 14400
                    step: 5
                    unit: qsTr("min")
                    readOnly: root.readOnly
                    onEdited: value => root.step.setGaps(other.index, other.least, value)
                    onCleared: root.step.setGaps(other.index, other.least, -1)
                }
                SwitchEntry {
                    width: Math.min(parent.width, 300)
                    text: qsTr("Counted from its start, not its end")
                    on: other.fromStart
                    readOnly: root.readOnly
                    onEdited: on => root.step.setFromStart(other.index, on)
                }
            }
        }
    }
    DraftSwitch { visible: !root.step.ordered || on; width: parent.width; text: qsTr("Nothing comes before it"); draft: root.draft; path: root.path + ".startsFree" }
    Flow {
        width: parent.width
        spacing: root.spacing

        DraftNumber { visible: !root.ferment && !root.bake; width: root.pairWidth; label: qsTr("If it goes quickly"); to: 14400; step: 5; unit: qsTr("min"); draft: root.draft; path: root.path + ".duration.least" }
        DraftNumber { visible: !root.ferment && !root.bake; width: root.pairWidth; label: qsTr("If it drags on"); to: 14400; step: 5; unit: qsTr("min"); draft: root.draft; path: root.path + ".duration.most" }
        DraftNumber { width: root.pairWidth; label: qsTr("Begins at most so long before serving"); to: 14400; step: 15; unit: qsTr("min"); draft: root.draft; path: root.path + ".earliestBeforeServing" }
        DraftNumber { width: root.pairWidth; label: qsTr("Ends at least so long before serving"); to: 14400; step: 15; unit: qsTr("min"); draft: root.draft; path: root.path + ".latestBeforeServing" }
        DraftNumber { width: root.pairWidth; label: qsTr("Attention it takes"); hint: present ? "" : qsTr("Empty: by its kind"); to: 100; step: 5; unit: "%"; draft: root.draft; path: root.path + ".attentionPercent" }
        DraftNumber { width: root.pairWidth; label: qsTr("Room it takes"); zeroIsNone: true; to: 1000; unit: qsTr("l"); decimals: 1; draft: root.draft; path: root.path + ".volumeL" }
        DraftText { width: root.pairWidth; label: qsTr("Skill the cook must have"); example: qsTr("shaping"); longest: 60; draft: root.draft; path: root.path + ".skill" }
        DraftChoice { width: root.pairWidth; label: qsTr("Food-safety limits of this step"); choices: KitchenChoices.safetyClasses; draft: root.draft; path: root.path + ".safetyClass" }
    }
    DraftSwitch { width: parent.width; text: qsTr("May be left out when the day has no room for it"); draft: root.draft; path: root.path + ".mayBeLeftOut" }
}
