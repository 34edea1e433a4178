// A Problem as data for the MiniZinc model of plan_bench (minizinc/dinner.mzn).
#pragma once

#include <string>

#include "absl/status/statusor.h"
#include "server/planning/model/problem.h"

namespace suppertide::planning {

// The text of a `.dzn` file, in slots of `grid` minutes; what has an index
// counts from 1 there, in the order of the Problem. The Problem is one that
// peersKnow() (peers.h). Unimplemented names two steps that may stand together
// in an oven in more ways than the model can say.
absl::StatusOr<std::string> minizincData(const Problem& problem, Minute grid);

}  // namespace suppertide::planning
