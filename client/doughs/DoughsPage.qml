pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Session
import Suppertide.Doughs

// Every dough of the plan; one of them closely, with its curve and what is seen of it.
FocusScope {
    id: root

    required property HouseholdSession session
    readonly property DoughsController doughs: DoughsController {
        session: root.session
    }
    readonly property bool wide: width >= 900

    Flickable {
        id: scroller
        anchors.fill: parent
        visible: !empty.visible
        contentHeight: content.height + 2 * Theme.medium
        boundsBehavior: Flickable.StopAtBounds
        clip: true

        Item {
            id: content
            x: Theme.medium
            y: Theme.medium
            width: scroller.width - 2 * Theme.medium
            height: root.wide ? Math.max(list.height, detail.height) : list.height + Theme.medium + detail.height

            Column {
                id: list
                width: root.wide ? Math.min(340, Math.round(parent.width * 0.3)) : parent.width
                spacing: Theme.small

                Repeater {
                    model: root.doughs.doughs

                    DoughCard {
                        width: list.width
                        chosen: doughId === root.doughs.doughId
                        onClicked: root.doughs.doughId = doughId
                    }
                }
            }
            Column {
                id: detail
                x: root.wide ? list.width + Theme.medium : 0
                y: root.wide ? 0 : list.height + Theme.medium
                width: parent.width - x
                spacing: Theme.small + Theme.tiny

                Flow {
                    width: parent.width
                    spacing: Theme.small
                    visible: root.doughs.stages.count > 1
                    Accessible.role: Accessible.Grouping
                    Accessible.name: qsTr("Stage")

                    Repeater {
                        model: root.doughs.stages

                        ChoiceChip {
                            required property string stageId
                            required property string name
                            required property string when

                            objectName: "stage/" + stageId
                            text: name
                            spoken: qsTr("%1, %2").arg(name).arg(when)
                            chosen: stageId === root.doughs.stageId
                            onClicked: root.doughs.stageId = stageId
                        }
                    }
                }
                Text {
                    width: parent.width
                    text: root.doughs.stateText
                    color: Theme.ink
                    font { pixelSize: Theme.titleSize; bold: true }
                    wrapMode: Text.Wrap
                    textFormat: Text.PlainText
                    Accessible.role: Accessible.Heading
                    Accessible.name: text
                }
                WordsText {
                    width: parent.width
                    text: Array.of(root.doughs.windowText, root.doughs.temperatureText).filter(part => part.length > 0).join(qsTr(" · "))
                }
                RiseChart {
                    objectName: "riseChart"
                    width: parent.width
                    height: root.wide ? 300 : 240
                    doughs: root.doughs
                }
                WordsText {
                    width: parent.width
                    visible: root.doughs.actText.length > 0
                    text: qsTr("Next: %1").arg(root.doughs.actText)
                    font.bold: true
                }
                TellPanel {
                    objectName: "tellPanel"
                    width: parent.width
                    doughs: root.doughs
                }
            }
        }
    }
    EmptyState {
        id: empty
        anchors.fill: parent
        visible: !root.doughs.hasDoughs
        symbol: Symbol.Dough
        headline: root.doughs.hasPlan ? qsTr("No dough in this event") : qsTr("No doughs yet")
        advice: root.doughs.hasPlan ? qsTr("A dish whose recipe has a bread formula appears here with its rise, hour by hour.") : qsTr("Once the event is planned, each dough is forecast here: when it is ready, how warm it stands, and what comes next.")
    }
}
