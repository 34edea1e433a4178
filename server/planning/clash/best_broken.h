// The best plan when the wishes cannot all be met, and what it breaks.
#pragma once

#include <vector>

#include "absl/status/statusor.h"
#include "server/planning/solver/solver.h"

namespace suppertide::planning {

struct BrokenWish {
  int dish = 0;
  bool unserved = false;
  Minute late = 0;  // when served
};

// What `schedule` breaks, by dish; empty when every dish is served in time.
std::vector<BrokenWish> brokenBy(const Problem& problem, const Schedule& schedule);

// Searches until no plan can leave less unserved or be less late, then leaves the
// lower tiers as they are. As makePlan() otherwise.
absl::StatusOr<Outcome> bestBroken(const Problem& problem, const SearchOptions& options,
                                   Monitor* monitor = nullptr);

}  // namespace suppertide::planning
