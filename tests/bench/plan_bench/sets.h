// The named sets of dinners: sizes, loads and twins in which not everything fits.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "tests/support/random_dinner.h"

namespace suppertide::planning {

struct DinnerSet {
  std::string name;  // "12-crowded"; "12-crowded-twin"
  int dishes = 0;
  DinnerLoad load = DinnerLoad::kLight;
  bool twin = false;  // with a dish that cannot be served
};

// 6, 12, 18, 24 and 40 dishes, each light, middling and crowded, each with its twin.
std::vector<DinnerSet> allSets();

// The dinner of that seed. In a twin the window of one dish is shrunk from
// below, half an hour at a time, until no plan serves it even if it is alone in
// the kitchen: the dinner is then known to leave something unserved.
Problem dinnerOf(const DinnerSet& set, std::uint64_t seed);

}  // namespace suppertide::planning
