pragma ComponentBehavior: Bound
import QtQuick
import QtQuick.Templates as T
import Suppertide.Ui

// One of a few, or with `several` any of them: all are seen at once, each a large button.
EntryFrame {
    id: root

    required property list<string> choices
    // Symbol.Shape of each; empty: none has one.
    property list<int> symbols
    property int chosen: -1
    // The chosen ones, where several may be.
    property bool several: false
    property list<int> marked
    // What stands in `marked` for the first choice.
    property int markedFrom: 0
    property bool readOnly: false
    signal picked(index: int)

    // As wide as it is in one row.
    implicitWidth: {
        let all = Theme.tiny * Math.max(0, picks.count - 1)
        for (let i = 0; i < picks.count; ++i)
            all += picks.itemAt(i)?.implicitWidth ?? 0
        return all
    }

    function isMarked(index: int): bool {
        for (let i = 0; i < root.marked.length; ++i)
            if (root.marked[i] === index + root.markedFrom)
                return true
        return false
    }

    Flow {
        width: parent.width
        spacing: Theme.tiny

        Repeater {
            id: picks
            model: root.choices

            T.AbstractButton {
                id: pick

                required property string modelData
                required property int index
                readonly property bool here: root.several ? root.isMarked(index) : root.chosen === index

                objectName: "pick" + index
                implicitWidth: Math.max(Theme.target, row.implicitWidth + 2 * Theme.small + Theme.tiny)
                implicitHeight: Theme.target
                enabled: !root.readOnly
                focusPolicy: Qt.StrongFocus
                checked: here
                onClicked: root.picked(index)

                Accessible.role: root.several ? Accessible.CheckBox : Accessible.RadioButton
                Accessible.name: root.label.length > 0 ? qsTr("%1: %2").arg(root.label).arg(modelData) : modelData
                Accessible.checked: here
                Keys.onReturnPressed: clicked()
                Keys.onEnterPressed: clicked()

                Row {
                    id: row
                    anchors.centerIn: parent
                    spacing: Theme.tiny

                    Symbol {
                        visible: shape !== Symbol.Nothing
                        shape: root.symbols.length > pick.index ? root.symbols[pick.index] : Symbol.Nothing
                        color: Theme.ink
                        anchors.verticalCenter: parent.verticalCenter
                    }
                    Text {
                        text: pick.modelData
                        color: Theme.ink
                        font { pixelSize: Theme.bodySize; bold: pick.here }
                        textFormat: Text.PlainText
                        anchors.verticalCenter: parent.verticalCenter
                    }
                    Symbol {
                        visible: pick.here && root.several
                        width: 16
                        height: 16
                        shape: Symbol.Done
                        color: Theme.ink
                        anchors.verticalCenter: parent.verticalCenter
                    }
                }
                background: Rectangle {
                    radius: Theme.radius
                    color: pick.here || pick.down ? Theme.accent : Theme.raised
                    border.width: pick.visualFocus ? 3 : pick.here ? 2 : 1
                    border.color: pick.visualFocus ? Theme.focus : pick.here ? Theme.accentOutline : Theme.outline
                }
            }
        }
    }
}
