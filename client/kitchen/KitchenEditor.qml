pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Kitchen

// A kitchen: its ovens, burners, places and the things there are few of.
Column {
    id: root

    required property Draft draft
    required property HouseholdUnits units
    property string opened
    readonly property bool readOnly: !draft.editable

    width: parent ? parent.width : 0
    spacing: Theme.medium

    function toggle(path: string): void {
        opened = opened === path ? "" : path
    }

    DraftText { width: parent.width; label: qsTr("Name"); example: qsTr("Our kitchen"); draft: root.draft; path: "displayName" }
    DraftNumber { width: Math.min(parent.width, 260); label: qsTr("Burners in use at once"); to: 12; draft: root.draft; path: "burnerCount" }

    SectionTitle { text: qsTr("Ovens") }
    Repeater {
        model: DraftRows { id: ovens; draft: root.draft; path: "ovens" }

        EditorCard {
            id: ovenCard
            required property string rowPath
            required property int index
            readOnly: root.readOnly
            open: root.opened === rowPath
            onToggled: root.toggle(rowPath)
            onRemoved: ovens.remove(index)
            body: "OvenEditor.qml"
            given: ({ draft: root.draft, path: ovenCard.rowPath, units: root.units })
        }
    }
    ActionButton {
        objectName: "addOven"
        visible: !root.readOnly
        symbol: Symbol.Plus
        text: qsTr("Add an oven")
        onClicked: root.opened = "ovens[" + ovens.add() + "]"
    }

    SectionTitle { text: qsTr("Places where food stands") }
    Repeater {
        model: DraftRows { id: places; draft: root.draft; path: "places" }

        EditorCard {
            id: placeCard
            required property string rowPath
            required property int index
            readOnly: root.readOnly
            open: root.opened === rowPath
            onToggled: root.toggle(rowPath)
            onRemoved: places.remove(index)
            body: "PlaceEditor.qml"
            given: ({ draft: root.draft, path: placeCard.rowPath, units: root.units })
        }
    }
    ActionButton {
        objectName: "addPlace"
        visible: !root.readOnly
        symbol: Symbol.Plus
        text: qsTr("Add a place")
        onClicked: root.opened = "places[" + places.add() + "]"
    }

    SectionTitle { text: qsTr("Things there are few of") }
    Text {
        width: parent.width
        text: qsTr("Mixers, large pots, pans: a plan never uses more of them at once than there are.")
        color: Theme.inkMuted
        font.pixelSize: Theme.bodySize
        wrapMode: Text.Wrap
    }
    Repeater {
        model: DraftRows { id: things; draft: root.draft; path: "equipment" }

        EntryRow {
            id: thing
            required property string rowPath
            required property string title
            required property int index
            width: parent ? parent.width : 0
            readOnly: root.readOnly
            spoken: title
            onRemoved: things.remove(index)

            Row {
                width: parent.width
                spacing: Theme.small

                DraftText { width: parent.width - count.width - Theme.small; label: qsTr("What"); draft: root.draft; path: thing.rowPath + ".displayName" }
                DraftNumber { id: count; width: 170; label: qsTr("How many"); from: 1; to: 100; draft: root.draft; path: thing.rowPath + ".count" }
            }
        }
    }
    ActionButton {
        objectName: "addThing"
        visible: !root.readOnly
        symbol: Symbol.Plus
        text: qsTr("Add a thing")
        onClicked: things.add()
    }
}
