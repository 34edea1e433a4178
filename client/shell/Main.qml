import QtQuick
import Suppertide.Ui
import Suppertide.Shell

// The window.
Window {
    id: root

    required property SessionController session
    required property bool dark
    required property bool mirrored

    visible: true
    minimumWidth: 320
    minimumHeight: 400
    color: Theme.surface
    title: session.timeline.title.length > 0 ? qsTr("%1 – Suppertide").arg(session.timeline.title) : qsTr("Suppertide")

    LayoutMirroring.enabled: root.mirrored
    LayoutMirroring.childrenInherit: true

    Binding {
        target: Theme
        property: "dark"
        value: root.dark
    }
    EventPage {
        anchors.fill: parent
        focus: true
        session: root.session
    }
}
