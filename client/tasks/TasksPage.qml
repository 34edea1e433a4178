pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Session
import Suppertide.Tasks

// What I do now, what is next, and what the others do meanwhile.
FocusScope {
    id: root

    required property HouseholdSession session
    required property TasksController tasks
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
            width: Math.min(scroller.width - 2 * Theme.medium, 1180)
            height: Math.max(mine.height, root.wide ? aside.height : mine.height + aside.height + Theme.large)

            Column {
                id: mine
                width: root.wide ? Math.round((parent.width - Theme.large) * 0.6) : parent.width
                spacing: Theme.medium

                Flow {
                    width: parent.width
                    spacing: Theme.small
                    visible: root.tasks.cooks.count > 1
                    Accessible.role: Accessible.Grouping
                    Accessible.name: qsTr("Whose tasks")

                    Repeater {
                        model: root.tasks.cooks

                        ChoiceChip {
                            required property string cookId
                            required property string name

                            objectName: "cook/" + cookId
                            text: name
                            symbol: Symbol.Cook
                            chosen: cookId === root.tasks.cookId
                            onClicked: root.tasks.cookId = cookId
                        }
                    }
                }
                SectionTitle {
                    width: parent.width
                    visible: root.tasks.cookId.length === 0
                    text: qsTr("Whose tasks are wanted here? Choose a cook.")
                }
                Repeater {
                    model: root.tasks.now

                    TaskCard {
                        width: mine.width
                        tasks: root.tasks
                    }
                }
                Card {
                    width: parent.width
                    visible: root.tasks.calmText.length > 0

                    Row {
                        width: parent.width
                        spacing: Theme.small

                        Symbol {
                            shape: Symbol.Done
                            color: Theme.live
                            width: 28
                            height: 28
                        }
                        WordsText {
                            width: parent.width - 36
                            text: root.tasks.calmText
                            font.pixelSize: Theme.titleSize
                        }
                    }
                }
                SectionTitle {
                    width: parent.width
                    visible: root.tasks.next.count > 0
                    text: qsTr("Next today")
                }
                Repeater {
                    model: root.tasks.next

                    TaskLine {
                        width: mine.width
                        lead: countdown
                    }
                }
                SectionTitle {
                    width: parent.width
                    visible: root.tasks.later.count > 0
                    text: qsTr("How the next days begin")
                }
                Repeater {
                    model: root.tasks.later

                    TaskLine {
                        required property string day
                        required property int more

                        width: mine.width
                        lead: day
                        tail: more > 0 ? more === 1 ? qsTr("then one more that day") : qsTr("then %1 more that day").arg(more) : ""
                    }
                }
            }
            Column {
                id: aside
                x: root.wide ? mine.width + Theme.large : 0
                y: root.wide ? 0 : mine.height + Theme.large
                width: root.wide ? parent.width - x : parent.width
                spacing: Theme.small

                SectionTitle {
                    width: parent.width
                    visible: root.tasks.fetches.count > 0
                    text: qsTr("To take out ahead")
                }
                Repeater {
                    model: root.tasks.fetches

                    FetchLine {
                        width: aside.width
                    }
                }
                SectionTitle {
                    width: parent.width
                    visible: root.tasks.resting.count > 0
                    text: qsTr("Looks after itself")
                }
                Repeater {
                    model: root.tasks.resting

                    TaskLine {
                        width: aside.width
                        lead: underWay ? countdown : qsTr("by plan")
                    }
                }
                SectionTitle {
                    width: parent.width
                    visible: root.tasks.others.count > 0
                    text: root.tasks.cookId.length > 0 ? qsTr("The others, now") : qsTr("Everybody, now")
                }
                Repeater {
                    model: root.tasks.others

                    TaskWordsColumn {
                        required property string name
                        required property string doing

                        width: aside.width
                        symbol: Symbol.Cook
                        title: name
                        detail: doing
                    }
                }
            }
        }
    }
    EmptyState {
        id: empty
        anchors.fill: parent
        visible: !root.tasks.hasPlan
        symbol: Symbol.Hands
        headline: qsTr("No tasks yet")
        advice: qsTr("Tasks come from the plan. Once the event is planned, each cook finds here what to do now and what comes next.")
    }
}
