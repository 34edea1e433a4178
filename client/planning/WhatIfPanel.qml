pragma ComponentBehavior: Bound
import QtQuick
import QtQuick.Controls.Basic
import Suppertide.Ui
import Suppertide.Planning

// The answer to "what if?": what would move and what gets worse, before anything is changed.
Rectangle {
    id: root

    required property WhatIf whatIf

    color: Theme.raised
    border.color: Theme.outline
    Accessible.role: Accessible.Pane
    Accessible.name: qsTr("What if? %1").arg(root.whatIf.question)

    Keys.onEscapePressed: root.whatIf.leave()

    ScrollView {
        anchors { left: parent.left; right: parent.right; top: parent.top; bottom: actions.top; margins: Theme.medium; bottomMargin: Theme.small }
        contentWidth: availableWidth
        clip: true

        Column {
            width: root.width - 2 * Theme.medium
            spacing: Theme.small + Theme.tiny

            Text {
                width: parent.width
                text: qsTr("What if?")
                color: Theme.ink
                font { pixelSize: Theme.titleSize; bold: true }
                Accessible.role: Accessible.Heading
                Accessible.name: text
            }
            Text {
                width: parent.width
                text: root.whatIf.question
                color: Theme.ink
                font.pixelSize: Theme.bodySize
                wrapMode: Text.Wrap
                textFormat: Text.PlainText
            }
            Text {
                visible: root.whatIf.asking
                width: parent.width
                text: qsTr("Asking what would move…")
                color: Theme.inkMuted
                font.pixelSize: Theme.bodySize
            }
            Text {
                visible: root.whatIf.answered
                objectName: "whatIfSummary"
                width: parent.width
                text: root.whatIf.summary
                color: Theme.ink
                font { pixelSize: Theme.bodySize; bold: true }
                wrapMode: Text.Wrap
                Accessible.role: Accessible.AlertMessage
                Accessible.name: text
            }
            WhatIfFacts {
                width: parent.width
                label: qsTr("Worse")
                value: root.whatIf.worse
                tone: Theme.late
            }
            WhatIfFacts {
                width: parent.width
                label: qsTr("Better")
                value: root.whatIf.better
                tone: Theme.live
            }
            Repeater {
                model: root.whatIf.moves
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
            visible: root.whatIf.obstacle.length > 0
            width: parent.width
            text: root.whatIf.obstacle
            color: Theme.late
            font.pixelSize: Theme.bodySize
            wrapMode: Text.Wrap
            textFormat: Text.PlainText
        }
        Flow {
            width: parent.width
            spacing: Theme.small

            ActionButton {
                objectName: "applyWhatIf"
                enabled: root.whatIf.mayApply
                symbol: Symbol.Done
                text: root.whatIf.applying ? qsTr("Applying…") : qsTr("Do it")
                spoken: qsTr("Do it, for everybody")
                onClicked: root.whatIf.apply()
            }
            ActionButton {
                objectName: "leaveWhatIf"
                symbol: Symbol.Close
                text: qsTr("Leave it")
                spoken: qsTr("Leave everything as it is")
                onClicked: root.whatIf.leave()
            }
        }
    }
}
