pragma ComponentBehavior: Bound
import QtQuick
import QtQuick.Controls.Basic
import Suppertide.Ui
import Suppertide.Planning

// What collides, and what would help: choosing one previews it, applying makes it so for everybody.
Rectangle {
    id: root

    required property RemedySearch search

    color: Theme.raised
    border.color: Theme.outline
    Accessible.role: Accessible.Pane
    Accessible.name: qsTr("What cannot all be had")

    Keys.onEscapePressed: root.search.close()

    ActionButton {
        id: close
        objectName: "closeClash"
        anchors { top: parent.top; right: parent.right; margins: Theme.small }
        symbol: Symbol.Close
        spoken: qsTr("Close")
        onClicked: root.search.close()
    }
    ScrollView {
        anchors { left: parent.left; right: parent.right; top: parent.top; bottom: actions.top; margins: Theme.medium; bottomMargin: Theme.small }
        contentWidth: availableWidth
        clip: true

        Column {
            width: root.width - 2 * Theme.medium
            spacing: Theme.medium

            Text {
                width: parent.width - close.width
                text: qsTr("What cannot all be had")
                color: Theme.ink
                font { pixelSize: Theme.titleSize; bold: true }
                wrapMode: Text.Wrap
                Accessible.role: Accessible.Heading
                Accessible.name: text
            }
            Repeater {
                model: root.search.clashes
                delegate: ClashRow {
                    width: root.width - 2 * Theme.medium
                }
            }
            Text {
                width: parent.width
                text: qsTr("What would help")
                color: Theme.ink
                font { pixelSize: Theme.titleSize; bold: true }
                Accessible.role: Accessible.Heading
                Accessible.name: text
            }
            Row {
                width: parent.width
                spacing: Theme.small

                Symbol {
                    visible: root.search.running
                    shape: Symbol.Hourglass
                    color: Theme.inkMuted
                }
                Text {
                    width: parent.width - 28
                    text: root.search.progress
                    color: Theme.inkMuted
                    font.pixelSize: Theme.captionSize
                    wrapMode: Text.Wrap
                    textFormat: Text.PlainText
                }
            }
            Repeater {
                model: root.search.remedies
                delegate: RemedyRow {
                    objectName: "remedy/" + number
                    width: root.width - 2 * Theme.medium
                    chosen: number === root.search.chosen
                    onClicked: root.search.choose(chosen ? 0 : number)
                }
            }
            Text {
                visible: root.search.chosen !== 0 && root.search.moves.count > 0
                width: parent.width
                text: qsTr("What moves")
                color: Theme.ink
                font { pixelSize: Theme.bodySize; bold: true }
            }
            Repeater {
                model: root.search.moves
                delegate: MoveRow {
                    width: root.width - 2 * Theme.medium
                }
            }
        }
    }
    Column {
        id: actions
        anchors { left: parent.left; right: parent.right; bottom: parent.bottom; margins: Theme.medium }
        spacing: Theme.small

        Text {
            visible: root.search.chosen !== 0 && root.search.obstacle.length > 0
            width: parent.width
            text: root.search.obstacle
            color: Theme.late
            font.pixelSize: Theme.bodySize
            wrapMode: Text.Wrap
            textFormat: Text.PlainText
        }
        Flow {
            width: parent.width
            spacing: Theme.small

            ActionButton {
                objectName: "applyRemedy"
                enabled: root.search.chosen !== 0 && root.search.obstacle.length === 0 && !root.search.applying
                symbol: Symbol.Done
                text: root.search.applying ? qsTr("Applying…") : qsTr("Do it")
                spoken: qsTr("Do it, for everybody")
                onClicked: root.search.apply()
            }
            ActionButton {
                objectName: "lookAgain"
                visible: !root.search.running
                text: qsTr("Look again")
                onClicked: root.search.begin()
            }
        }
    }
}
