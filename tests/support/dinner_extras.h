// What a dinner may have beyond its plain rules, added to random ones.
#pragma once

#include <cstdint>

#include "server/planning/model/problem.h"

namespace suppertide::planning {

struct DinnerExtras {
  bool clocks = false;
  bool separations = false;
  bool usedUp = false;
  bool announced = false;
  bool air = false;       // in gaps and between tasks, interruptions
  bool idleHeat = false;  // an empty oven that is hot costs
  bool spreads = false;   // and unknowns; of no account to a plan's costs

  static constexpr DinnerExtras all() { return {true, true, true, true, true, true, true}; }
};

// Adds the extras by dice of their own, so that the dinner is otherwise the
// same; every minute is a multiple of the grid. Passes check().
void addExtras(Problem& problem, std::uint64_t seed, DinnerExtras extras);

}  // namespace suppertide::planning
