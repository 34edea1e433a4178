pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Session
import Suppertide.Kitchen

// Recipes, kitchens and starters: the list, and what is open of it. On a phone one or the other.
FocusScope {
    id: root
    objectName: "kitchenPage"

    required property HouseholdSession session
    readonly property bool narrow: width < Theme.narrowWidth
    readonly property alias desk: desk

    KitchenDesk {
        id: desk
        session: root.session
    }
    HouseholdUnits {
        id: units
        session: root.session
    }
    KitchenList {
        id: list
        visible: !root.narrow || desk.draft === null
        width: root.narrow ? parent.width : Math.min(320, parent.width * 0.34)
        height: parent.height
        focus: true
        desk: desk
    }
    Rectangle {
        visible: !root.narrow
        x: list.width
        width: 1
        height: parent.height
        color: Theme.divider
    }
    Item {
        id: side
        x: root.narrow ? 0 : list.width + 1
        width: parent.width - x
        height: parent.height
        visible: desk.draft !== null

        Loader {
            id: editor
            anchors.fill: parent
            focus: true
        }
    }
    Connections {
        target: desk
        // An editor is of one document for all its life.
        function onDraftChanged(): void {
            if (desk.draft === null)
                editor.source = ""
            else
                editor.setSource("DocumentEditor.qml", { draft: desk.draft, desk: desk, units: units })
        }
    }
    EmptyState {
        visible: !root.narrow && desk.draft === null
        x: side.x
        width: side.width
        height: parent.height
        symbol: Symbol.Jar
        headline: desk.kind === Document.Recipe ? qsTr("Choose a dish") : desk.kind === Document.Kitchen ? qsTr("Choose a kitchen") : qsTr("Choose a starter")
        advice: desk.mayEdit ? qsTr("What you change is kept here as you go, and the others see it once you save.") : qsTr("Hosts change what is here; you can read all of it.")
    }
    Shortcut {
        enabled: root.visible && desk.draft !== null && desk.mayEdit
        sequence: "Ctrl+S"
        onActivated: desk.draft.save()
    }
}
