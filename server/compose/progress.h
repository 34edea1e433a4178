// What people reported of an event, as the planner counts it.
#pragma once

#include <vector>

#include "server/compose/composition.h"
#include "server/planning/replan/happened.h"
#include "suppertide/v1/progress.pb.h"

namespace suppertide::compose {

// The running plan at `now` by the reports. Silence means as planned: a step
// that nobody spoke of has begun or ended by its plan once what it follows has.
// Reports up to `known` are in the plan already, so that a delay counts once.
// Hand-overs of steps that wait are pinned in the composition's problem.
// What was seen of a step says that it had begun by then; the centre of a bake and
// its oven say when it will be done (seen_bakes.h), unless somebody who looked said it.
// What was seen of doughs moves nothing here: seen_doughs.h makes them what they show.
planning::Running runningOf(Composition& composition, const v1::Plan& plan, const v1::Progress& progress,
                            int known, planning::Minute now);

}  // namespace suppertide::compose
