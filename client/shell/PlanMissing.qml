import QtQuick
import Suppertide.Ui
import Suppertide.Session
import Suppertide.Timeline

// Why there is no timeline, and what to do about it.
EmptyState {
    required property HouseholdSession session
    required property Timeline timeline

    symbol: session.state === HouseholdSession.Refused ? Symbol.Refused : session.known ? Symbol.Cover : Symbol.Hourglass
    headline: {
        if (session.state === HouseholdSession.Refused)
            return qsTr("This device is not let in")
        if (!session.known)
            return session.why.length > 0 ? qsTr("No connection yet") : qsTr("Connecting to your household…")
        if (timeline.title.length === 0)
            return qsTr("No event yet")
        return qsTr("No plan yet")
    }
    advice: {
        if (session.state === HouseholdSession.Refused)
            return qsTr("The server said: %1\nAsk the host for a new invitation and join again.").arg(session.why)
        if (!session.known)
            return session.why.length > 0 ? qsTr("%1\nIt tries again by itself. Is the server running, and is this device on its network?").arg(session.why) : qsTr("One moment.")
        if (timeline.title.length === 0)
            return qsTr("An event is one dinner: its guests, courses and dishes. As soon as somebody in the household makes one, it appears here.")
        return qsTr("The timeline appears here as soon as somebody has this event planned.")
    }
}
