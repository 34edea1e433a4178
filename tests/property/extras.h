// What the random dinners of the property tests have beyond the plain rules.
#pragma once

#include "tests/support/dinner_extras.h"

namespace suppertide::planning {

inline constexpr DinnerExtras kExtras = DinnerExtras::all();

}  // namespace suppertide::planning
