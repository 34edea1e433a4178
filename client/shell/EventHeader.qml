import QtQuick
import QtQuick.Layouts
import Suppertide.Ui
import Suppertide.Session
import Suppertide.Timeline
import Suppertide.Shell

// Which event, and whether what is shown is live.
Rectangle {
    id: root

    required property HouseholdSession session
    required property Timeline timeline
    required property bool narrow
    signal printWanted()
    // On a phone what can be taken back is read out for a while, and then leaves its row to the page.
    property bool fresh: false

    implicitHeight: row.implicitHeight + 2 * Theme.small + (undoRow.visible ? undoRow.height + Theme.tiny : 0)
    color: Theme.surface

    RowLayout {
        id: row
        anchors { left: parent.left; right: parent.right; top: parent.top; margins: Theme.small; leftMargin: Theme.medium }
        spacing: Theme.medium

        ColumnLayout {
            spacing: 0
            Layout.fillWidth: true

            Text {
                text: root.timeline.title.length > 0 ? root.timeline.title : root.session.householdName.length > 0 ? root.session.householdName : qsTr("Suppertide")
                color: Theme.ink
                font { pixelSize: root.narrow ? Theme.titleSize : Theme.headlineSize; bold: true }
                elide: Text.ElideRight
                wrapMode: Text.Wrap
                maximumLineCount: root.narrow ? 2 : 1
                textFormat: Text.PlainText
                Layout.fillWidth: true
                Accessible.role: Accessible.Heading
                Accessible.name: text
            }
            Text {
                visible: text.length > 0
                text: root.timeline.subtitle
                color: Theme.inkMuted
                font.pixelSize: root.narrow ? Theme.captionSize : Theme.bodySize
                elide: Text.ElideRight
                textFormat: Text.PlainText
                Layout.fillWidth: true
            }
        }
        EventChoice {
            visible: root.session.events.count > 1
            session: root.session
            Layout.preferredWidth: root.narrow ? 120 : 240
        }
        ActionButton {
            objectName: "undo"
            visible: root.session.undoText.length > 0 && !(root.narrow && root.fresh)
            symbol: Symbol.Undo
            text: root.narrow ? "" : spoken
            spoken: qsTr("Undo: %1").arg(root.session.undoText)
            onClicked: root.session.undo()
            Layout.maximumWidth: root.narrow ? Theme.target : Math.max(160, root.width * 0.32)
        }
        ActionButton {
            objectName: "print"
            visible: root.timeline.hasPlan
            symbol: Symbol.Paper
            text: root.narrow ? "" : qsTr("Print")
            spoken: qsTr("Print the run sheet")
            onClicked: root.printWanted()
        }
        StatusPill {
            objectName: "connection"
            label: root.session.stateText
            symbol: root.session.state === HouseholdSession.Live ? Symbol.Live : root.session.state === HouseholdSession.Refused ? Symbol.Refused : Symbol.Offline
            tone: root.session.state === HouseholdSession.Live ? Theme.live : root.session.state === HouseholdSession.Refused ? Theme.late : Theme.offline
        }
    }
    Connections {
        target: root.session
        function onUndoChanged(): void {
            root.fresh = true
            staleness.restart()
        }
    }
    Timer {
        id: staleness
        interval: 20000
        onTriggered: root.fresh = false
    }
    ActionButton {
        id: undoRow
        objectName: "undo"
        visible: root.narrow && root.fresh && root.session.undoText.length > 0
        anchors { left: parent.left; right: parent.right; bottom: parent.bottom; leftMargin: Theme.medium; rightMargin: Theme.medium; bottomMargin: Theme.tiny }
        symbol: Symbol.Undo
        text: qsTr("Undo: %1").arg(root.session.undoText)
        onClicked: root.session.undo()
    }
}
