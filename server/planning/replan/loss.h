// Why a dish is left out of a running plan: what a person can be told, and do something about.
#pragma once

#include "server/planning/replan/happened.h"

namespace suppertide::planning {

enum class Loss {
  kBesideOthers,  // alone it would fit
  kFoodSafety,    // a clock has run out, or would before it is served
  kTooLate,       // it would be later than its course may be
  kTooLong,       // steps are too far apart by now
  kNoWay,         // no place, cook or oven is left for it
};

// Of a dish that is left out. A few grids of the problem, milliseconds.
Loss lossOf(const Remaining& remains, int dish, Minute grid);

}  // namespace suppertide::planning
