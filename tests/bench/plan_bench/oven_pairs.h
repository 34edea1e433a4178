// When two steps may stand in one oven together, or how far apart they must be.
#pragma once

#include <optional>

#include "server/planning/model/problem.h"

namespace suppertide::planning {

// In minutes: b starts at least `aFirst` after a ends, or a at least `bFirst`
// after b ends, or b starts between `togetherLeast` and `togetherMost` after a
// starts (empty: never). Modes that never meet, or may stand anyhow, have an
// `aFirst` of -kNoLimit. Racks are not asked.
struct OvenPair {
  Minute aFirst = -kNoLimit;
  Minute bFirst = -kNoLimit;
  Minute togetherLeast = kNoLimit;
  Minute togetherMost = -kNoLimit;
};

// Nothing when the modes ask for more than this form can say. Tries every
// difference of starts on the grid, so about linear in the two lengths.
std::optional<OvenPair> ovenPair(const Problem& problem, const Mode& a, const Mode& b, Minute grid);

// Whether they have modes in the same oven.
bool mayMeet(const Step& a, const Step& b);

// How many loads of one rack fit.
int rackCount(const Oven& oven);

}  // namespace suppertide::planning
