// The table of plan_bench when peers run beside the engine.
#pragma once

#include <string>
#include <vector>

#include "tests/bench/plan_bench/sets.h"
#include "tests/bench/plan_bench/table.h"

namespace suppertide::planning {

void printPeerHead();

// A row for the engine, whose runs are the first, and one for each peer: medians,
// and the peer's times as multiples of the engine's (geometric means; what never
// came counts as twice the limit, and no time as less than a millisecond). Only
// of the dinners in which somebody served every dish.
void printPeerRows(const DinnerSet& set, const std::vector<std::string>& planners,
                   const std::vector<Measured>& dinners, double limitSeconds);

}  // namespace suppertide::planning
