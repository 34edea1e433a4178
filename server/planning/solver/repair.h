// A plan that no longer fits, mended: what still fits stays, the rest is put back beside it.
#pragma once

#include <optional>

#include "server/planning/solver/solver.h"

namespace suppertide::planning {

struct RepairOptions {
  SearchOptions search;
  // Rounds of taking dishes out and putting them back, all tiers counting; half as many again
  // for each dish that did not fit.
  int rounds = 8;
};

// Mends `old`, which need not keep any rule: dishes that keep every rule, also
// beside each other, stay as they lie; the others are put back at least cost
// (steps that were Announced cost by how far they move), then the whole is
// improved. Every rule is kept; dishes without a place are unserved. Nothing is
// proven: bounds are 0. nullopt when the monitor stopped it before it had a plan.
// `problem` passed check(). Equal input and no stop: equal plan.
std::optional<Outcome> repairPlan(const Problem& problem, const Schedule& old, const RepairOptions& options,
                                  Monitor* monitor = nullptr);

}  // namespace suppertide::planning
