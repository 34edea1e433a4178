// Infeasible twins of random dinners: each clash is checked by its definition.
#include <gtest/gtest.h>

#include "server/planning/clash/part.h"
#include "tests/planning/clash/clash_words.h"
#include "tests/support/random_dinner.h"

namespace suppertide::planning {
namespace {

constexpr std::int64_t kConflicts = 4000;

// Lets each dish wait a shorter time until it cannot all be had, or there is nothing left to shorten.
Problem twinOf(Problem dinner, Feasibility& feasibility) {
  std::vector<Wish> served;
  for (int d = 0; d < static_cast<int>(dinner.dishes.size()); ++d) served.push_back({WishKind::kServed, d});
  for (int round = 0; round < 6; ++round) {
    if (feasibility.decide(relaxed(dinner, served, {})) == Feasible::kNo) break;
    for (Dish& dish : dinner.dishes) dish.holdLimit = dish.holdLimit / 2 / 5 * 5;
    for (Resource& resource : dinner.resources)
      if (resource.id == "burners") resource.capacity = 1;
  }
  return dinner;
}

TEST(WishClashTwinTest, EveryClashIsInfeasibleAndEachPartWithoutOneIsNot) {
  int sets = 0;
  int sure = 0;
  for (std::uint64_t seed = 1; seed <= 12; ++seed) {
    SCOPED_TRACE(seed);
    EngineFeasibility feasibility(kDinnerGrid, kConflicts, {});
    const DinnerLoad load = seed % 2 == 0 ? DinnerLoad::kMiddling : DinnerLoad::kCrowded;
    const Problem dinner =
        twinOf(randomDinner(seed, 4 + static_cast<int>(seed % 3), load, DinnerExtras::all()), feasibility);
    for (const WishClash& clash : wishClashes(dinner, {.most = 2}, feasibility)) {
      ++sets;
      if (!clash.irreducible) continue;
      ++sure;
      expectIrreducible(dinner, clash, feasibility);
    }
  }
  EXPECT_GE(sets, 8);
  EXPECT_GE(sure * 10, sets * 8);
}

}  // namespace
}  // namespace suppertide::planning
