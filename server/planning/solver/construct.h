// The first plan, dish by dish, and its improvement by taking dishes out and putting them back.
#pragma once

#include <cstdint>
#include <functional>
#include <random>

#include "server/planning/solver/grid_model.h"

namespace suppertide::planning {

// A plan that keeps every rule; dishes that found no place are unserved. Tries
// other orders of the dishes while some are, `orders` in all. `better`
// is called with each plan that is better than those before.
Schedule firstPlan(const GridModel& model, int orders, std::mt19937& random,
                   const std::function<void(const Schedule&)>& better, const std::function<bool()>& stop);

struct ImproveOptions {
  int rounds = 0;
  // While the best plan serves all but late, go on from any that is as timely, however it ranks below that.
  bool wander = false;
};

// Takes out a few dishes and puts each back at its best, keeping what is not worse (or wandering). Returns
// the best plan found; `start` must keep every rule. `better` is called with each strictly better one.
Schedule improvePlan(const GridModel& model, const Schedule& start, const ImproveOptions& options,
                     std::mt19937& random, const std::function<void(const Schedule&)>& better,
                     const std::function<bool()>& stop);

}  // namespace suppertide::planning
