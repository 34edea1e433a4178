#include "server/service/reminder_board.h"

#include <spdlog/spdlog.h>

#include <algorithm>
#include <future>
#include <utility>

#include "server/compose/day/local_hours.h"

namespace suppertide::service {
namespace {

constexpr std::int64_t kMissedAtMost = 24 * 3600;
// What was to begin so long ago is not announced any more.
constexpr std::int64_t kSoonAtMost = 10 * 60;
// What nobody reported is over by then all the same.
constexpr std::int64_t kStands = 3 * 3600;
constexpr int kUpcoming = 20;
constexpr int kMostMarks = 500;

v1::ReminderMark& markOf(v1::ReminderLog& log, const v1::Reminder& reminder) {
  for (v1::ReminderMark& mark : *log.mutable_marks())
    if (mark.reminder_id() == reminder.id()) return mark;
  v1::ReminderMark& mark = *log.add_marks();
  mark.set_reminder_id(reminder.id());
  mark.set_event_id(reminder.event_id());
  return mark;
}

void trim(v1::ReminderLog& log) {
  if (log.marks_size() > kMostMarks) log.mutable_marks()->DeleteSubrange(0, log.marks_size() - kMostMarks);
}

// Told since it was last put off.
bool wasTold(const v1::ReminderLog& log, const v1::Reminder& reminder) {
  for (const v1::ReminderMark& mark : log.marks()) {
    if (mark.reminder_id() != reminder.id()) continue;
    return mark.has_told_time() && (!mark.has_snoozed_until_time() ||
                                    mark.told_time().seconds() >= mark.snoozed_until_time().seconds());
  }
  return false;
}

bool concerns(const std::string& eventId, const v1::Reminder& reminder) {
  return eventId.empty() || eventId == reminder.event_id();
}

}  // namespace

// One member's reminders, told to their devices as of now.
class ReminderBoard::Telling {
 public:
  Telling(ReminderBoard& board, const HouseholdDays& days, std::string memberId, v1::ReminderLog log)
      : board_(board), days_(days), memberId_(std::move(memberId)), log_(std::move(log)) {
    now_ = board.backend_.clock().now().time_since_epoch().count();
    reminders_ = remindersFor(days, memberId_, log_);
    for (const EventDay& day : days.events)
      plannedAt_[day.event.id()] = day.plan.meta().create_time().seconds();
  }

  // When the next one is due; 0: none.
  std::int64_t run(std::vector<Listener*> listeners) {
    listeners_ = std::move(listeners);
    std::vector<const v1::Reminder*> due;
    std::int64_t next = 0;
    for (const v1::Reminder& reminder : reminders_) {
      if (reminder.remind_time().seconds() <= now_) {
        if (isNews(reminder)) due.push_back(&reminder);
      } else if (next == 0) {
        next = reminder.remind_time().seconds();
      }
    }
    for (Listener* listener : listeners_) tellUpcoming(*listener);
    tellMissed(due);
    for (const v1::Reminder* reminder : due) tellDue(*reminder, due);
    for (Listener* listener : listeners_) takeAway(*listener);
    return next;
  }
  // What was told and belongs into the log: ids and moments.
  const std::vector<Told>& noted() const { return noted_; }
  v1::ReminderLog& log() { return log_; }

 private:
  bool isNews(const v1::Reminder& reminder) const {
    const std::int64_t when = reminder.remind_time().seconds();
    const auto planned = plannedAt_.find(reminder.event_id());
    return when >= now_ - kMissedAtMost && planned != plannedAt_.end() && when >= planned->second &&
           !wasTold(log_, reminder) && board_.told_.count({reminder.id(), when}) == 0;
  }

  void tellUpcoming(Listener& listener) {
    v1::WatchRemindersResponse message;
    auto& upcoming = *message.mutable_upcoming();
    for (const v1::Reminder& reminder : reminders_)
      if (reminder.remind_time().seconds() > now_ && concerns(listener.eventId, reminder) &&
          upcoming.reminders_size() < kUpcoming)
        *upcoming.add_reminders() = reminder;
    std::string bytes = message.SerializeAsString();
    if (bytes == listener.upcoming) return;
    listener.upcoming = std::move(bytes);
    listener.tell(std::move(message));
  }

  // While none of the member's devices listened.
  void tellMissed(std::vector<const v1::Reminder*>& due) {
    const bool listened =
        std::any_of(listeners_.begin(), listeners_.end(), [](const Listener* one) { return one->greeted; });
    for (Listener* listener : listeners_) {
      if (std::exchange(listener->greeted, true) || listened) continue;
      v1::WatchRemindersResponse message;
      std::vector<const v1::Reminder*> rest;
      for (const v1::Reminder* reminder : due) {
        // What is due at this very moment is not missed.
        if (reminder->remind_time().seconds() == now_ || !concerns(listener->eventId, *reminder)) {
          rest.push_back(reminder);
          continue;
        }
        *message.mutable_missed()->add_reminders() = *reminder;
        listener->shown.insert(reminder->id());
        note(*reminder);
      }
      due = std::move(rest);
      if (message.missed().reminders_size() > 0) listener->tell(std::move(message));
    }
  }

  void tellDue(const v1::Reminder& reminder, const std::vector<const v1::Reminder*>& due) {
    std::vector<Listener*> told;
    for (Listener* listener : listeners_)
      if (concerns(listener->eventId, reminder)) told.push_back(listener);
    if (told.empty()) return;
    note(reminder);
    if (isStale(reminder, due)) return;
    v1::DueReminder message;
    *message.mutable_reminder() = reminder;
    message.mutable_reminder()->set_quiet(isQuietNow(reminder));
    const auto last = std::max_element(told.begin(), told.end(), [&](const Listener* a, const Listener* b) {
      return board_.usedAt_[a->deviceId] < board_.usedAt_[b->deviceId];
    });
    for (Listener* listener : told) {
      v1::WatchRemindersResponse out;
      *out.mutable_due() = message;
      out.mutable_due()->set_rings(listener == *last && !message.reminder().quiet());
      listener->shown.insert(reminder.id());
      listener->tell(std::move(out));
    }
  }

  // An announcement of what is due as well, or has been for long.
  bool isStale(const v1::Reminder& reminder, const std::vector<const v1::Reminder*>& due) const {
    if (reminder.kind() != v1::REMINDER_KIND_STEP_SOON) return false;
    if (reminder.due_time().seconds() < now_ - kSoonAtMost) return true;
    return std::any_of(due.begin(), due.end(), [&](const v1::Reminder* other) {
      return other->kind() == v1::REMINDER_KIND_STEP_DUE && other->step_id() == reminder.step_id();
    });
  }

  bool isQuietNow(const v1::Reminder& reminder) const {
    for (const v1::Member& member : days_.household.members()) {
      if (member.id() != memberId_) continue;
      for (const EventDay& day : days_.events)
        if (day.event.id() == reminder.event_id())
          return compose::isQuiet(member, absl::FromUnixSeconds(now_),
                                  compose::zoneOf(days_.household, day.event));
    }
    return reminder.quiet();
  }

  // Done, seen to, put off or moved.
  void takeAway(Listener& listener) {
    std::set<std::string> standing;
    for (const v1::Reminder& reminder : reminders_)
      if (reminder.remind_time().seconds() <= now_ && reminder.due_time().seconds() > now_ - kStands)
        standing.insert(reminder.id());
    for (auto id = listener.shown.begin(); id != listener.shown.end();) {
      if (standing.count(*id) > 0) {
        ++id;
        continue;
      }
      v1::WatchRemindersResponse message;
      message.mutable_settled()->set_reminder_id(*id);
      listener.tell(std::move(message));
      id = listener.shown.erase(id);
    }
  }

  void note(const v1::Reminder& reminder) {
    markOf(log_, reminder).mutable_told_time()->set_seconds(now_);
    noted_.push_back({reminder.id(), reminder.remind_time().seconds()});
  }

  ReminderBoard& board_;
  const HouseholdDays& days_;
  const std::string memberId_;
  v1::ReminderLog log_;
  std::int64_t now_ = 0;
  std::vector<v1::Reminder> reminders_;
  std::map<std::string, std::int64_t> plannedAt_;
  std::vector<Listener*> listeners_;
  std::vector<Told> noted_;
};

ReminderBoard::ReminderBoard(Backend& backend) : backend_(backend), work_(std::make_unique<Workers>(1)) {
  timer_ = std::make_unique<Timer>(backend.clock(), [this] { post([this] { refreshDue(); }); });
}

void ReminderBoard::stop() {
  std::unique_ptr<Workers> work;
  {
    const std::lock_guard lock(mutex_);
    work = std::move(work_);
  }
  work.reset();
  // The board's thread, which sets it, has ended.
  timer_.reset();
  households_.clear();
}

void ReminderBoard::post(std::function<void()> task) {
  const std::lock_guard lock(mutex_);
  if (work_ != nullptr) work_->post(std::move(task));
}

int ReminderBoard::open(const Caller& caller, const std::string& eventId, Tell tell) {
  int number = 0;
  {
    const std::lock_guard lock(mutex_);
    number = ++numbers_;
    homes_[number] = caller.householdId;
  }
  post([this, caller, eventId, number, tell = std::move(tell)] {
    Household& household = households_[caller.householdId];
    if (household.wake == nullptr)
      household.wake =
          backend_.hub().subscribe(caller.householdId, [this, id = caller.householdId] { refreshSoon(id); });
    Listener& listener = household.listeners[number];
    listener.memberId = caller.memberId;
    listener.deviceId = caller.deviceId;
    listener.eventId = eventId;
    listener.tell = tell;
    usedAt_[caller.deviceId] = ++uses_;
    refresh(caller.householdId);
  });
  return number;
}

void ReminderBoard::close(int number) {
  std::string home;
  {
    const std::lock_guard lock(mutex_);
    const auto found = homes_.find(number);
    if (found == homes_.end()) return;
    home = found->second;
    homes_.erase(found);
  }
  post([this, home, number] {
    const auto household = households_.find(home);
    if (household == households_.end()) return;
    household->second.listeners.erase(number);
    if (household->second.listeners.empty()) households_.erase(household);
    setTimer();
  });
}

void ReminderBoard::refreshSoon(const std::string& householdId) {
  {
    const std::lock_guard lock(mutex_);
    if (!refreshing_.insert(householdId).second) return;
  }
  post([this, householdId] {
    {
      const std::lock_guard lock(mutex_);
      refreshing_.erase(householdId);
    }
    refresh(householdId);
  });
}

void ReminderBoard::refreshDue() {
  const std::int64_t now = backend_.clock().now().time_since_epoch().count();
  std::vector<std::string> due;
  for (const auto& [id, household] : households_)
    if (household.next != 0 && household.next <= now) due.push_back(id);
  for (const std::string& id : due) refresh(id);
  setTimer();
}

std::set<std::string> ReminderBoard::membersOf(const Household& household) const {
  std::set<std::string> members;
  for (const auto& [number, listener] : household.listeners) members.insert(listener.memberId);
  return members;
}

void ReminderBoard::refresh(const std::string& householdId) {
  const auto found = households_.find(householdId);
  if (found == households_.end()) return;
  Household& household = found->second;
  HouseholdDays days;
  if (const Failure wrong = readDays(backend_, householdId, "", false, days); wrong.failed()) {
    spdlog::warn("reminders cannot be read: {}", wrong.status.ToString());
    return;
  }
  household.next = 0;
  for (const std::string& member : membersOf(household)) {
    v1::ReminderLog log;
    if (readReminderLog(backend_, householdId, member, log).failed()) continue;
    std::vector<Listener*> listeners;
    for (auto& [number, listener] : household.listeners)
      if (listener.memberId == member) listeners.push_back(&listener);
    Telling telling(*this, days, member, std::move(log));
    const std::int64_t next = telling.run(std::move(listeners));
    if (next != 0 && (household.next == 0 || next < household.next)) household.next = next;
    if (telling.noted().empty()) continue;
    const auto written = writeLog(householdId, {}, telling.log());
    if (written.ok()) continue;
    spdlog::warn("told reminders cannot be kept: {}", written.status().ToString());
    told_.insert(telling.noted().begin(), telling.noted().end());
  }
  setTimer();
}

void ReminderBoard::setTimer() {
  std::int64_t next = 0;
  for (const auto& [id, household] : households_)
    if (household.next != 0 && (next == 0 || household.next < next)) next = household.next;
  if (timer_ == nullptr) return;
  if (next == 0)
    timer_->set(std::nullopt);
  else
    timer_->set(Instant(std::chrono::seconds(next)));
}

// Waits for the disk: logs are written by this thread alone, each from what the last one left.
absl::StatusOr<storage::WriteResult> ReminderBoard::writeLog(const std::string& householdId,
                                                             storage::WriteRequest write,
                                                             const v1::ReminderLog& log) {
  v1::ReminderLog kept = log;
  trim(kept);
  write.householdId = householdId;
  write.puts.push_back(putOf(kept));
  write.puts.back().etag.clear();
  std::promise<absl::StatusOr<storage::WriteResult>> written;
  backend_.queue().submit(std::move(write), [&](absl::StatusOr<storage::WriteResult> result) {
    written.set_value(std::move(result));
  });
  return written.get_future().get();
}

void ReminderBoard::change(const Caller& caller, storage::WriteRequest write, Change change,
                           Changed changed) {
  post([this, caller, write = std::move(write), change = std::move(change), changed = std::move(changed)] {
    if (!write.validateOnly) usedAt_[caller.deviceId] = ++uses_;
    v1::ReminderLog log;
    if (const Failure wrong = readReminderLog(backend_, caller.householdId, caller.memberId, log);
        wrong.failed())
      return changed(wrong.status);
    if (!change(log)) {
      storage::WriteResult nothing;
      nothing.revision = log.meta().revision();
      return changed(nothing);
    }
    changed(writeLog(caller.householdId, write, log));
  });
}

}  // namespace suppertide::service
