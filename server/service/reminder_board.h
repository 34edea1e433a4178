// Tells reminders, each once and at its time, to the devices that listen.
//
// All of it happens on one thread, in turn: devices come and go, plans change, a moment comes. A timer
// stands at the next moment anybody listens for; nothing is looked at in between. What was told is kept
// in the member's log, so that no device and no restart tells it again.
#pragma once

#include <functional>
#include <map>
#include <memory>
#include <mutex>
#include <set>
#include <string>
#include <vector>

#include "absl/status/statusor.h"
#include "server/base/timer.h"
#include "server/service/event_days.h"
#include "server/service/workers.h"
#include "server/storage/store.h"
#include "server/sync/hub.h"
#include "suppertide/v1/reminder_service.pb.h"

namespace suppertide::service {

class ReminderBoard {
 public:
  using Tell = std::function<void(v1::WatchRemindersResponse)>;
  // Changes a log; its answer is whether there is anything to write.
  using Change = std::function<bool(v1::ReminderLog&)>;
  using Changed = std::function<void(absl::StatusOr<storage::WriteResult>)>;

  explicit ReminderBoard(Backend& backend);
  ~ReminderBoard() { stop(); }

  // `tell` is called on the board's thread and must not block. A number for close().
  int open(const Caller& caller, const std::string& eventId, Tell tell);
  void close(int number);
  // Writes what `change` makes of the caller's log, under the request's id. The device counts as used.
  void change(const Caller& caller, storage::WriteRequest write, Change change, Changed changed);
  void stop();

 private:
  struct Listener {
    std::string memberId;
    std::string deviceId;
    std::string eventId;
    Tell tell;
    bool greeted = false;
    std::set<std::string> shown;  // ids told to it and not taken away
    std::string upcoming;         // as last told
  };
  struct Household {
    std::unique_ptr<sync::Hub::Subscription> wake;
    std::map<int, Listener> listeners;
    std::int64_t next = 0;  // when somebody is to be told next; 0: nothing stands out
  };
  using Told = std::pair<std::string, std::int64_t>;  // id and moment
  class Telling;

  void post(std::function<void()> task);
  void refreshSoon(const std::string& householdId);
  void refresh(const std::string& householdId);
  void refreshDue();
  void setTimer();
  std::set<std::string> membersOf(const Household& household) const;
  absl::StatusOr<storage::WriteResult> writeLog(const std::string& householdId, storage::WriteRequest write,
                                                const v1::ReminderLog& log);

  Backend& backend_;
  // The rest is the board's own thread's, but for what is guarded.
  std::map<std::string, Household> households_;
  std::map<std::string, std::int64_t> usedAt_;  // by device: the later it was used, the higher
  std::int64_t uses_ = 0;
  std::set<Told> told_;  // what a log could not be written of

  std::mutex mutex_;
  int numbers_ = 0;                   // guarded by mutex_
  std::map<int, std::string> homes_;  // guarded by mutex_: the household of each number
  std::set<std::string> refreshing_;  // guarded by mutex_: households with a refresh to come
  std::unique_ptr<Workers> work_;     // guarded by mutex_; null once stopped
  std::unique_ptr<Timer> timer_;
};

}  // namespace suppertide::service
