import QtQuick
import Suppertide.Ui
import Suppertide.Session
import Suppertide.Household

// Who belongs to the household, its devices, the connection, and what this device's person likes.
FormView {
    id: root

    required property HouseholdSession session
    required property HouseholdController household
    required property Preferences preferences

    gap: Theme.large

    ConnectionPart {
        width: root.columnWidth
        session: root.session
        household: root.household
    }
    HouseholdRulesPart {
        visible: root.session.mayHost
        preferences: root.preferences
        width: root.columnWidth
        session: root.session
        household: root.household
    }
    PeoplePart {
        width: root.columnWidth
        session: root.session
        household: root.household
    }
    InvitationPart {
        visible: root.session.mayHost
        width: root.columnWidth
        session: root.session
        household: root.household
    }
    DevicesPart {
        visible: root.session.mayHost
        width: root.columnWidth
        household: root.household
        session: root.session
    }
    PreferencesPart {
        width: root.columnWidth
        preferences: root.preferences
    }
    LeavePart {
        width: root.columnWidth
        session: root.session
        household: root.household
    }
}
