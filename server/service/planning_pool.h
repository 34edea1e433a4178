// Planning runs here: a bounded number at once, one at a time for an event.
#pragma once

#include <atomic>
#include <functional>
#include <map>
#include <memory>
#include <mutex>
#include <string>

#include "server/service/workers.h"

namespace suppertide::service {

// One planning that may be told to end.
struct PlanningRun {
  std::atomic<bool> stop{false};    // keep the best so far
  std::atomic<bool> cancel{false};  // nobody wants it any more
};

class PlanningPool {
 public:
  explicit PlanningPool(int threads) : workers_(threads) {}
  ~PlanningPool() { stopAll(); }

  // The new run of an event, or null when one is going on already.
  std::shared_ptr<PlanningRun> begin(const std::string& householdId, const std::string& eventId);
  void end(const std::string& householdId, const std::string& eventId);
  // Whether one was running.
  bool stop(const std::string& householdId, const std::string& eventId);
  // Cancels what runs and what waits.
  void stopAll();

  void post(std::function<void()> job) { workers_.post(std::move(job)); }

 private:
  using Key = std::pair<std::string, std::string>;
  std::mutex mutex_;
  std::map<Key, std::shared_ptr<PlanningRun>> running_;  // guarded by mutex_
  Workers workers_;                                      // last: its threads end before the rest goes
};

}  // namespace suppertide::service
