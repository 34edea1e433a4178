// One cook's day, live: what is now, what is next, a countdown, and the bell.
#include <deque>
#include <utility>

#include <nlohmann/json.hpp>

#include "absl/strings/numbers.h"
#include "absl/strings/str_cat.h"
#include "client/link/reminder_link.h"
#include "client/link/request_id.h"
#include "client/terminal/connection.h"
#include "client/terminal/day_options.h"
#include "client/terminal/day_text.h"
#include "client/terminal/exit_code.h"
#include "client/terminal/live_replica.h"
#include "client/terminal/moved_text.h"
#include "client/terminal/report.h"

namespace suppertide::terminal {
namespace {

constexpr std::chrono::seconds kConnect{10};

// Hands reminders to the command's own thread.
class Told : public link::ReminderListener {
 public:
  void reminderTold(const v1::WatchRemindersResponse& message) override {
    const std::lock_guard lock(mutex_);
    messages_.push_back(message);
  }
  bool take(v1::WatchRemindersResponse& message) {
    const std::lock_guard lock(mutex_);
    if (messages_.empty()) return false;
    message = std::move(messages_.front());
    messages_.pop_front();
    return true;
  }

 private:
  std::mutex mutex_;
  std::deque<v1::WatchRemindersResponse> messages_;  // guarded by mutex_
};

class Day {
 public:
  Day(const DayCommand& command, Environment& environment, std::string eventId, std::string memberId)
      : command_(command),
        environment_(environment),
        eventId_(std::move(eventId)),
        memberId_(std::move(memberId)) {}

  void show(std::shared_ptr<const link::Replica> replica) {
    if (replica->plans.count(eventId_) == 0 || replica->events.count(eventId_) == 0) return;
    const bool first = shown_ == nullptr;
    const auto before = std::exchange(shown_, std::move(replica));
    if (first) return whole();
    const v1::Plan& plan = shown_->plans.at(eventId_);
    const auto old = before->plans.find(eventId_);
    if (old != before->plans.end() && old->second.meta().etag() == plan.meta().etag()) return;
    if (command_.json || plan.moved_steps().empty()) return;
    print(absl::StrCat("The plan has changed:\n", movedText(view(), plan.moved_steps())));
  }

  void whole() {
    if (!command_.json) print(dayText(view(), progress(), memberId_, absl::Now()));
  }

  void tell(const v1::WatchRemindersResponse& message) {
    if (shown_ == nullptr) return;
    if (command_.json) {
      nlohmann::ordered_json json = nlohmann::ordered_json::parse(jsonOf(message), nullptr, false);
      environment_.out << json.dump() << std::endl;
      return;
    }
    if (message.has_due())
      print(absl::StrCat(message.due().rings() ? "\a" : "", clock(), "  ",
                         reminderText(view(), message.due().reminder()), "\n"));
    if (!message.has_missed()) return;
    std::string text = "While you were away:\n";
    for (const v1::Reminder& reminder : message.missed().reminders())
      text += view().item(
          absl::StrCat("  ", view().clock().hourSeenFrom(absl::Now(), toTime(reminder.remind_time())), "  "),
          reminderText(view(), reminder));
    print(text);
  }

  // A line written over each second, on a terminal.
  void count() {
    if (shown_ == nullptr || command_.json || !environment_.progressLine) return;
    const std::string line = countdownText(view(), progress(), memberId_, absl::Now());
    environment_.err << "\r\033[K" << shortened(line, environment_.width - 1) << std::flush;
    counted_ = true;
  }
  void end() {
    if (std::exchange(counted_, false)) environment_.err << "\r\033[K" << std::flush;
  }

 private:
  PlanView view() const { return viewOf(*shown_, eventId_, environment_); }
  const v1::Progress& progress() const {
    const auto found = shown_->progresses.find(eventId_);
    return found == shown_->progresses.end() ? v1::Progress::default_instance() : found->second;
  }
  std::string clock() const { return view().clock().hour(absl::Now()); }
  void print(const std::string& text) {
    end();
    environment_.out << text << std::flush;
  }

  const DayCommand& command_;
  Environment& environment_;
  const std::string eventId_;
  const std::string memberId_;
  std::shared_ptr<const link::Replica> shown_;
  bool counted_ = false;
};

// What was told last and is not seen to.
absl::StatusOr<v1::Reminder> lastTold(link::Session& session, const std::string& householdId,
                                      const std::string& eventId) {
  v1::ListRemindersRequest request;
  request.set_household_id(householdId);
  request.set_event_id(eventId);
  request.set_page_size(500);  // more than anybody is told in three hours
  const absl::Time now = absl::Now();
  request.mutable_from_time()->set_seconds(absl::ToUnixSeconds(now - absl::Hours(3)));
  const auto answer = session.listReminders(request);
  if (!answer.ok()) return answer.status();
  v1::Reminder last;
  for (const v1::Reminder& reminder : answer->reminders())
    if (toTime(reminder.remind_time()) <= now) last = reminder;
  if (last.id().empty()) return absl::NotFoundError("nothing was told in the last three hours");
  return last;
}

// Settles or snoozes what was told last.
int see(const DayCommand& command, const Connection& connection, Environment& environment) {
  const auto last = lastTold(*connection.session, connection.householdId, command.eventId);
  if (!last.ok()) return reportFailure(environment, last.status(), command.json);
  absl::Status status;
  if (command.settle) {
    v1::SettleRemindersRequest request;
    request.set_household_id(connection.householdId);
    request.add_reminder_ids(last->id());
    request.set_request_id(link::newRequestId());
    status = connection.session->settleReminders(request).status();
  } else {
    int minutes = 0;
    (void)absl::SimpleAtoi(command.snooze, &minutes);
    v1::SnoozeReminderRequest request;
    request.set_household_id(connection.householdId);
    request.set_reminder_id(last->id());
    request.mutable_snooze_duration()->set_seconds(minutes * 60);
    request.set_request_id(link::newRequestId());
    status = connection.session->snoozeReminder(request).status();
  }
  if (!status.ok()) return reportFailure(environment, status, command.json);
  if (command.json)
    environment.out << jsonOf(*last);
  else
    environment.out << plainLine(last->title())
                    << (command.settle ? ": seen to.\n"
                                       : absl::StrCat(": told again in ", command.snooze, " min.\n"));
  return kOk;
}

}  // namespace

int runDay(const DayCommand& command, Environment& environment) {
  const auto known = knownServer(environment, command.server);
  if (!known.ok()) return reportFailure(environment, known.status(), command.json);
  Connection connection = openKnown(*known);
  const auto self = connection.session->whoAmI();
  if (!self.ok()) return reportFailure(environment, self.status(), command.json);
  if (command.settle || !command.snooze.empty()) return see(command, connection, environment);
  LiveReplica live(*known);
  auto replica = live.waitFor([](const link::Replica& r) { return r.revision > 0; }, kConnect);
  if (!replica.ok()) return reportFailure(environment, replica.status(), command.json);
  if (*replica == nullptr)
    return reportFailure(environment, absl::UnavailableError("it fell silent"), command.json);
  const auto event = plannedEvent(**replica, command.eventId);
  if (!event.ok()) return reportFailure(environment, event.status(), command.json);
  const bool cooks =
      std::any_of((*replica)->events.at(*event).cooks().begin(), (*replica)->events.at(*event).cooks().end(),
                  [&](const v1::EventCook& c) { return c.member_id() == self->member_id(); });
  Day day(command, environment, *event, cooks ? self->member_id() : "");
  day.show(*replica);
  if (command.once) return kOk;
  Told told;
  link::ReminderLink reminders(linkOptionsOf(*known), *event, told);
  reminders.start();
  std::int64_t seen = (*replica)->revision;
  while (!environment.wasInterrupted()) {
    // Short enough for Ctrl-C, the countdown and a reminder to feel immediate.
    const auto next = live.waitFor([&](const link::Replica& r) { return r.revision > seen; },
                                   std::chrono::milliseconds(200));
    if (!next.ok()) return reportFailure(environment, next.status(), command.json);
    if (*next != nullptr) {
      seen = (*next)->revision;
      day.show(*next);
    }
    for (v1::WatchRemindersResponse message; told.take(message);) day.tell(message);
    day.count();
  }
  day.end();
  return kOk;
}

}  // namespace suppertide::terminal
