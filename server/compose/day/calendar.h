// Plans as iCalendar (RFC 5545): what a cook, or everybody, has to do, with the reminders as alarms. Pure.
//
// An entry keeps its UID for as long as the event has the step, and its SEQUENCE goes up when it is put
// elsewhere, so that a calendar that reads it again moves its entry instead of adding one. What the last
// correction took away, or gave to another cook, is told once more as cancelled.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "server/compose/day/reminders.h"
#include "suppertide/v1/kitchen.pb.h"
#include "suppertide/v1/recipe.pb.h"

namespace suppertide::compose {

struct CalendarEvent {
  DayDocuments day;  // the progress is not looked at: a calendar keeps what is over
  const v1::Kitchen& kitchen;
  std::map<std::string, std::string> dishNames;  // by dish
};

// `memberId` empty: of everybody, with their names.
std::string calendarOf(const std::vector<CalendarEvent>& events, const std::string& memberId);

}  // namespace suppertide::compose
