pragma ComponentBehavior: Bound
import QtQuick
import QtQuick.Templates as T
import Suppertide.Ui
import Suppertide.Shopping

// What to take out of fridge and freezer, when, and by whom.
Item {
    id: root

    required property ShoppingController shopping

    SectionTitle {
        id: title
        visible: list.count > 0
        x: Theme.medium
        width: parent.width - 2 * Theme.medium
        text: qsTr("Take out of fridge and freezer")
    }
    ListView {
        id: list
        objectName: "fetchList"
        anchors { left: parent.left; right: parent.right; top: title.bottom; topMargin: Theme.small; bottom: parent.bottom }
        model: root.shopping.fetches
        clip: true
        boundsBehavior: Flickable.StopAtBounds
        Accessible.role: Accessible.List
        Accessible.name: qsTr("To take out")

        delegate: T.AbstractButton {
            id: row
            required property string day
            required property string when
            required property string what
            required property string way
            required property string why
            required property string cook
            required property bool done
            required property bool tickable
            required property int index

            width: list.width
            height: Math.max(64, words.implicitHeight + 2 * Theme.small)
            focusPolicy: Qt.StrongFocus
            enabled: tickable && root.shopping.mayEdit
            onClicked: root.shopping.toggleFetch(index)
            Accessible.role: Accessible.CheckBox
            Accessible.checked: done
            Accessible.name: qsTr("%1: %2, %3, %4").arg(when).arg(what).arg(way).arg(cook)
            Accessible.description: why
            Keys.onReturnPressed: clicked()
            Keys.onEnterPressed: clicked()

            Rectangle {
                id: mark
                visible: row.tickable
                x: Theme.medium
                width: 32
                height: 32
                radius: Theme.tiny
                anchors.verticalCenter: parent.verticalCenter
                color: row.done ? Theme.ready : Theme.raised
                border.width: row.visualFocus ? 3 : 2
                border.color: row.visualFocus ? Theme.focus : row.done ? Theme.readyEdge : Theme.outline

                Symbol {
                    visible: row.done
                    anchors.centerIn: parent
                    shape: Symbol.Done
                    color: Theme.ink
                }
            }
            Column {
                id: words
                anchors { left: parent.left; leftMargin: row.tickable ? 64 : Theme.medium; right: parent.right; rightMargin: Theme.medium; verticalCenter: parent.verticalCenter }

                Text {
                    visible: row.day.length > 0
                    width: parent.width
                    text: row.day
                    color: Theme.inkMuted
                    font { pixelSize: Theme.bodySize; bold: true }
                    bottomPadding: Theme.tiny
                    textFormat: Text.PlainText
                }
                Text {
                    width: parent.width
                    text: qsTr("%1  %2").arg(row.when).arg(row.what)
                    color: row.done ? Theme.inkMuted : Theme.ink
                    font { pixelSize: Theme.titleSize; strikeout: row.done }
                    wrapMode: Text.Wrap
                    textFormat: Text.PlainText
                }
                Text {
                    width: parent.width
                    text: qsTr("%1 · %2 · %3").arg(row.way).arg(row.cook).arg(row.why)
                    color: Theme.inkMuted
                    font.pixelSize: Theme.captionSize
                    wrapMode: Text.Wrap
                    textFormat: Text.PlainText
                }
            }
            background: Rectangle {
                color: row.down ? Theme.accent : "transparent"
            }
        }
    }
    EmptyState {
        anchors.fill: parent
        visible: list.count === 0
        symbol: Symbol.Snowflake
        headline: qsTr("Nothing to take out")
        advice: qsTr("What is kept in fridge or freezer and needed warm or thawed stands here, with its time.")
    }
}
