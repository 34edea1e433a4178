// Planning runs here: a bounded number at once, one at a time for an event, and
// households in turn, so that one with many events does not make others wait for all of them.
// What a person asks for takes the place of a correction that the server began by itself.
#pragma once

#include <atomic>
#include <deque>
#include <functional>
#include <future>
#include <map>
#include <memory>
#include <mutex>
#include <string>
#include <utility>

#include "server/service/workers.h"

namespace suppertide::service {

enum class PlannedFor { kPerson, kCorrection };

// One planning that may be told to end.
struct PlanningRun {
  std::atomic<bool> stop{false};    // keep the best so far
  std::atomic<bool> cancel{false};  // nobody wants it any more

  // Returns when the correction that this one took the place of, if any, writes nothing any more: at
  // once where it has ended, else in the milliseconds it needs to see that it is cancelled. Not for gRPC
  // threads.
  void waitForEarlier() {
    if (earlier.valid()) earlier.wait();
  }

  std::string householdId;
  std::string eventId;
  PlannedFor plannedFor = PlannedFor::kPerson;
  std::promise<void> over;
  std::future<void> earlier;
};

class PlanningPool {
 public:
  explicit PlanningPool(int threads) : workers_(threads) {}
  ~PlanningPool() { stopAll(); }

  // The new run of an event, or null when one is going on already; a correction that is going on is
  // cancelled for a person's planning.
  std::shared_ptr<PlanningRun> begin(const std::string& householdId, const std::string& eventId,
                                     PlannedFor plannedFor = PlannedFor::kPerson);
  // Once for each run, after its last write.
  void end(PlanningRun& run);
  // Told after an end() that leaves the event unplanned, on its thread. Set once, before the first begin().
  using Ended = std::function<void(const std::string& householdId, const std::string& eventId)>;
  void setEnded(Ended ended) { ended_ = std::move(ended); }
  // Whether a person's was running.
  bool stop(const std::string& householdId, const std::string& eventId);
  // Cancels what runs and what waits.
  void stopAll();

  // Plannings that run or wait.
  std::size_t size();

  // Runs `job` when its household's turn comes and a thread is free.
  void post(const std::string& householdId, std::function<void()> job);

 private:
  using Key = std::pair<std::string, std::string>;
  void runNext();

  Ended ended_;
  std::mutex mutex_;
  std::map<Key, std::shared_ptr<PlanningRun>> running_;               // guarded by mutex_
  std::map<std::string, std::deque<std::function<void()>>> waiting_;  // guarded by mutex_; none empty
  std::deque<std::string> turns_;  // guarded by mutex_; the keys of waiting_
  Workers workers_;                // last: its threads end before the rest goes
};

}  // namespace suppertide::service
