import QtQuick
import Suppertide.Ui
import Suppertide.Planning

// What the plan could not give, and the way to what would help.
Card {
    id: root

    required property Planning planning

    visible: planning.shortfall.length > 0 && !planning.previewing
    border { color: Theme.late; width: 2 }
    Accessible.role: Accessible.Grouping
    Accessible.name: planning.shortfall

    Row {
        width: root.room
        spacing: Theme.small

        Symbol {
            shape: Symbol.Late
            color: Theme.late
        }
        WordsText {
            width: root.room - 28
            text: root.planning.shortfall
            font.bold: true
        }
    }
    ActionButton {
        objectName: "ovenHelp"
        text: qsTr("What would help?")
        enabled: !root.planning.run.running
        onClicked: root.planning.remedies.begin()
    }
}
