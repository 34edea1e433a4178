// What it would take to have a step earlier or later, as data.
#pragma once

#include <vector>

#include "server/planning/explain/explain.h"

namespace suppertide::planning {

struct Shift {
  // What the step would run into there if all others stayed; empty: nothing.
  std::vector<Reason> obstacles;
  // Whether a plan was found that has it there, keeps every rule and leaves no
  // further dish unserved. The rest holds only then.
  bool possible = false;
  Schedule schedule;  // moves as little as was found
  TierCosts before{};
  TierCosts after{};
};

// `schedule` keeps the rules of `problem`, whose starts lie on `grid`. A few
// milliseconds to some tens: local search around the schedule, no proof that a
// shift is impossible.
Shift shiftStep(const Problem& problem, const Schedule& schedule, int step, Minute minutes, Minute grid);

}  // namespace suppertide::planning
