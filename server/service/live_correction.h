// Running plans follow what is reported, by themselves.
//
// A report is stored and answered first; then a thread of its own corrects the plan and stores it, or a
// proposal where the event says to ask first, and watchers hear of it as of any write. One at a time for
// an event, and never beside its planning: it gives way to what a person asks for and follows when that
// has ended. What was told meanwhile is taken in together. A correction is cut after kQuick; where that
// leaves a dish unserved or late, a second thread searches on for up to kThorough, until something new is
// told.
#pragma once

#include <chrono>
#include <condition_variable>
#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "absl/status/status.h"
#include "server/service/planning_pool.h"
#include "server/service/workers.h"
#include "server/storage/store.h"

namespace suppertide::service {

class Backend;
struct RunningEvent;

class LiveCorrection {
 public:
  static constexpr std::chrono::milliseconds kQuick{200};
  static constexpr std::chrono::seconds kThorough{5};

  explicit LiveCorrection(Backend& backend)
      : backend_(backend), quick_(std::make_unique<Workers>(1)), thorough_(std::make_unique<Workers>(1)) {}
  ~LiveCorrection() { stop(); }

  // Something of the event was reported, or another plan stored. Never blocks.
  void reported(const std::string& householdId, const std::string& eventId);
  // The event is not being planned any more.
  void planningEnded(const std::string& householdId, const std::string& eventId);
  // Waits until what was reported so far is corrected, or needs no correction; more may be searched, and what
  // wishes clash.
  void waitUntilCorrected();
  // Waits until no correction of what was reported so far is to begin or runs.
  void waitUntilDone();
  // No correction begins any more; waits for the one that runs.
  void stop();

 private:
  using Key = std::pair<std::string, std::string>;
  struct State {
    bool queued = false;                 // a quick correction is to begin
    bool waiting = false;                // for the event's planning to end
    std::shared_ptr<PlanningRun> going;  // a thorough one
  };
  // How long it may search, and whether a quick one is stored already; or no plan is searched, but the wishes
  // that clash in the one that is stored.
  enum class Search { kQuick, kBetter, kInstead, kClashes };
  void post(const Key& key, Search search);  // mutex_ is held
  void correct(const Key& key, Search search);
  std::shared_ptr<PlanningRun> begin(const Key& key, Search search);
  void end(const Key& key, PlanningRun& run);
  // What search is to follow, if any.
  std::optional<Search> tryCorrect(const Key& key, Search search, PlanningRun& run);
  void tellClashes(const Key& key, const RunningEvent& event, PlanningRun& run);
  absl::Status write(const Key& key, std::vector<storage::Put> puts);

  Backend& backend_;
  std::mutex mutex_;
  std::condition_variable done_;
  int open_ = 0;                    // guarded by mutex_: corrections posted and not over
  int openFirst_ = 0;               // of these, that are to make the first corrected plan; guarded by mutex_
  std::map<Key, State> states_;     // guarded by mutex_
  std::unique_ptr<Workers> quick_;  // guarded by mutex_; null once stopped
  std::unique_ptr<Workers> thorough_;  // guarded by mutex_; likewise
};

}  // namespace suppertide::service
