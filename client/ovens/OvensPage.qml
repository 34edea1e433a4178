pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Session
import Suppertide.Planning
import Suppertide.Ovens

// Every oven over a day with one cursor for all; what collided in them, and what would help.
FocusScope {
    id: root

    required property HouseholdSession session
    required property Planning planning
    readonly property OvensController ovens: OvensController {
        session: root.session
        planning: root.planning
    }
    readonly property bool narrow: width < Theme.narrowWidth
    readonly property bool askedOpen: planning.whatIf.open
    readonly property bool clashOpen: planning.remedies.open && !askedOpen
    readonly property bool panelOpen: askedOpen || clashOpen

    Flickable {
        id: scroller
        anchors {
            fill: parent
            rightMargin: root.panelOpen && !root.narrow ? panel.width : 0
            bottomMargin: root.panelOpen && root.narrow ? panel.height : 0
        }
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
                    text: qsTr("Change before")
                    onClicked: root.ovens.toChange(-1)
                }
                ActionButton {
                    objectName: "laterChange"
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
            OvenHelpCard {
                width: parent.width
                planning: root.planning
            }
            WordsText {
                width: parent.width
                visible: root.planning.previewing
                text: qsTr("This is how it would be; nothing is changed yet.")
                color: Theme.moved
                font.bold: true
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
                    mayAsk: root.planning.mayPlan && !root.planning.previewing
                    onAsked: (stepId, minutes) => root.planning.whatIf.ask(stepId, minutes)
                }
            }
        }
    }
    FocusScope {
        id: panel
        visible: root.panelOpen
        width: root.narrow ? parent.width : Math.min(380, parent.width * 0.42)
        height: root.narrow ? Math.round(parent.height * 0.52) : parent.height
        anchors { right: parent.right; bottom: parent.bottom }

        WhatIfPanel {
            anchors.fill: parent
            visible: root.askedOpen
            whatIf: root.planning.whatIf
        }
        ClashPanel {
            anchors.fill: parent
            visible: root.clashOpen
            search: root.planning.remedies
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
