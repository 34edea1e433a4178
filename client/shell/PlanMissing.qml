import QtQuick
import Suppertide.Ui
import Suppertide.Session
import Suppertide.Planning
import Suppertide.Timeline

// Why there is no timeline, and what to do about it.
EmptyState {
    id: root

    required property HouseholdSession session
    required property Timeline timeline
    required property Planning planning
    readonly property PlanRun run: planning.run
    readonly property bool unplanned: session.known && session.state !== HouseholdSession.Refused && timeline.title.length > 0

    symbol: session.state === HouseholdSession.Refused ? Symbol.Refused : session.known ? Symbol.Cover : Symbol.Hourglass
    headline: {
        if (session.state === HouseholdSession.Refused)
            return qsTr("This device is not let in")
        if (!session.known)
            return session.why.length > 0 ? qsTr("No connection yet") : qsTr("Connecting to your household…")
        if (timeline.title.length === 0)
            return qsTr("No event yet")
        if (run.trouble.length > 0)
            return qsTr("It could not be planned")
        return run.running || run.elsewhere ? qsTr("Planning…") : qsTr("No plan yet")
    }
    advice: {
        if (session.state === HouseholdSession.Refused)
            return qsTr("The server said: %1\nAsk the host for a new invitation and join again.").arg(session.why)
        if (!session.known)
            return session.why.length > 0 ? qsTr("%1\nIt tries again by itself. Is the server running, and is this device on its network?").arg(session.why) : qsTr("One moment.")
        if (timeline.title.length === 0)
            return qsTr("An event is one dinner: its guests, courses and dishes. As soon as somebody in the household makes one, it appears here.")
        if (run.trouble.length > 0)
            return qsTr("%1\nMend it and plan again.").arg(run.trouble)
        if (run.elsewhere)
            return qsTr("Somebody is having this event planned. The plan appears here as soon as it is done.")
        if (run.running)
            return run.stopping ? qsTr("Stopping…") : qsTr("The first plan appears in a moment, and gets better while you look.")
        if (!planning.mayPlan)
            return qsTr("The timeline appears here as soon as somebody who cooks has this event planned.")
        return qsTr("From the serving times backwards, every step gets its time, its cook and its oven. It takes about 20 seconds; you see each better plan at once and can stop.")
    }
    action: !unplanned ? "" : run.running || run.elsewhere ? qsTr("Stop") : planning.mayPlan ? qsTr("Plan this event") : ""
    actionEnabled: !run.stopping
    onActed: run.running || run.elsewhere ? run.stop() : run.begin()
}
