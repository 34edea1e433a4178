pragma ComponentBehavior: Bound
import QtQuick
import Suppertide.Ui
import Suppertide.Session
import Suppertide.Planning
import Suppertide.Timeline
import Suppertide.Tasks
import Suppertide.Household
import Suppertide.Shell

// The window: which event, the screens, and what was just said.
Window {
    id: root

    required property HouseholdSession session
    required property Timeline timeline
    required property Planning planning
    required property FirstRun firstRun
    required property HouseholdController household
    required property Preferences preferences
    required property Notifier notifier
    required property Reminders reminders
    required property bool darkDesktop
    required property bool mirrored
    // The key of the screen to begin with.
    required property string screen
    readonly property bool planWanted: {
        for (let i = 0; i < bar.screens.length; ++i)
            if (bar.screens[i].key === root.screen)
                return bar.screens[i].needsPlan
        return false
    }
    readonly property bool narrow: width < Theme.narrowWidth
    // By a dialog: neither pointer nor Tab gets at what is below it.
    readonly property bool covered: printing.wanted

    // A dough is looked at among the doughs, an oven set among the ovens; all else is one's task.
    function showReminder(kind: int): void {
        root.screen = kind === 6 ? doughsScreen.key : kind === 5 ? ovensScreen.key : tasksScreen.key
    }

    // Whatever scrolls moves so far that what has the focus is seen.
    function showFocused(item: Item): void {
        for (let around = item ? item.parent : null; around; around = around.parent) {
            if (!(around instanceof Flickable))
                continue
            const box = item.mapToItem(around.contentItem, 0, 0, item.width, item.height)
            around.contentX = root.shifted(around.contentX, around.width, box.x, box.width)
            around.contentY = root.shifted(around.contentY, around.height, box.y, box.height)
        }
    }
    // Where a view of that length begins that shows the stretch, or its start when it is too long.
    function shifted(from: real, length: real, start: real, size: real): real {
        if (start < from || size > length)
            return start >= from && start < from + length ? from : start
        return Math.max(from, start + size - length)
    }

    onActiveFocusItemChanged: root.showFocused(root.activeFocusItem)

    visible: true
    minimumWidth: 320
    minimumHeight: 400
    color: Theme.surface
    title: timeline.title.length > 0 ? qsTr("%1 – Suppertide").arg(timeline.title) : qsTr("Suppertide")

    LayoutMirroring.enabled: root.mirrored
    LayoutMirroring.childrenInherit: true

    Binding {
        target: Theme
        property: "dark"
        value: root.preferences.scheme === Preferences.Dark || root.preferences.scheme === Preferences.AsDesktop && root.darkDesktop
    }
    Binding {
        target: Theme
        property: "textScale"
        value: root.preferences.textScale
    }
    Shortcut {
        sequences: [StandardKey.Undo] // qmllint disable unqualified
        enabled: root.session.undoText.length > 0
        onActivated: root.session.undo()
    }
    TasksController {
        id: tasks
        session: root.session
    }
    EventHeader {
        id: header
        enabled: !root.covered
        anchors { left: parent.left; right: parent.right; top: parent.top }
        session: root.session
        timeline: root.timeline
        narrow: root.narrow
        onPrintWanted: printing.open()
    }
    Shortcut {
        sequences: [StandardKey.Print] // qmllint disable unqualified
        enabled: root.timeline.hasPlan
        onActivated: printing.open()
    }
    ReminderStrip {
        id: strip
        enabled: !root.covered
        anchors { left: root.narrow ? parent.left : bar.right; right: parent.right; top: header.bottom }
        height: implicitHeight
        mostHeight: root.height * 0.45
        reminders: root.reminders
        narrow: root.narrow
        onWanted: kind => root.showReminder(kind)
    }
    ScreenBar {
        id: bar
        enabled: !root.covered
        visible: screens.length > 1
        anchors {
            left: parent.left
            top: root.narrow ? undefined : header.bottom
            bottom: parent.bottom
        }
        width: root.narrow ? parent.width : implicitWidth
        height: root.narrow ? implicitHeight : parent.height - header.height
        narrow: root.narrow
        chosen: root.screen
        screens: [eventScreen, timelineScreen, ovensScreen, doughsScreen, tasksScreen, shoppingScreen, kitchenScreen, householdScreen]
        onWanted: key => root.screen = key
    }
    Item {
        id: frame
        enabled: !root.covered
        anchors {
            left: bar.visible && !root.narrow ? bar.right : parent.left
            right: parent.right
            top: strip.bottom
            bottom: bar.visible && root.narrow ? bar.top : parent.bottom
        }

        Screen {
            id: eventScreen
            key: "event"
            name: qsTr("Event")
            symbol: Symbol.Cover
            chosen: root.screen
            visible: here && !nothing.visible
            page: "qrc:/qt/qml/Suppertide/Event/EventPage.qml"
            given: ({ session: root.session })
        }
        Screen {
            id: timelineScreen
            key: "timeline"
            name: qsTr("Timeline")
            symbol: Symbol.Lanes
            chosen: root.screen
            needsPlan: true
            visible: here && !nothing.visible
            page: "qrc:/qt/qml/Suppertide/Timeline/TimelinePage.qml"
            given: ({ timeline: root.timeline, planning: root.planning })
        }
        Screen {
            id: ovensScreen
            key: "ovens"
            name: qsTr("Ovens")
            symbol: Symbol.Oven
            chosen: root.screen
            visible: here && !nothing.visible
            page: "qrc:/qt/qml/Suppertide/Ovens/OvensPage.qml"
            given: ({ session: root.session, planning: root.planning })
        }
        Screen {
            id: doughsScreen
            key: "doughs"
            name: qsTr("Doughs")
            symbol: Symbol.Dough
            chosen: root.screen
            visible: here && !nothing.visible
            page: "qrc:/qt/qml/Suppertide/Doughs/DoughsPage.qml"
            given: ({ session: root.session })
        }
        Screen {
            id: tasksScreen
            key: "tasks"
            name: qsTr("My tasks")
            symbol: Symbol.Hands
            chosen: root.screen
            askingCount: tasks.askingCount
            visible: here && !nothing.visible
            page: "qrc:/qt/qml/Suppertide/Tasks/TasksPage.qml"
            given: ({ session: root.session, tasks: tasks })
        }
        Screen {
            id: shoppingScreen
            key: "shopping"
            name: qsTr("Shopping")
            symbol: Symbol.Basket
            chosen: root.screen
            visible: here && !nothing.visible
            page: "qrc:/qt/qml/Suppertide/Shopping/ShoppingPage.qml"
            given: ({ session: root.session })
        }
        Screen {
            id: kitchenScreen
            key: "kitchen"
            name: qsTr("Kitchen")
            symbol: Symbol.Jar
            chosen: root.screen
            visible: here && !nothing.visible
            page: "qrc:/qt/qml/Suppertide/Kitchen/KitchenPage.qml"
            given: ({ session: root.session })
        }
        Screen {
            id: householdScreen
            key: "household"
            name: qsTr("Household")
            symbol: Symbol.House
            chosen: root.screen
            askingCount: root.session.refused.count
            visible: here && !nothing.visible
            page: "qrc:/qt/qml/Suppertide/Household/HouseholdPage.qml"
            given: ({ session: root.session, household: root.household, preferences: root.preferences })
        }
        PlanMissing {
            id: nothing
            anchors.fill: parent
            visible: root.screen !== householdScreen.key && (!root.session.known || (root.planWanted && !root.timeline.hasPlan))
            session: root.session
            timeline: root.timeline
            planning: root.planning
        }
    }
    NoticeBar {
        id: notice
        objectName: "notice"
        anchors { bottom: frame.bottom; horizontalCenter: parent.horizontalCenter; bottomMargin: Theme.large }
        width: Math.min(implicitWidth, parent.width - 2 * Theme.medium)

        function say(words: string): void {
            text = words
            noticeEnd.restart()
        }
    }
    Timer {
        id: noticeEnd
        interval: 8000
        onTriggered: notice.text = ""
    }
    Connections {
        target: root.timeline
        function onChanged(text: string): void {
            notice.say(text)
        }
    }
    Connections {
        target: root.session
        function onFailed(text: string): void {
            notice.say(text)
        }
        function onRefusedNow(number: int, what: string, why: string): void {
            notice.say(qsTr("%1: the server did not take it. It is kept under Household.").arg(what))
        }
    }
    Connections {
        target: root.notifier
        function onOpened(id: string): void {
            root.raise()
            root.requestActivate()
            const row = root.reminders.due.rowOf(id)
            root.showReminder(row < 0 ? 0 : root.reminders.due.value(row, "kind"))
        }
    }
    Loader {
        id: printing
        objectName: "printing"

        property bool wanted: false
        // What had the focus, and gets it back.
        property Item before: null

        function open(): void {
            if (!wanted)
                before = root.activeFocusItem
            wanted = true
        }

        anchors.fill: parent
        onWantedChanged: {
            if (wanted) {
                setSource("qrc:/qt/qml/Suppertide/Printing/PrintPanel.qml", { session: root.session, focus: true })
                return
            }
            source = ""
            uncovered.restart()
        }
        onLoaded: (item as Item).forceActiveFocus(Qt.OtherFocusReason)
    }
    // Once what was covered takes keys again.
    Timer {
        id: uncovered
        interval: 0
        onTriggered: {
            if (printing.before)
                printing.before.forceActiveFocus(Qt.OtherFocusReason)
        }
    }
    Connections {
        target: printing.item
        ignoreUnknownSignals: true
        function onClosed(): void {
            printing.wanted = false
        }
    }
    // Covers everything until this device belongs to a household.
    Loader {
        id: firstRunLoader
        objectName: "firstRun"

        readonly property bool wanted: root.firstRun.open

        anchors.fill: parent
        onWantedChanged: prepare()
        Component.onCompleted: prepare()

        function prepare(): void {
            if (wanted)
                setSource("qrc:/qt/qml/Suppertide/Shell/FirstRunPage.qml", { firstRun: root.firstRun })
            else
                source = ""
        }
    }
}
