// One dish's own best timing when nothing else is made. Internal to the explainer.
//
// A dynamic programme over a grid, from serving backwards along the dish's gaps
// seen as a tree with the last step at its root. Gaps that would close a ring
// are left out, so a side branch may lie a little too early or too late; modes
// that are linked are tried in every combination. Steps that no gap ties
// to the last one are not placed.
#pragma once

#include <optional>
#include <utility>
#include <vector>

#include "server/planning/model/schedule.h"

namespace suppertide::planning {

// The dish's steps with their placements, at least lateness, then quality, then
// people cost; nothing when it can't be made even alone. `grid` at least 1.
std::optional<std::vector<std::pair<int, Placement>>> planAlone(const Problem& problem, int dish,
                                                                Minute grid);

}  // namespace suppertide::planning
