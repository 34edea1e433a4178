// Random dinners for property tests and benchmarks: the same seed, the same dinner.
//
// Three days, the dinner in the evening of the last. Every time and length is a
// multiple of kDinnerGrid, so the engine may use that grid. About 6.5 steps a
// dish: 6 dishes are about 40 steps, 12 about 80, 24 about 160. Breads (levain,
// bulk with a fold inside, proof in several places, two bake phases), roasts,
// gratins, pies that join a crust and a filling, hob and cold dishes, desserts
// made a day ahead.
#pragma once

#include <cstdint>

#include "server/planning/model/problem.h"
#include "tests/support/dinner_extras.h"

namespace suppertide::planning {

inline constexpr Minute kDinnerGrid = 5;

enum class DinnerLoad {
  kLight,     // an oven, a cook and places to spare
  kMiddling,  // everything is used, little is short
  kCrowded,   // too few ovens and hands: dishes run late or are dropped
};

// `dishes` at least 1. Passes check().
Problem randomDinner(std::uint64_t seed, int dishes, DinnerLoad load, DinnerExtras extras = {});

// Two to four dishes of one to three steps on an axis of up to two hours: small
// enough to try every schedule on the grid, with all that a mode may ask for.
Problem tinyDinner(std::uint64_t seed, DinnerExtras extras = {});

}  // namespace suppertide::planning
