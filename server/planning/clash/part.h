// A part of a dinner as a problem of its own.
#pragma once

#include <vector>

#include "server/planning/model/problem.h"

namespace suppertide::planning {

// Only these dishes (indexes, ascending) with their steps and what concerns
// them; ovens, cooks and resources are all still there, under the same indexes.
Problem partOf(const Problem& problem, const std::vector<int>& dishes);

// The same rules with nothing to like better: no costs below lateness, and no dish late.
void forgetCosts(Problem& problem);

}  // namespace suppertide::planning
