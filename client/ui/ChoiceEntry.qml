pragma ComponentBehavior: Bound
import QtQuick
import QtQuick.Controls.Basic
import Suppertide.Ui

// One of many, from a list that opens. For few, PickEntry shows them all.
EntryFrame {
    id: root

    required property list<string> choices
    // -1: none.
    property int chosen: -1
    property bool readOnly: false
    signal picked(index: int)

    ComboBox {
        id: box
        objectName: "field"
        width: parent.width
        implicitHeight: Theme.target
        model: root.choices
        enabled: !root.readOnly
        font.pixelSize: Theme.bodySize
        currentIndex: root.chosen
        // The box breaks the binding by itself.
        onActivated: index => {
            root.picked(index)
            currentIndex = Qt.binding(() => root.chosen)
        }

        Accessible.name: root.label
        Accessible.description: root.spokenState

        palette {
            button: Theme.raised
            buttonText: Theme.ink
            window: Theme.raised
            base: Theme.raised
            text: Theme.ink
            windowText: Theme.ink
            highlight: Theme.accent
            highlightedText: Theme.ink
            light: Theme.accent
            midlight: Theme.accent
            mid: Theme.outline
            dark: Theme.ink
        }
        background: EntryGround {
            focused: box.visualFocus
            wrong: root.problem.length > 0
        }
        delegate: ItemDelegate {
            required property string modelData
            required property int index

            width: box.width
            height: Math.max(Theme.target, implicitHeight)
            text: modelData
            font.pixelSize: Theme.bodySize
            Accessible.name: text
            highlighted: box.highlightedIndex === index
        }
    }
}
