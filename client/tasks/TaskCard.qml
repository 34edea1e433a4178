pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Tasks

// A task that is due or under way: what to do, one large button, and the few other answers.
Card {
    id: root

    required property TasksController tasks
    required property string taskId
    required property string title
    required property string dish
    required property int symbol
    required property string when
    required property string countdown
    required property string where
    // Of the plan: "Late: ...".
    required property string stateText
    required property string instructions
    required property string weighings
    required property string cautions
    required property string notes
    required property bool underWay
    required property bool over
    required property real part
    required property bool mainBegins
    required property string mainWord
    required property bool mayStart
    // "", "hand" or "note": what is asked about below the buttons.
    property string asking
    // On a phone what is said seldom is behind a second button.
    readonly property bool narrow: room < 480
    property bool othersOpen: false

    objectName: "task/" + taskId
    border { color: underWay ? Theme.accentOutline : Theme.outline; width: 2 }
    spacing: Theme.small + Theme.tiny
    Accessible.role: Accessible.Grouping
    Accessible.name: qsTr("%1, %2, %3").arg(title).arg(dish).arg(countdown)

    Row {
        width: root.room
        spacing: Theme.small

        Symbol {
            id: sign
            width: 32
            height: 32
            shape: root.symbol
            color: Theme.ink
        }
        Text {
            width: parent.width - sign.width - left.width - 2 * Theme.small
            text: root.title
            color: Theme.ink
            font { pixelSize: Theme.headlineSize; bold: true }
            wrapMode: Text.Wrap
            textFormat: Text.PlainText
        }
        Column {
            id: left
            width: Math.min(Math.max(leftText.implicitWidth, 60), root.room * 0.4)

            Text {
                id: leftText
                width: parent.width
                text: root.countdown
                color: root.over ? Theme.late : Theme.ink
                font { pixelSize: Theme.titleSize; bold: true }
                horizontalAlignment: Text.AlignRight
                wrapMode: Text.Wrap
                textFormat: Text.PlainText
            }
            Text {
                width: parent.width
                text: root.underWay ? qsTr("under way") : qsTr("not begun")
                color: Theme.inkMuted
                font.pixelSize: Theme.captionSize
                horizontalAlignment: Text.AlignRight
            }
        }
    }
    WordsText {
        width: root.room
        text: Array.of(root.dish, root.when, root.where).filter(part => part.length > 0).join(qsTr(" · "))
        color: Theme.inkMuted
    }
    Rectangle {
        visible: root.underWay
        width: root.room
        height: 6
        radius: 3
        color: Theme.sunken
        border.color: Theme.divider

        Rectangle {
            width: parent.width * root.part
            height: parent.height
            radius: 3
            color: root.over ? Theme.late : Theme.accentOutline
        }
    }
    WordsText {
        width: root.room
        visible: text.length > 0
        text: root.stateText
        color: Theme.late
        font.bold: true
    }
    WordsText {
        width: root.room
        visible: text.length > 0
        text: root.weighings
        font.pixelSize: Theme.titleSize
    }
    WordsText {
        width: root.room
        visible: text.length > 0
        text: root.instructions
    }
    Row {
        width: root.room
        visible: root.cautions.length > 0
        spacing: Theme.small

        Symbol {
            shape: Symbol.Refused
            color: Theme.late
        }
        WordsText {
            width: root.room - 28
            text: root.cautions
            Accessible.name: qsTr("Take care: %1").arg(text)
        }
    }
    Row {
        width: root.room
        visible: root.notes.length > 0
        spacing: Theme.small

        Symbol {
            shape: Symbol.Paper
            color: Theme.inkMuted
        }
        WordsText {
            width: root.room - 28
            text: root.notes
        }
    }
    ActionButton {
        objectName: "main/" + root.taskId
        width: root.room
        strong: true
        enabled: root.tasks.mayReport
        symbol: root.mainBegins ? Symbol.Oven : Symbol.Done
        text: root.mainWord
        spoken: qsTr("%1: %2").arg(root.mainWord).arg(root.title)
        onClicked: root.mainBegins ? root.tasks.start(root.taskId) : root.tasks.finish(root.taskId)
    }
    Flow {
        width: root.room
        spacing: Theme.small
        visible: root.tasks.mayReport

        ActionButton {
            objectName: "start/" + root.taskId
            visible: root.mayStart
            text: qsTr("Begin")
            spoken: qsTr("Begin: %1").arg(root.title)
            onClicked: root.tasks.start(root.taskId)
        }
        ActionButton {
            objectName: "more/" + root.taskId
            symbol: Symbol.Hourglass
            text: qsTr("+10 min")
            spoken: qsTr("Needs 10 minutes more: %1").arg(root.title)
            onClicked: root.tasks.needMore(root.taskId, 10)
        }
        ActionButton {
            objectName: "others/" + root.taskId
            visible: root.narrow
            symbol: root.othersOpen ? Symbol.Up : Symbol.Down
            text: qsTr("More")
            spoken: root.othersOpen ? qsTr("Fewer answers: %1").arg(root.title) : qsTr("More answers: %1").arg(root.title)
            onClicked: root.othersOpen = !root.othersOpen
        }
        ActionButton {
            objectName: "hand/" + root.taskId
            visible: root.tasks.others.count > 0 && (!root.narrow || root.othersOpen)
            symbol: Symbol.Cook
            text: qsTr("Hand over")
            spoken: qsTr("Hand over: %1").arg(root.title)
            onClicked: root.asking = root.asking === "hand" ? "" : "hand"
        }
        ActionButton {
            objectName: "note/" + root.taskId
            visible: !root.narrow || root.othersOpen
            symbol: Symbol.Paper
            text: qsTr("Note")
            spoken: qsTr("Write a note on: %1").arg(root.title)
            onClicked: root.asking = root.asking === "note" ? "" : "note"
        }
        ActionButton {
            objectName: "skip/" + root.taskId
            visible: !root.narrow || root.othersOpen
            symbol: Symbol.Close
            text: qsTr("Skip")
            spoken: qsTr("Will not be done: %1").arg(root.title)
            onClicked: root.tasks.skip(root.taskId)
        }
    }
    HandOverRow {
        width: root.room
        visible: root.asking === "hand"
        tasks: root.tasks
        onChosen: memberId => {
            root.asking = ""
            root.tasks.handOver(root.taskId, memberId)
        }
        onClosed: root.asking = ""
    }
    NoteRow {
        width: root.room
        visible: root.asking === "note"
        onWritten: text => {
            root.asking = ""
            root.tasks.addNote(root.taskId, text)
        }
        onClosed: root.asking = ""
    }
}
