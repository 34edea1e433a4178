// Correcting a running plan without flutter. Pure, as planner.h.
#pragma once

#include <string>
#include <vector>

#include "server/compose/replanner.h"

namespace suppertide::compose {

struct CorrectedPlan {
  v1::Plan plan;  // with moved_steps
  bool nothingMoves = false;
  // Whether a dough is foreseen otherwise, or a course ready or a step under way over at another
  // time, than the plan that runs says; always with moves.
  bool saysMore = false;
  // Moved though about to start: without, a dish would be unserved or later.
  std::vector<std::string> forcedStepIds;
};

// As replanEvent(), but a step that begins within kAboutToStart stays, unless somebody reported of it or
// no plan is as good without. Starts move by 5 minutes or more, or not at all.
absl::StatusOr<CorrectedPlan> correctPlan(const Documents& documents, const RunningPlan& running,
                                          const PlanOptions& options, PlanMonitor* monitor = nullptr);

// Minutes; common practice, no source: who has the flour on the hands does not look at the plan again.
inline constexpr int kAboutToStart = 10;

// Takes over from the plan before what the event's plans keep of each other: how often a step was moved,
// and where it was when the first report came (`underWay`: there are reports).
void carryOver(const v1::Plan& before, bool underWay, v1::Plan& plan);

}  // namespace suppertide::compose
