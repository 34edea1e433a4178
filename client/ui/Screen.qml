import QtQuick

// One of the screens a person can go to.
QtObject {
    // Never shown and the same in every language: "timeline".
    required property string key
    required property string name
    required property int symbol
    required property Component page
    // Whether there is nothing to see before the event has a plan.
    property bool needsPlan: false
    // How many things there ask for this person; 0 shows nothing.
    property int askingCount: 0
}
