// Tier kQuality: modes, minutes off the best length, waiting to be served.
#pragma once

#include <cstdint>

#include "server/planning/model/problem.h"

namespace suppertide::planning {

// The mode chosen and a length off its best.
std::int64_t qualityCost(const Mode& mode, Minute start, Minute end);
// Ready at `ready` for a serving at `serve`; nothing when late.
std::int64_t waitCost(const Dish& dish, Minute ready);

}  // namespace suppertide::planning
