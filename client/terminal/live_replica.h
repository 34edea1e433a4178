// A live replica for a command that waits for changes, and the view of one event in it.
#pragma once

#include <condition_variable>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <string>

#include "absl/status/statusor.h"
#include "client/link/credentials.h"
#include "client/link/link.h"
#include "client/terminal/environment.h"
#include "client/terminal/plan_view.h"

namespace suppertide::terminal {

link::LinkOptions linkOptionsOf(const link::KnownServer& server);

class LiveReplica : public link::LinkListener {
 public:
  explicit LiveReplica(const link::KnownServer& server);
  ~LiveReplica() override;

  // Waits until `wanted` is true of the replica or the time is over; null then. PermissionDenied when the
  // server refused the device.
  using Wanted = std::function<bool(const link::Replica&)>;
  absl::StatusOr<std::shared_ptr<const link::Replica>> waitFor(const Wanted& wanted,
                                                               std::chrono::milliseconds most);
  // Whether the connection stands.
  bool isLive() const;

 private:
  void linkStateChanged(link::LinkState state, const std::string& why) override;
  void replicaChanged(std::shared_ptr<const link::Replica> replica, const std::string& memberId) override;

  mutable std::mutex mutex_;
  std::condition_variable changed_;
  std::shared_ptr<const link::Replica> replica_;          // guarded by mutex_
  link::LinkState state_ = link::LinkState::kConnecting;  // guarded by mutex_
  std::string why_;                                       // guarded by mutex_
  std::unique_ptr<link::Link> link_;                      // last: it calls until it is gone
};

// The event asked for, or the only one with a plan. InvalidArgument, in words, when there is no such.
absl::StatusOr<std::string> plannedEvent(const link::Replica& replica, const std::string& eventId);

PlanView viewOf(const link::Replica& replica, const std::string& eventId, const Environment& environment);

}  // namespace suppertide::terminal
