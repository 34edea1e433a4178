// What one step's placement costs in the lower tiers, as costOf counts it.
#pragma once

#include <cstdint>

#include "server/planning/model/schedule.h"

namespace suppertide::planning {

// Tier 3: the mode, and minutes off its best length.
std::int64_t qualityCost(const Mode& mode, Minute start, Minute end);
// Tier 4: the cook asked (`optionCost`) and minutes in the cook's unsocial hours.
std::int64_t cookCost(const Problem& problem, const Mode& mode, int cook, int optionCost, Minute start,
                      Minute end);
// Tier 3: ready at `ready` for a serving at `serve`.
std::int64_t waitCost(const Dish& dish, Minute ready);
// Attention-weighted minutes of work, rounded down.
std::int64_t workMinutes(const Mode& mode, Minute start, Minute end);

}  // namespace suppertide::planning
