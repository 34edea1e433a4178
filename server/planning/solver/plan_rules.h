// The engine's own check of a whole plan against every hard rule, made before a plan is handed out.
#pragma once

#include "server/planning/model/schedule.h"

namespace suppertide::planning {

// Whether the served steps of `plan` keep every rule of `problem`: bounds,
// lengths, pins, gaps, mode links, serving, and all that is shared. It looks at
// the problem itself, not at the grid, so that a mistake in the grid shows too.
// About the minutes of the axis times cooks and things, plus the steps' lengths.
bool keepsRules(const Problem& problem, const Schedule& plan);

}  // namespace suppertide::planning
