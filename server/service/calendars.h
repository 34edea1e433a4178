// Plans of a household as calendars, and the addresses at which calendar programs follow them.
#pragma once

#include <string>

#include "server/service/backend.h"

namespace suppertide::service {

// Of one event, or with an empty id of all that are planned, also past ones. NOT_FOUND when the event
// has no plan. `memberId` empty: what everybody does. Reads the disk.
Failure calendarText(Backend& backend, const std::string& householdId, const std::string& eventId,
                     const std::string& memberId, std::string& text);

// "/calendar/HOUSEHOLD/ADDRESS/SECRET.ics".
std::string calendarPath(const std::string& householdId, const std::string& addressId,
                         const std::string& secret);

// What is kept of a secret, as text.
std::string hexHashOf(const std::string& secret);

// What is served at a path; NOT_FOUND for all that is wrong with it alike. Reads the disk.
Failure calendarAt(Backend& backend, const std::string& path, std::string& text);

}  // namespace suppertide::service
