// The slow twin of the engine: tries every schedule on the grid.
//
// Knows nothing of the rules: it asks the auditor whether a schedule may be and
// costOf() what it costs. For tiny problems only.
#pragma once

#include <cstdint>
#include <optional>

#include "server/planning/model/schedule.h"

namespace suppertide::planning {

struct BestSchedule {
  Schedule schedule;
  TierCosts cost{};
};

// The cheapest schedule without a breach, starts and ends multiples of `grid`;
// leaving every dish unserved is one. Nothing when more than `auditLimit` audits were needed.
std::optional<BestSchedule> bestOfEverySchedule(const Problem& problem, Minute grid, std::int64_t auditLimit);

}  // namespace suppertide::planning
