#include "server/service/event_days.h"

#include <algorithm>

#include "server/service/running_event.h"

namespace suppertide::service {
namespace {

constexpr std::int64_t kOverAfterSeconds = 24 * 3600;

bool isOver(const v1::Event& event, std::int64_t now) {
  std::int64_t last = 0;
  for (const v1::Course& course : event.courses()) last = std::max(last, course.serving_time().seconds());
  return now > last + kOverAfterSeconds;
}

}  // namespace

Failure readDays(Backend& backend, const std::string& householdId, const std::string& eventId, bool alsoPast,
                 HouseholdDays& days) {
  const auto household = backend.store().get(householdId, {"household", householdId});
  if (!household.ok()) return fromStorage(household.status());
  days.household = read<v1::Household>(*household);
  const auto events = backend.store().list(householdId, "event", "", kMostEvents);
  if (!events.ok()) return fromStorage(events.status());
  const std::int64_t now = backend.clock().now().time_since_epoch().count();
  for (const storage::Document& document : *events) {
    if (!eventId.empty() && document.key.id != eventId) continue;
    EventDay day;
    day.event = read<v1::Event>(document);
    if (!alsoPast && isOver(day.event, now)) continue;
    const auto plan = backend.store().get(householdId, {"plan", document.key.id});
    if (plan.status().code() == absl::StatusCode::kNotFound) continue;
    if (!plan.ok()) return fromStorage(plan.status());
    day.plan = read<v1::Plan>(*plan);
    if (const Failure wrong = readProgress(backend, householdId, document.key.id, day.progress);
        wrong.failed())
      return wrong;
    days.events.push_back(std::move(day));
  }
  return {};
}

std::vector<v1::Reminder> remindersFor(const HouseholdDays& days, const std::string& memberId,
                                       const v1::ReminderLog& log) {
  std::vector<v1::Reminder> own;
  for (const EventDay& day : days.events)
    for (v1::Reminder& reminder : compose::remindersOf({days.household, day.event, day.plan, day.progress}))
      if (reminder.member_id() == memberId) own.push_back(std::move(reminder));
  return compose::withMarks(std::move(own), log);
}

Failure readReminderLog(Backend& backend, const std::string& householdId, const std::string& memberId,
                        v1::ReminderLog& log) {
  const auto stored = backend.store().get(householdId, {kindOf(v1::ReminderLog()), memberId});
  if (stored.ok())
    log = read<v1::ReminderLog>(*stored);
  else if (stored.status().code() != absl::StatusCode::kNotFound)
    return fromStorage(stored.status());
  log.set_id(memberId);
  return {};
}

}  // namespace suppertide::service
