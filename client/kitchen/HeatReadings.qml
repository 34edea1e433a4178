pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Kitchen

// Readings of a thermometer: so many minutes, so many degrees.
Column {
    id: root

    required property string title
    required property Draft draft
    required property string path
    required property HouseholdUnits units

    width: parent ? parent.width : 0
    spacing: Theme.small

    Text {
        width: parent.width
        text: root.title
        color: Theme.ink
        font { pixelSize: Theme.bodySize; bold: true }
        wrapMode: Text.Wrap
    }
    Repeater {
        model: DraftRows { id: rows; draft: root.draft; path: root.path }

        EntryRow {
            id: reading
            required property string rowPath
            required property string title
            required property int index
            width: root.width
            readOnly: !root.draft.editable
            spoken: title
            onRemoved: rows.remove(index)

            Row {
                width: parent.width
                spacing: Theme.small

                DraftNumber { width: (parent.width - Theme.small) / 2; steppers: root.width > 460; label: reading.index === 0 ? qsTr("After") : ""; unit: qsTr("min"); draft: root.draft; path: reading.rowPath + ".after" }
                DraftNumber { width: (parent.width - Theme.small) / 2; steppers: root.width > 460; label: reading.index === 0 ? qsTr("Temperature") : ""; from: -20; step: 5; degrees: root.units; draft: root.draft; path: reading.rowPath + ".celsius" }
            }
        }
    }
    ActionButton {
        visible: root.draft.editable
        symbol: Symbol.Plus
        text: qsTr("Add a reading")
        onClicked: rows.add()
    }
}
