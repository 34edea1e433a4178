pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Session
import Suppertide.Ovens

// Every oven over a day with one cursor for all; what collided in them, and what would help.
FocusScope {
    id: root

    required property HouseholdSession session
    readonly property OvensController ovens: OvensController {
        session: root.session
    }
    // Shown above the ovens: what cannot all be had, and its remedies. Null: nothing.
    property Component help: null

    Flickable {
        id: scroller
        anchors.fill: parent
        visible: !empty.visible
        contentHeight: stack.height + 2 * Theme.medium
        boundsBehavior: Flickable.StopAtBounds
        clip: true

        Column {
            id: stack
            x: Theme.medium
            y: Theme.medium
            width: scroller.width - 2 * Theme.medium
            spacing: Theme.medium

            Flow {
                width: parent.width
                spacing: Theme.small

                Repeater {
                    model: root.ovens.days

                    ChoiceChip {
                        required property string day
                        required property string label

                        objectName: "day/" + day
                        text: label
                        chosen: day === root.ovens.day
                        onClicked: root.ovens.day = day
                    }
                }
                ActionButton {
                    objectName: "earlierChange"
                    symbol: Symbol.Undo
                    text: qsTr("Change before")
                    onClicked: root.ovens.toChange(-1)
                }
                ActionButton {
                    objectName: "laterChange"
                    symbol: Symbol.Moved
                    text: qsTr("Next change")
                    onClicked: root.ovens.toChange(1)
                }
                ActionButton {
                    objectName: "toNow"
                    text: qsTr("Now")
                    spoken: qsTr("Put the cursor to now")
                    enabled: !root.ovens.atNow
                    onClicked: root.ovens.toNow()
                }
            }
            Loader {
                width: parent.width
                sourceComponent: root.help
                visible: status === Loader.Ready && height > 0
            }
            Repeater {
                model: root.ovens.ovens

                OvenPanel {
                    width: stack.width
                    ovens: root.ovens
                }
            }
            SectionTitle {
                visible: root.ovens.settled.count > 0
                text: qsTr("What collided, and how the plan settled it")
            }
            Repeater {
                model: root.ovens.settled

                SettledRow {
                    width: stack.width
                }
            }
        }
    }
    EmptyState {
        id: empty
        anchors.fill: parent
        visible: !root.ovens.hasOvens
        symbol: Symbol.Oven
        headline: root.ovens.hasPlan ? qsTr("No oven is used") : qsTr("Ovens have nothing to do yet")
        advice: root.ovens.hasPlan ? qsTr("No dish of this event is baked or roasted. When one is, its oven appears here with its temperature over the day.") : qsTr("Once the event is planned, each oven shows here when it heats, what it is set to, and which dish stands on which rack.")
    }
}
