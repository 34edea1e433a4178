// A sum of weighted literals as literals "at least this much".
#pragma once

#include <cstdint>
#include <map>
#include <vector>

#include "server/planning/solver/sat.h"

namespace suppertide::planning {

// Amount -> the literal that is true when the sum is at least that. Ascending.
using Sums = std::map<std::int64_t, Lit>;

// Sums `parts` by a tree of partial sums and returns a literal for each of the
// `wanted` amounts that can be reached (all above 0, ascending). Implied by the
// parts, not the other way. Where very many amounts meet inside the tree, they are
// rounded down: then the sum may be understated, never overstated.
Sums sumUp(Sat& sat, std::vector<Sums> parts, const std::vector<std::int64_t>& wanted);

}  // namespace suppertide::planning
