import QtQuick

// One of the screens a person can go to: its name in the bar, and its page, which is made when it
// is first gone to and then kept, with its place and its focus.
FocusScope {
    id: root

    // Never shown and the same in every language: "timeline".
    required property string key
    required property string name
    required property int symbol
    // The key of the screen that is shown.
    required property string chosen
    // The file of the page, and its required properties.
    required property url page
    required property var given
    // Whether there is nothing to see before the event has a plan.
    property bool needsPlan: false
    // How many things there ask for this person; 0 shows nothing.
    property int askingCount: 0
    readonly property bool here: key === chosen

    anchors.fill: parent
    visible: here
    focus: here
    onHereChanged: root.prepare()
    Component.onCompleted: root.prepare()

    function prepare(): void {
        if (here && loader.status === Loader.Null)
            loader.setSource(page, given)
    }
    Loader {
        id: loader
        anchors.fill: parent
        focus: true
    }
}
