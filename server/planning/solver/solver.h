// The engine: a Problem in, the best schedule it can find or prove out.
//
// A constructive search gives the first answer within milliseconds; a SAT
// search with lazily added, explained resource clauses improves it tier by tier
// until each tier is proven or the work limit is reached. It reads no clock and
// makes no threads: equal problems, seeds and limits give equal plans.
#pragma once

#include <cstdint>
#include <vector>

#include "absl/status/statusor.h"
#include "server/planning/model/schedule.h"

namespace suppertide::planning {

struct SearchOptions {
  std::uint64_t seed = 1;
  std::int64_t workLimit = 0;  // solver conflicts in all; 0 for no limit but Monitor::stop
  Minute grid = 5;             // starts and ends are multiples of this; 1 for minute-exact problems
  // Before the proof begins: orders in which dishes are placed until all have room, and rounds
  // of taking some out and putting them back. Few when only the proof's answer is wanted.
  int placingOrders = 30;
  int improvingRounds = 20;
  bool easy = false;       // no long proof is expected: the solver decides without weighing
  bool nameClash = false;  // find which dishes cannot all be served, then leave it at that
};

// What the engine has so far. `bound[t] <= cost[t]` holds for the first tier
// that is not yet proven; later tiers have bound 0.
struct Outcome {
  Schedule schedule;
  TierCosts cost{};
  TierCosts bound{};
  int provenTiers = 0;        // kTierCount: optimal
  bool stopped = false;       // by the work limit or the monitor
  std::vector<int> clashing;  // with nameClash: dishes that cannot all be served, few; empty when all can
  std::int64_t work = 0;
  bool optimal() const { return provenTiers == kTierCount; }
};

// Told of progress, asked whether to go on. Called on the searching thread.
class Monitor {
 public:
  virtual ~Monitor() = default;
  virtual void improved(const Outcome& /*outcome*/) {}  // a strictly better schedule, or a better bound
  virtual bool stop() { return false; }                 // asked at least every few milliseconds of search
};

// Plans `problem`. Always has a schedule when OK: at worst, dishes are unserved.
// InvalidArgument when check() refuses; FailedPrecondition when pins and steps
// outside any dish contradict each other, with the steps named.
absl::StatusOr<Outcome> makePlan(const Problem& problem, const SearchOptions& options,
                                 Monitor* monitor = nullptr);

}  // namespace suppertide::planning
