#include "suppertide/v1/reminder_service.grpc.pb.h"

#include <algorithm>
#include <deque>
#include <set>

#include "server/service/answer_stream.h"
#include "server/service/pages.h"
#include "server/service/reminder_board.h"
#include "server/service/services.h"

namespace suppertide::service {
namespace {

constexpr int kMostAtOnce = 100;
constexpr std::int64_t kUsualSnooze = 5 * 60;
constexpr std::int64_t kMostSnooze = 12 * 3600;

// One device that listens.
class Listening : public AnswerStream<v1::WatchRemindersResponse> {
 public:
  Listening(Backend& backend, grpc::CallbackServerContext& context, const v1::WatchRemindersRequest& asked)
      : AnswerStream(backend, context, "ReminderService/WatchReminders"), asked_(asked) {}

  void OnWriteDone(bool ok) override {
    if (!ok) return end(grpc::Status::CANCELLED);
    const std::lock_guard lock(mutex_);
    writing_ = false;
    sendNext();
  }

 private:
  Failure open(const grpc::CallbackServerContext& context) override {
    if (const Failure refused =
            backend_.admit(context, "ReminderService/WatchReminders", asked_.household_id(), caller_);
        refused.failed())
      return refused;
    return enlist(caller_);
  }

  void opened() override {
    const auto weak = weak_from_this();
    const int number =
        backend_.reminders().open(caller_, asked_.event_id(), [weak](v1::WatchRemindersResponse message) {
          if (const auto self = std::static_pointer_cast<Listening>(weak.lock()))
            self->offer(std::move(message));
        });
    const std::lock_guard lock(mutex_);
    if (gone_) backend_.reminders().close(number);
    number_ = number;
  }

  void closed() override {
    const std::lock_guard lock(mutex_);
    gone_ = true;
    if (number_ != 0) backend_.reminders().close(number_);
  }

  void offer(v1::WatchRemindersResponse message) {
    const std::lock_guard lock(mutex_);
    // Only the last of these counts, so that a slow reader does not collect them.
    if (message.has_upcoming())
      waiting_.erase(std::remove_if(waiting_.begin(), waiting_.end(),
                                    [](const v1::WatchRemindersResponse& m) { return m.has_upcoming(); }),
                     waiting_.end());
    waiting_.push_back(std::move(message));
    sendNext();
  }

  // mutex_ is held.
  void sendNext() {
    if (writing_ || waiting_.empty()) return;
    writing_ = send(std::move(waiting_.front()));
    waiting_.pop_front();
  }

  const v1::WatchRemindersRequest asked_;
  Caller caller_;
  int number_ = 0;                                  // guarded by mutex_: among the board's listeners
  bool gone_ = false;                               // guarded by mutex_
  std::deque<v1::WatchRemindersResponse> waiting_;  // guarded by mutex_
  bool writing_ = false;                            // guarded by mutex_
};

class ReminderServiceCalls final : public v1::ReminderService::CallbackService {
 public:
  explicit ReminderServiceCalls(Backend& backend) : backend_(backend) {}

  grpc::ServerWriteReactor<v1::WatchRemindersResponse>* WatchReminders(
      grpc::CallbackServerContext* context, const v1::WatchRemindersRequest* request) override {
    const auto call = std::make_shared<Listening>(backend_, *context, *request);
    call->start();
    return call.get();
  }

  grpc::ServerUnaryReactor* ListReminders(grpc::CallbackServerContext* context,
                                          const v1::ListRemindersRequest* request,
                                          v1::ListRemindersResponse* answer) override {
    return serve(backend_, context, request, "ReminderService/ListReminders", request->household_id(),
                 [this, answer](const Caller& caller, const v1::ListRemindersRequest& asked,
                                const Finish& finish) { finish(list(caller, asked, *answer)); });
  }

  grpc::ServerUnaryReactor* SettleReminders(grpc::CallbackServerContext* context,
                                            const v1::SettleRemindersRequest* request,
                                            v1::SettleRemindersResponse* answer) override {
    return serve(backend_, context, request, "ReminderService/SettleReminders", request->household_id(),
                 [this, answer](const Caller& caller, const v1::SettleRemindersRequest& asked,
                                const Finish& finish) { settle(caller, asked, answer, finish); });
  }

  grpc::ServerUnaryReactor* SnoozeReminder(grpc::CallbackServerContext* context,
                                           const v1::SnoozeReminderRequest* request,
                                           v1::SnoozeReminderResponse* answer) override {
    return serve(backend_, context, request, "ReminderService/SnoozeReminder", request->household_id(),
                 [this, answer](const Caller& caller, const v1::SnoozeReminderRequest& asked,
                                const Finish& finish) { snooze(caller, asked, answer, finish); });
  }

 private:
  std::int64_t now() const { return backend_.clock().now().time_since_epoch().count(); }

  // Of a member, with what stands in their log.
  Failure standing(const Caller& caller, const std::string& memberId, const std::string& eventId,
                   std::vector<v1::Reminder>& reminders) {
    HouseholdDays days;
    if (const Failure wrong = readDays(backend_, caller.householdId, eventId, false, days); wrong.failed())
      return wrong;
    if (memberOf(days.household, memberId) == nullptr)
      return invalidField("memberId", memberId, "must be a member of the household");
    v1::ReminderLog log;
    if (const Failure wrong = readReminderLog(backend_, caller.householdId, memberId, log); wrong.failed())
      return wrong;
    reminders = remindersFor(days, memberId, log);
    return {};
  }

  Failure list(const Caller& caller, const v1::ListRemindersRequest& asked,
               v1::ListRemindersResponse& answer) {
    std::vector<v1::Reminder> reminders;
    const std::string& member = asked.member_id().empty() ? caller.memberId : asked.member_id();
    if (const Failure wrong = standing(caller, member, asked.event_id(), reminders); wrong.failed())
      return wrong;
    const std::int64_t from = asked.has_from_time() ? asked.from_time().seconds() : now();
    std::erase_if(reminders, [&](const v1::Reminder& one) { return one.remind_time().seconds() < from; });
    const auto placeOf = [](const v1::Reminder& one) {
      return absl::StrCat(absl::Dec(one.remind_time().seconds(), absl::kZeroPad12), "/", one.id());
    };
    std::sort(reminders.begin(), reminders.end(),
              [&](const v1::Reminder& a, const v1::Reminder& b) { return placeOf(a) < placeOf(b); });
    return tellPage(asked, answer, reminders, placeOf,
                    [&](const v1::Reminder& one) { *answer.add_reminders() = one; });
  }

  void settle(const Caller& caller, const v1::SettleRemindersRequest& asked,
              v1::SettleRemindersResponse* answer, const Finish& finish) {
    if (const Failure wrong = checkRequestId(asked.request_id()); wrong.failed()) return finish(wrong);
    if (asked.reminder_ids().empty() || asked.reminder_ids_size() > kMostAtOnce)
      return finish(invalidField("reminderIds", absl::StrCat(asked.reminder_ids_size()), "must be 1 to 100"));
    std::vector<v1::Reminder> reminders;
    if (const Failure wrong = standing(caller, caller.memberId, "", reminders); wrong.failed())
      return finish(wrong);
    const std::set<std::string> wanted(asked.reminder_ids().begin(), asked.reminder_ids().end());
    reminders.erase(std::remove_if(reminders.begin(), reminders.end(),
                                   [&](const v1::Reminder& r) { return wanted.count(r.id()) == 0; }),
                    reminders.end());
    mark(
        caller, "SettleReminders", asked, reminders,
        [when = now()](v1::ReminderMark& mark) { mark.mutable_settled_time()->set_seconds(when); },
        [answer](std::int64_t revision) { answer->set_revision(revision); }, finish);
  }

  void snooze(const Caller& caller, const v1::SnoozeReminderRequest& asked,
              v1::SnoozeReminderResponse* answer, const Finish& finish) {
    if (const Failure wrong = checkRequestId(asked.request_id()); wrong.failed()) return finish(wrong);
    const std::int64_t by = asked.has_snooze_duration() ? asked.snooze_duration().seconds() : kUsualSnooze;
    if (by < 60 || by > kMostSnooze || by % 60 != 0 || asked.snooze_duration().nanos() != 0)
      return finish(invalidField("snoozeDuration", absl::StrCat(by, " s"),
                                 "must be whole minutes, 1 minute to 12 hours"));
    std::vector<v1::Reminder> reminders;
    if (const Failure wrong = standing(caller, caller.memberId, "", reminders); wrong.failed())
      return finish(wrong);
    const auto found = std::find_if(reminders.begin(), reminders.end(),
                                    [&](const v1::Reminder& r) { return r.id() == asked.reminder_id(); });
    if (found == reminders.end())
      return finish(
          failure(absl::NotFoundError("there is no such reminder, or it is over"), "NO_SUCH_REMINDER"));
    const std::int64_t until = now() + by;
    answer->mutable_remind_time()->set_seconds(until);
    mark(
        caller, "SnoozeReminder", asked, {*found},
        [until](v1::ReminderMark& mark) { mark.mutable_snoozed_until_time()->set_seconds(until); },
        [answer](std::int64_t revision) { answer->set_revision(revision); }, finish);
  }

  // Marks these in the caller's log.
  template <typename Request>
  void mark(const Caller& caller, const char* method, const Request& asked,
            std::vector<v1::Reminder> reminders, std::function<void(v1::ReminderMark&)> set,
            std::function<void(std::int64_t)> answered, const Finish& finish) {
    const auto change = [reminders = std::move(reminders), set = std::move(set)](v1::ReminderLog& log) {
      for (const v1::Reminder& reminder : reminders) {
        const auto known =
            std::find_if(log.mutable_marks()->begin(), log.mutable_marks()->end(),
                         [&](const v1::ReminderMark& m) { return m.reminder_id() == reminder.id(); });
        v1::ReminderMark& one = known != log.mutable_marks()->end() ? *known : *log.add_marks();
        one.set_reminder_id(reminder.id());
        one.set_event_id(reminder.event_id());
        set(one);
      }
      return !reminders.empty();
    };
    backend_.reminders().change(
        caller,
        writeRequest(caller, absl::StrCat("ReminderService/", method), asked.request_id(), asked,
                     asked.validate_only()),
        change, [answered = std::move(answered), finish](const absl::StatusOr<storage::WriteResult>& result) {
          if (!result.ok()) return finish(fromStorage(result.status()));
          answered(result->revision);
          finish({});
        });
  }

  Backend& backend_;
};

}  // namespace

std::unique_ptr<grpc::Service> makeReminderService(Backend& backend) {
  return std::make_unique<ReminderServiceCalls>(backend);
}

}  // namespace suppertide::service
