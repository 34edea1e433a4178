// What has happened of a running plan, and the problem that is left because of it.
//
// The past cannot break a rule any more: what is over uses nothing, and where a
// limit was overrun it is widened just so far that going on at once is allowed.
#pragma once

#include <vector>

#include "server/planning/model/schedule.h"

namespace suppertide::planning {

// Where one step stands, by true times.
struct StepState {
  enum class Kind { kWaiting, kStarted, kFinished, kSkipped };
  Kind kind = Kind::kWaiting;
  Minute start = 0;      // started and finished
  Minute end = 0;        // finished
  int cook = -1;         // who did; -1: as planned
  Minute notBefore = 0;  // waiting: put off until then
  Minute longer = 0;     // started: how much longer than its usual length it takes; below 0: shorter
  Minute counted = 0;    // started: the part of `longer` that the running plan has already
};

// A plan being cooked. Dishes that were added since are unserved in it.
struct Running {
  Schedule plan;
  std::vector<StepState> states;  // as Problem::steps
  std::vector<int> addedDishes;
  Minute now = 0;
};

struct Remaining {
  Problem problem;         // nothing that waits begins before now; what began is pinned
  Schedule expected;       // the running plan with true times and what they make of steps under way
  std::vector<bool> past;  // by step: finished, or started and going on
};

// `problem` as it is now, with a cook's, an oven's or a dish's change made.
// Steps that wait are Announced where the plan has them, the nearer the heavier.
// A step under way whose oven closes, or whose cook leaves, has to begin again.
// Minutes are rounded up to `grid` where the planner may choose.
Remaining whatRemains(const Problem& problem, const Running& running, Minute grid);

// How much moving a step weighs that begins in `minutes`.
int moveWeight(Minute minutes);

}  // namespace suppertide::planning
