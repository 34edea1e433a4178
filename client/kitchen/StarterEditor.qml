pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Kitchen

// A starter: what it is made of, how lively it is, when it was fed, and what was seen of it.
Column {
    id: root

    required property Draft draft
    required property HouseholdUnits units
    readonly property bool readOnly: !draft.editable
    readonly property int pairWidth: width < 420 ? width : (width - spacing) / 2

    width: parent ? parent.width : 0
    spacing: Theme.medium

    StarterController {
        id: starter
        draft: root.draft
    }

    DraftText { width: parent.width; label: qsTr("Name"); example: qsTr("The jar by the window"); draft: root.draft; path: "displayName" }

    SectionTitle { text: qsTr("Feeding") }
    Text {
        width: parent.width
        text: starter.lastFed.length > 0 ? qsTr("Last fed %1.").arg(starter.lastFed) : qsTr("No feeding is noted yet.")
        color: Theme.ink
        font.pixelSize: Theme.bodySize
        wrapMode: Text.Wrap
    }
    Flow {
        width: parent.width
        spacing: Theme.small

        ActionButton {
            objectName: "fedNow"
            visible: !root.readOnly
            symbol: Symbol.Done
            text: qsTr("Fed just now")
            onClicked: starter.fedAgo(0)
        }
        ActionButton {
            visible: !root.readOnly
            text: qsTr("An hour earlier")
            enabled: starter.lastFed.length > 0
            onClicked: starter.fedEarlier(60)
        }
        ActionButton {
            visible: !root.readOnly
            text: qsTr("Ten minutes earlier")
            enabled: starter.lastFed.length > 0
            onClicked: starter.fedEarlier(10)
        }
    }
    Flow {
        width: parent.width
        spacing: root.spacing

        DraftNumber { width: root.pairWidth; label: qsTr("Water on 100 of flour"); from: 40; to: 200; step: 5; unit: "%"; zeroIsNone: true; example: "100"; draft: root.draft; path: "hydrationPercent" }
        DraftNumber { width: root.pairWidth; label: qsTr("Whole grain in its flour"); to: 100; step: 5; unit: "%"; draft: root.draft; path: "wholeGrainPercent" }
    }
    DraftPick { width: parent.width; label: qsTr("How it is kept before a build"); choices: KitchenChoices.conditions; draft: root.draft; path: "condition" }

    SectionTitle { text: qsTr("How lively it is") }
    Flow {
        width: parent.width
        spacing: root.spacing

        DraftNumber { width: root.pairWidth; label: qsTr("Vigour"); hint: qsTr("1 is average, 2 is twice as fast"); from: 0.4; to: 2.5; step: 0.1; decimals: 2; zeroIsNone: true; example: "1"; draft: root.draft; path: "vigour" }
        DraftNumber { width: root.pairWidth; label: qsTr("How unsure that is"); hint: qsTr("0.2 is usual; less when it was watched often"); from: 0.02; to: 1; step: 0.05; decimals: 2; zeroIsNone: true; example: "0.2"; draft: root.draft; path: "vigourSpread" }
    }
    Repeater {
        model: starter.learned

        Text {
            required property string modelData
            width: root.width
            text: modelData
            color: Theme.ink
            font.pixelSize: Theme.bodySize
            wrapMode: Text.Wrap
            textFormat: Text.PlainText
        }
    }
    Text {
        visible: starter.learned.length === 0
        width: parent.width
        text: qsTr("Nothing was learned yet. Tell on the doughs' screen what you see of a levain: its vigour is then corrected by itself.")
        color: Theme.inkMuted
        font.pixelSize: Theme.bodySize
        wrapMode: Text.Wrap
    }

    SectionTitle { text: qsTr("What was seen of it") }
    Text {
        visible: seen.count === 0
        width: parent.width
        text: qsTr("Nothing yet.")
        color: Theme.inkMuted
        font.pixelSize: Theme.bodySize
    }
    Repeater {
        model: DraftRows { id: seen; draft: root.draft; path: "observations" }

        EntryRow {
            id: row
            required property string title
            required property string detail
            required property int index
            width: root.width
            readOnly: root.readOnly
            spoken: title
            onRemoved: seen.remove(index)

            Column {
                width: parent.width
                topPadding: Theme.tiny

                Text {
                    width: parent.width
                    text: row.title
                    color: Theme.ink
                    font { pixelSize: Theme.bodySize; bold: true }
                    wrapMode: Text.Wrap
                    textFormat: Text.PlainText
                }
                Text {
                    width: parent.width
                    text: row.detail
                    color: Theme.inkMuted
                    font.pixelSize: Theme.bodySize
                    wrapMode: Text.Wrap
                    textFormat: Text.PlainText
                }
            }
        }
    }
}
