import QtQuick
import Suppertide.Ui
import Suppertide.Session
import Suppertide.Household

// The way out, with what it means; asked twice.
Card {
    id: root

    required property HouseholdSession session
    required property HouseholdController household
    property bool asked: false

    SectionTitle {
        text: qsTr("Leave this household")
        topPadding: 0
    }
    WordsText {
        width: parent.width
        text: root.household.dataFile.length > 0 ? qsTr("This household lives on this computer alone. Its file stays at %1, but this window can't open it again.").arg(root.household.dataFile) : qsTr("This device forgets the household. To come back it needs a new invitation.")
        color: Theme.inkMuted
    }
    WordsText {
        width: parent.width
        visible: root.session.waitingCount > 0 || root.session.refused.count > 0
        text: qsTr("%n things done here have not reached the server. They are lost if you leave now.", "", root.session.waitingCount + root.session.refused.count)
        color: Theme.late
        font.bold: true
    }
    Flow {
        width: parent.width
        spacing: Theme.small

        ActionButton {
            objectName: "leave"
            text: root.asked ? qsTr("Yes, leave") : qsTr("Leave…")
            spoken: root.asked ? qsTr("Yes, leave this household") : qsTr("Leave this household")
            onClicked: {
                if (root.asked)
                    root.household.leave()
                root.asked = !root.asked
            }
        }
        ActionButton {
            visible: root.asked
            text: qsTr("Stay")
            onClicked: root.asked = false
        }
    }
}
