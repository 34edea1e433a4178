// Tier kOvens: minutes an oven is heated with nothing in it.
//
// A preheated load that enters an empty oven costs the minutes since the oven
// was last in use, but no more than heating up from cold: a longer pause has it
// switched off. So each change of temperature costs at least what it takes.
#pragma once

#include <cstdint>
#include <vector>

#include "server/planning/model/schedule.h"

namespace suppertide::planning {

// By step, of those that enter first. Of two that enter in one minute the one
// with the lower index pays. O(n log n) in the steps.
std::vector<std::int64_t> idleHeatCosts(const Problem& problem, const Schedule& schedule);

}  // namespace suppertide::planning
