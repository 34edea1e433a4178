// Buys robustness where it is free: slack where evenings run late.
//
// Among plans that cost no more in any tier, the engine does not care which it
// gives. Here steps that late courses wait for are moved earlier, in the plan's
// order, as long as nothing gets dearer and every rule is kept.
#pragma once

#include "server/planning/chance/chances.h"

namespace suppertide::planning {

struct RobustnessOptions {
  EveningOptions evenings = {400, 1, 5, false, {}};  // by which plans are compared; set its courses
  Minute grid = 5;                                   // starts move by multiples of this
  int trials = 300;                                  // plans whose evenings are simulated, at most
};

// `schedule`, which keeps all rules, or a better one: the least chance of a
// course is no smaller, nor the sum of the chances by more than a hair, no tier
// costs more, modes, cooks and what is served are the same, and audit() finds
// nothing. Deterministic; `trials` simulations and, for each that is better, an audit.
Schedule buyRobustness(const Problem& problem, const Schedule& schedule, const RobustnessOptions& options);

}  // namespace suppertide::planning
