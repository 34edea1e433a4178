// Tier kPeople: asking a cook, unsocial hours, and shares of the work.
#pragma once

#include <cstdint>
#include <vector>

#include "server/planning/model/problem.h"

namespace suppertide::planning {

// The cook asked (`optionCost`) and minutes in the cook's unsocial hours; nothing without a cook.
std::int64_t cookCost(const Problem& problem, const Mode& mode, int cook, int optionCost, Minute start,
                      Minute end);
// Attention-weighted minutes of work, rounded down.
std::int64_t workMinutes(const Mode& mode, Minute start, Minute end);
// What the started blocks above each cook's fair share of all `work` cost, by cook.
std::vector<std::int64_t> overShares(const Problem& problem, const std::vector<std::int64_t>& work);

}  // namespace suppertide::planning
