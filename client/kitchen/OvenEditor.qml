pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Kitchen

// One oven: its dial, its racks, and how it heats by readings of its own.
Column {
    id: root

    required property Draft draft
    required property string path
    required property HouseholdUnits units
    readonly property bool readOnly: !draft.editable
    readonly property int pairWidth: width < 420 ? width : (width - spacing) / 2

    width: parent ? parent.width : 0
    spacing: Theme.medium

    DraftText { width: parent.width; label: qsTr("Name"); longest: 60; draft: root.draft; path: root.path + ".displayName" }
    Flow {
        width: parent.width
        spacing: root.spacing

        DraftNumber { width: root.pairWidth; label: qsTr("Lowest setting"); step: 5; from: 40; to: 700; degrees: root.units; draft: root.draft; path: root.path + ".minSetpointCelsius" }
        DraftNumber { width: root.pairWidth; label: qsTr("Highest setting"); step: 5; from: 40; to: 700; degrees: root.units; draft: root.draft; path: root.path + ".maxSetpointCelsius" }
        DraftNumber { width: root.pairWidth; label: qsTr("The dial's step"); from: 1; to: 50; unit: qsTr("K"); draft: root.draft; path: root.path + ".setpointStepCelsius" }
        DraftNumber { width: root.pairWidth; label: qsTr("Longer for a stone or heavy pot"); step: 5; unit: qsTr("min"); draft: root.draft; path: root.path + ".stoneSoakDuration" }
    }
    DraftSwitch { width: parent.width; text: qsTr("It has a fan"); draft: root.draft; path: root.path + ".fan" }
    Flow {
        width: parent.width
        spacing: root.spacing

        DraftNumber { width: root.pairWidth; label: qsTr("Shelf, width"); step: 10; from: 100; to: 2000; unit: qsTr("mm"); draft: root.draft; path: root.path + ".shelfWidthMm" }
        DraftNumber { width: root.pairWidth; label: qsTr("Shelf, depth"); step: 10; from: 100; to: 2000; unit: qsTr("mm"); draft: root.draft; path: root.path + ".shelfDepthMm" }
    }
    Repeater {
        model: DraftRows { id: racks; draft: root.draft; path: root.path + ".rackClearHeightMm" }

        EntryRow {
            id: rack
            required property string rowPath
            required property int index
            width: root.width
            readOnly: root.readOnly || racks.count === 1
            spoken: qsTr("rack %1").arg(index + 1)
            onRemoved: racks.remove(index)

            DraftNumber {
                width: Math.min(parent.width, 360)
                label: rack.index === 0 ? qsTr("Clear height above rack 1, the lowest") : qsTr("Above rack %1").arg(rack.index + 1)
                step: 5
                from: 20
                to: 1000
                unit: qsTr("mm")
                draft: root.draft
                path: rack.rowPath
            }
        }
    }
    ActionButton {
        visible: !root.readOnly
        symbol: Symbol.Plus
        text: qsTr("Add a rack")
        onClicked: racks.add()
    }

    SectionTitle { text: qsTr("How it heats") }
    OvenFit {
        id: fit
        width: parent.width
        height: answered ? 210 : 0
        draft: root.draft
        path: root.path
        ink: Theme.inkMuted
        line: Theme.heat
        faint: Theme.divider
        Accessible.role: Accessible.Graphic
        Accessible.name: qsTr("Temperature after switching on: %1").arg(spoken)
    }
    Text {
        visible: fit.answered
        width: parent.width
        text: qsTr("Solid: this oven. Dashed: a usual one. Points: readings.")
        color: Theme.inkMuted
        font.pixelSize: Theme.captionSize
        wrapMode: Text.Wrap
    }
    Repeater {
        model: fit.words

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
        visible: text.length > 0
        width: parent.width
        text: fit.trouble
        color: Theme.inkMuted
        font.pixelSize: Theme.bodySize
        wrapMode: Text.Wrap
        textFormat: Text.PlainText
    }
    HeatReadings { title: qsTr("While heating, from switching on"); draft: root.draft; path: root.path + ".heatCurve.heating"; units: root.units }
    HeatReadings { title: qsTr("After switching off, door closed"); draft: root.draft; path: root.path + ".heatCurve.cooling"; units: root.units }
    HeatReadings { title: qsTr("After switching off, door ajar"); draft: root.draft; path: root.path + ".heatCurve.coolingAjar"; units: root.units }
}
