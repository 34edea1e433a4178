pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Kitchen

// Somebody else changed the same: both versions, and which holds.
Column {
    id: root

    required property Draft draft

    width: parent ? parent.width : 0
    visible: draft.clashes.length > 0
    spacing: Theme.small

    Repeater {
        model: root.draft.clashes

        Rectangle {
            id: clash
            required property string modelData
            width: root.width
            implicitHeight: inside.height + 2 * Theme.medium
            radius: Theme.radius
            color: Theme.raised
            border.color: Theme.late
            border.width: 2
            Accessible.role: Accessible.AlertMessage
            Accessible.name: headline.text

            Column {
                id: inside
                x: Theme.medium
                y: Theme.medium
                width: parent.width - 2 * Theme.medium
                spacing: Theme.small

                Text {
                    id: headline
                    width: parent.width
                    text: root.draft.otherWriter.length > 0 ? qsTr("%1 changed this, too: %2").arg(root.draft.otherWriter).arg(KitchenChoices.fieldName(clash.modelData)) : qsTr("Somebody changed this, too: %1").arg(KitchenChoices.fieldName(clash.modelData))
                    color: Theme.late
                    font { pixelSize: Theme.bodySize; bold: true }
                    wrapMode: Text.Wrap
                    textFormat: Text.PlainText
                }
                Flow {
                    width: parent.width
                    spacing: Theme.medium

                    ClashVersion {
                        objectName: "mine"
                        width: inside.width < 480 ? inside.width : (inside.width - Theme.medium) / 2
                        title: qsTr("Yours")
                        words: root.draft.mineText(clash.modelData)
                        button: qsTr("Keep yours")
                        onChosen: root.draft.keepMine(clash.modelData)
                    }
                    ClashVersion {
                        objectName: "theirs"
                        width: inside.width < 480 ? inside.width : (inside.width - Theme.medium) / 2
                        title: root.draft.otherWriter.length > 0 ? root.draft.otherWriter : qsTr("The other one")
                        words: root.draft.theirText(clash.modelData)
                        button: qsTr("Take this one")
                        onChosen: root.draft.takeTheirs(clash.modelData)
                    }
                }
            }
        }
    }
}
