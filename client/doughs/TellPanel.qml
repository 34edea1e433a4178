pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Doughs

// Tell what you see of a dough: a dent, how far it has risen, how warm it is.
Card {
    id: root

    required property DoughsController doughs

    Keys.onEscapePressed: doughs.forget()

    SectionTitle {
        width: root.room
        text: qsTr("Tell what you see")
    }
    WordsText {
        width: root.room
        visible: !root.doughs.mayTell
        text: root.doughs.mayReport ? qsTr("As soon as this stage stands, you can tell here how it is doing.") : qsTr("Cooks can tell here how the dough is doing.")
    }
    WordsText {
        width: root.room
        visible: root.doughs.mayTell
        text: qsTr("Press a floured finger into the dough. The dent…")
    }
    Grid {
        id: dents
        visible: root.doughs.mayTell
        width: root.room
        columns: root.room > 460 ? 3 : 1
        spacing: Theme.small

        Repeater {
            model: [
                {result: 1, left: 0.08, words: qsTr("springs back at once")},
                {result: 2, left: 0.45, words: qsTr("comes back slowly")},
                {result: 3, left: 0.9, words: qsTr("stays")}
            ]

            ChoiceChip {
                id: chip
                required property var modelData

                objectName: "dent/" + modelData.result
                width: (root.room - (dents.columns - 1) * Theme.small) / dents.columns
                height: 60
                text: ""
                spoken: qsTr("The dent %1").arg(modelData.words)
                chosen: root.doughs.toldDent === modelData.result
                onClicked: root.doughs.dent(modelData.result)

                DentPicture {
                    id: picture
                    x: Theme.medium + (chip.chosen ? 20 : 0)
                    anchors.verticalCenter: parent.verticalCenter
                    depth: chip.modelData.left
                    width: 50
                    height: 28
                }
                Text {
                    anchors { left: picture.right; leftMargin: Theme.small; right: parent.right; rightMargin: Theme.small; verticalCenter: parent.verticalCenter }
                    text: chip.modelData.words
                    color: Theme.ink
                    font { pixelSize: Theme.bodySize; bold: chip.chosen }
                    wrapMode: Text.Wrap
                    textFormat: Text.PlainText
                }
            }
        }
    }
    Row {
        visible: root.doughs.mayTell
        width: root.room
        spacing: Theme.small

        WordsText {
            width: root.room - 2 * 56 - riseValue.width - 3 * Theme.small
            text: qsTr("Risen to how many times its volume?")
            anchors.verticalCenter: parent.verticalCenter
        }
        ActionButton {
            objectName: "riseLess"
            width: 56
            height: 56
            symbol: Symbol.Minus
            spoken: qsTr("Risen less")
            onClicked: root.doughs.nudgeRise(-1)
        }
        Text {
            id: riseValue
            objectName: "riseValue"
            width: 108
            anchors.verticalCenter: parent.verticalCenter
            text: root.doughs.toldRiseText.length > 0 ? root.doughs.toldRiseText : "–"
            color: Theme.ink
            font { pixelSize: Theme.titleSize; bold: true }
            horizontalAlignment: Text.AlignHCenter
        }
        ActionButton {
            objectName: "riseMore"
            width: 56
            height: 56
            symbol: Symbol.Plus
            spoken: qsTr("Risen more")
            onClicked: root.doughs.nudgeRise(1)
        }
    }
    Row {
        visible: root.doughs.mayTell
        width: root.room
        spacing: Theme.small

        WordsText {
            width: root.room - 2 * 56 - celsiusValue.width - 3 * Theme.small
            text: qsTr("How warm is the dough inside?")
            anchors.verticalCenter: parent.verticalCenter
        }
        ActionButton {
            objectName: "colder"
            width: 56
            height: 56
            symbol: Symbol.Minus
            spoken: qsTr("Colder")
            onClicked: root.doughs.nudgeCelsius(-1)
        }
        Text {
            id: celsiusValue
            width: 108
            anchors.verticalCenter: parent.verticalCenter
            text: root.doughs.toldCelsiusText.length > 0 ? root.doughs.toldCelsiusText : "–"
            color: Theme.ink
            font { pixelSize: Theme.titleSize; bold: true }
            horizontalAlignment: Text.AlignHCenter
        }
        ActionButton {
            objectName: "warmer"
            width: 56
            height: 56
            symbol: Symbol.Plus
            spoken: qsTr("Warmer")
            onClicked: root.doughs.nudgeCelsius(1)
        }
    }
    WordsText {
        width: root.room
        visible: root.doughs.telling
        text: root.doughs.working ? qsTr("Working out what that means…") : root.doughs.correctedText.length > 0 ? qsTr("Then: %1").arg(root.doughs.correctedText) : qsTr("That changes nothing in the forecast.")
        font.bold: true
    }
    Row {
        visible: root.doughs.telling
        width: root.room
        spacing: Theme.small

        ActionButton {
            objectName: "tell"
            width: root.room - forget.width - Theme.small
            strong: true
            symbol: Symbol.Done
            text: qsTr("Tell it")
            onClicked: root.doughs.tell()
        }
        ActionButton {
            id: forget
            objectName: "forget"
            height: parent.height
            symbol: Symbol.Close
            spoken: qsTr("Don't tell it")
            onClicked: root.doughs.forget()
        }
    }
    WordsText {
        width: root.room
        text: qsTr("Raw dough is not for tasting; wash your hands after touching it.")
        color: Theme.inkMuted
        font.pixelSize: Theme.captionSize
    }
}
