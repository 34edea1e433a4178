// Bakes of bread: times by the mass of a piece, and what to do and look for on the way.
#pragma once

#include "server/compose/composition.h"
#include "server/planning/model/schedule.h"

namespace suppertide::compose {

// What a bake asks of an oven, its times scaled from the mass of a piece that the recipe was written for to
// the formula's own.
v1::OvenNeed ovenNeedOf(const Composition& composition, int step);

// Steam, lid and the centre's temperature at the end, for a step that bakes bread.
void addBakeNotes(const Composition& composition, int step, const planning::Placement& placement,
                  v1::PlannedStep& out);

}  // namespace suppertide::compose
