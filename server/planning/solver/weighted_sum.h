// A sum of weighted literals as literals "at least this much".
#pragma once

#include <cstdint>
#include <map>
#include <vector>

#include "server/planning/solver/sat.h"

namespace suppertide::planning {

// Amount -> the literal that is true when the sum is at least that. Ascending.
using Sums = std::map<std::int64_t, Lit>;

// Sums `parts` by a tree of partial sums; amounts above `enough` count as `enough`.
// Implied by the parts, not the other way. Where too many different amounts
// meet, they are rounded down: then the sum may be understated, never overstated.
Sums sumUp(Sat& sat, std::vector<Sums> parts, std::int64_t enough);

}  // namespace suppertide::planning
