// Reminders as the server tells them, for as long as the program runs.
//
// Comes back by itself after a cut; what came due meanwhile is then told among the missed ones. Losing the
// connection is a state, as with Link. No Qt here.
#pragma once

#include <memory>
#include <string>

#include "client/link/link.h"
#include "suppertide/v1/reminder_service.pb.h"

namespace suppertide::link {

class ReminderListener {
 public:
  virtual ~ReminderListener() = default;
  virtual void reminderTold(const v1::WatchRemindersResponse& message) = 0;
  // `why` is empty when live. kRefused does not retry.
  virtual void reminderStateChanged(LinkState /*state*/, const std::string& /*why*/) {}
};

class ReminderLink {
 public:
  // `eventId` empty: of all events. `listener` outlives the link.
  ReminderLink(LinkOptions options, std::string eventId, ReminderListener& listener);
  ~ReminderLink();  // stops and waits; no callback runs afterwards

  void start();
  void stop();

 private:
  struct State;
  std::shared_ptr<State> state_;
};

}  // namespace suppertide::link
