pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Session
import Suppertide.Event

// One dinner: when each course is served, what there is to eat, who comes and who cooks.
FocusScope {
    id: root

    required property HouseholdSession session
    readonly property EventController dinner: EventController {
        session: root.session
    }
    readonly property bool wide: width >= 900

    Keys.onEscapePressed: if (dinner.editing) dinner.putBack()

    Flickable {
        id: scroller
        anchors { left: parent.left; right: parent.right; top: parent.top; bottom: bar.top }
        visible: !empty.visible
        contentHeight: content.height + 2 * Theme.medium
        boundsBehavior: Flickable.StopAtBounds
        clip: true

        Item {
            id: content
            x: Theme.medium
            y: Theme.medium
            width: scroller.width - 2 * Theme.medium
            height: root.wide ? Math.max(menu.height, people.height) : menu.height + people.height + Theme.medium

            Column {
                id: menu
                width: root.wide ? Math.round((parent.width - Theme.medium) * 0.58) : parent.width
                spacing: Theme.medium

                VersionsCard {
                    width: parent.width
                    visible: root.dinner.differences.count > 0
                    dinner: root.dinner
                }
                EventHead {
                    width: parent.width
                    dinner: root.dinner
                }
                CourseLine {
                    width: parent.width
                    dinner: root.dinner
                }
                Repeater {
                    model: root.dinner.courses

                    CourseCard {
                        width: menu.width
                        dinner: root.dinner
                    }
                }
                ActionButton {
                    objectName: "addCourse"
                    visible: root.dinner.editing
                    symbol: Symbol.Plus
                    text: qsTr("Another course")
                    onClicked: root.dinner.addCourse("")
                }
            }
            Column {
                id: people
                x: root.wide ? menu.width + Theme.medium : 0
                y: root.wide ? 0 : menu.height + Theme.medium
                width: root.wide ? parent.width - x : parent.width
                spacing: Theme.medium

                WarningsCard {
                    width: parent.width
                    visible: root.dinner.warnings.count > 0
                    dinner: root.dinner
                }
                GuestsCard {
                    width: parent.width
                    dinner: root.dinner
                }
                CooksCard {
                    width: parent.width
                    dinner: root.dinner
                }
            }
        }
    }
    EmptyState {
        id: empty
        anchors { left: parent.left; right: parent.right; top: parent.top; bottom: bar.top }
        visible: !root.dinner.hasEvent
        symbol: Symbol.Cover
        headline: qsTr("No event yet")
        advice: root.dinner.mayMake ? qsTr("An event is one dinner: its courses and when they are served, its dishes, guests and cooks. Make one with the button below.") : root.dinner.mayEdit ? qsTr("An event is one dinner in one kitchen. Describe your kitchen first, on the screen “Kitchen”; then make an event here.") : qsTr("An event is one dinner: its guests, courses and dishes. As soon as a host makes one, it appears here.")
    }
    DraftBar {
        id: bar
        anchors { left: parent.left; right: parent.right; bottom: parent.bottom }
        dinner: root.dinner
    }
}
