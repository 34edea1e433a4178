// Tier kCalm: interruptions, air between tasks, air after what is uncertain.
//
// A task is a step that takes at least half of its cook's attention. What counts
// for a task is the worst of the other dishes' tasks at the same cook: one that
// ends less than the wanted air before it, or one that it begins in the middle of.
#pragma once

#include <cstdint>
#include <vector>

#include "server/planning/model/schedule.h"

namespace suppertide::planning {

inline constexpr int kTaskAttention = 50;

// What beginning `task` costs because of `before`, both tasks of one cook.
std::int64_t airCost(const Problem& problem, const Placement& before, const Placement& task);
// The minutes short of the air wanted in `gap` when its edges are `distance` apart.
std::int64_t gapAirCost(const Gap& gap, Minute distance);
// By step: its task's cost, and what the gaps that lead to it lack. 0 in unserved
// dishes. Quadratic in the tasks of one cook.
std::vector<std::int64_t> calmCosts(const Problem& problem, const Schedule& schedule);

}  // namespace suppertide::planning
