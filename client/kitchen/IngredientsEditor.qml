pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Kitchen

// The ingredients, and a field for free text in which further ones are typed or pasted. What is
// unsure about a line is said at it before it is added.
Column {
    id: root

    required property Draft draft
    readonly property bool readOnly: !draft.editable
    property string opened

    width: parent ? parent.width : 0
    spacing: Theme.small

    readonly property IngredientReader reader: IngredientReader {
        draft: root.draft
    }
    Repeater {
        model: DraftRows { id: rows; draft: root.draft; path: "ingredients" }

        EditorCard {
            id: card
            required property string rowPath
            required property int index
            readOnly: root.readOnly
            ordered: true
            isFirst: index === 0
            isLast: index === rows.count - 1
            open: root.opened === rowPath
            onToggled: root.opened = open ? "" : rowPath
            onRemoved: rows.remove(index)
            onMoved: places => {
                rows.moveBy(index, places)
                root.opened = "ingredients[" + (index + places) + "]"
            }
            body: "IngredientEditor.qml"
            given: ({ draft: root.draft, path: card.rowPath })
        }
    }
    LinesEntry {
        visible: !root.readOnly
        objectName: "ingredientText"
        width: parent.width
        label: rows.count > 0 ? qsTr("More ingredients, one a line") : qsTr("One a line, typed or pasted")
        example: qsTr("250 g butter, soft\n3 eggs\n1 tsp salt")
        leastLines: 3
        value: root.reader.text
        problem: root.reader.trouble
        onEdited: value => root.reader.text = value
    }
    Repeater {
        model: root.reader

        Row {
            id: line
            required property string amount
            required property string name
            required property string doubts
            required property string contents
            x: Theme.small
            width: root.width - 2 * Theme.small
            spacing: Theme.small
            Accessible.role: Accessible.StaticText
            Accessible.name: qsTr("%1 %2. %3").arg(amount).arg(name).arg(doubts)

            Text {
                id: amountText
                width: 90
                text: line.amount
                color: Theme.ink
                font { pixelSize: Theme.bodySize; bold: true }
                horizontalAlignment: Text.AlignRight
                wrapMode: Text.Wrap
            }
            Column {
                width: parent.width - amountText.width - Theme.small

                Text {
                    width: parent.width
                    text: line.contents.length > 0 ? qsTr("%1 (holds %2)").arg(line.name).arg(line.contents) : line.name
                    color: Theme.ink
                    font.pixelSize: Theme.bodySize
                    wrapMode: Text.Wrap
                    textFormat: Text.PlainText
                }
                Row {
                    visible: line.doubts.length > 0
                    width: parent.width
                    spacing: Theme.tiny

                    Symbol {
                        width: 16
                        height: 16
                        shape: Symbol.Refused
                        color: Theme.late
                    }
                    Text {
                        width: parent.width - 20
                        text: line.doubts
                        color: Theme.late
                        font.pixelSize: Theme.captionSize
                        wrapMode: Text.Wrap
                    }
                }
            }
        }
    }
    ActionButton {
        objectName: "addIngredients"
        visible: !root.readOnly && root.reader.count > 0
        enabled: root.reader.upToDate
        symbol: Symbol.Plus
        text: root.reader.doubtfulCount > 0 ? qsTr("Add %n lines, as they are read here", "", root.reader.count) : qsTr("Add %n lines", "", root.reader.count)
        onClicked: root.reader.addAll()
    }
}
