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

// A plan being cooked. Dishes that were added since are unserved in it. Of a dish that it leaves out the
// steps that had begun lie where they were, so that it can be taken up again.
struct Running {
  Schedule plan;
  std::vector<StepState> states;  // as Problem::steps
  std::vector<int> addedDishes;
  Minute now = 0;
  // By gap: whether its `most` says how good the dish gets, not whether it is safe to eat. Empty: of none
  // but doughs and what waits in the fridge, whose limits of safety are clocks.
  std::vector<bool> patient;
};

struct Remaining {
  Problem problem;         // what waits begins at now or where it was due just now; what began is pinned
  Schedule expected;       // the running plan with true times and what they make of steps under way
  std::vector<bool> past;  // by step: finished, or started and going on
};

// `problem` as it is now, with a cook's, an oven's or a dish's change made. Nobody cooks to the minute: work
// that is over less than kMoveFrom later than planned keeps nothing waiting, and what was to begin less than
// that ago begins now.
// Steps that wait are Announced where the plan has them, the nearer the heavier.
// A step under way whose oven closes, or whose cook leaves, has to begin again.
// Minutes are rounded up to `grid` where the planner may choose.
Remaining whatRemains(const Problem& problem, const Running& running, Minute grid);

// How much moving a step weighs that begins in `minutes`.
int moveWeight(Minute minutes);

}  // namespace suppertide::planning
