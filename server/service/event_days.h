// The events of a household that people still cook or look forward to, with all that reminders and calendars
// read.
#pragma once

#include <string>
#include <vector>

#include "server/compose/day/reminders.h"
#include "server/service/backend.h"

namespace suppertide::service {

struct EventDay {
  v1::Event event;
  v1::Plan plan;
  v1::Progress progress;
};

struct HouseholdDays {
  v1::Household household;
  std::vector<EventDay> events;  // those with a plan, by id
};

// Those whose last course is at most a day ago; all of them with `alsoPast`. `eventId`: only that one;
// empty: every one. Reads the disk.
Failure readDays(Backend& backend, const std::string& householdId, const std::string& eventId, bool alsoPast,
                 HouseholdDays& days);

// What a member is to be told, by time; without what was seen to, with what is put off.
std::vector<v1::Reminder> remindersFor(const HouseholdDays& days, const std::string& memberId,
                                       const v1::ReminderLog& log);

// Empty when there is none yet.
Failure readReminderLog(Backend& backend, const std::string& householdId, const std::string& memberId,
                        v1::ReminderLog& log);

}  // namespace suppertide::service
