pragma ComponentBehavior: Bound
import QtQuick
import QtQuick.Controls.Basic
import Suppertide.Ui
import Suppertide.Session

// Which of several events is shown.
ComboBox {
    id: root

    required property HouseholdSession session

    implicitHeight: Theme.target
    model: session.events
    textRole: "name"
    font.pixelSize: Theme.bodySize
    currentIndex: session.events.count > 0 ? session.events.rowOf(session.eventId) : -1
    onActivated: index => session.eventId = session.events.idAt(index)

    Accessible.name: qsTr("Event")

    palette {
        button: Theme.raised
        buttonText: Theme.ink
        window: Theme.raised
        base: Theme.raised
        text: Theme.ink
        windowText: Theme.ink
        highlight: Theme.accent
        highlightedText: Theme.ink
        light: Theme.accent
        midlight: Theme.accent
        mid: Theme.outline
        dark: Theme.ink
    }
    delegate: ItemDelegate {
        required property string name
        required property string when
        required property int index

        width: root.width
        height: Math.max(Theme.target, implicitHeight)
        text: when.length > 0 ? qsTr("%1, %2").arg(name).arg(when) : name
        font.pixelSize: Theme.bodySize
        Accessible.name: text
        highlighted: root.highlightedIndex === index
    }
}
