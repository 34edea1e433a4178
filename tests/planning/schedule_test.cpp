#include "server/planning/model/schedule.h"

#include "gtest/gtest.h"
#include "tests/support/problem_builder.h"

namespace suppertide::planning {
namespace {

constexpr auto kUnserved = static_cast<std::size_t>(Tier::kUnserved);
constexpr auto kLateness = static_cast<std::size_t>(Tier::kLateness);
constexpr auto kQuality = static_cast<std::size_t>(Tier::kQuality);

// Soup is stirred for 20 minutes by Ana or Ben and served at 100.
ProblemBuilder soup() {
  ProblemBuilder kitchen(600);
  kitchen.cook("Ana");
  kitchen.cook("Ben");
  kitchen.dish("soup", {.serve = 100, .holdLimit = 60, .lateLimit = 30});
  kitchen.step("stir").lasting(10, 20, 40).by({"Ana", "Ben"}, 50);
  return kitchen;
}

TEST(CostTest, APlanWithoutAFlawCostsNothing) {
  const Problem problem = soup().build();
  const CostBreakdown cost =
      costOf(problem, ScheduleBuilder(problem).put("stir", 80, "Ana").until("stir", 100).done());
  EXPECT_EQ(cost.total, TierCosts{});
}

TEST(CostTest, AnUnservedDishCostsItsWeightAndNothingElse) {
  ProblemBuilder kitchen = soup();
  kitchen.problem().dishes[0].unservedCost = 7;
  kitchen.problem().dishes[0].waitCost.knots = {{0, 5}};
  const Problem problem = kitchen.build();
  const CostBreakdown cost = costOf(problem, ScheduleBuilder(problem).without("soup").done());
  EXPECT_EQ(cost.total, (TierCosts{7, 0, 0, 0, 0}));
  EXPECT_EQ(cost.byDish[0][kUnserved], 7);
}

TEST(CostTest, LatenessCostsOneAMinuteAndNoWaiting) {
  ProblemBuilder kitchen = soup();
  kitchen.problem().dishes[0].waitCost.knots = {{0, 5}};
  const Problem problem = kitchen.build();
  const auto cost =
      costOf(problem, ScheduleBuilder(problem).put("stir", 92, "Ana").until("stir", 112).done());
  EXPECT_EQ(cost.total[kLateness], 12);
  EXPECT_EQ(cost.total[kQuality], 0);
}

TEST(CostTest, TotalsAreTheSumOfDishesAndShares) {
  ProblemBuilder kitchen = soup();
  kitchen.dish("salad", {.serve = 50, .lateLimit = 30});
  kitchen.step("wash").lasting(10).by({"Ana"}).quality(6);
  const Problem problem = kitchen.build();
  const auto cost = costOf(
      problem,
      ScheduleBuilder(problem).put("stir", 81, "Ana").until("stir", 101).put("wash", 45, "Ben").done());
  EXPECT_EQ(cost.byDish[0], (TierCosts{0, 1, 0, 0, 0}));
  EXPECT_EQ(cost.byDish[1], (TierCosts{0, 5, 0, 6, 0}));
  EXPECT_EQ(cost.total, (TierCosts{0, 6, 0, 6, 0}));
}

TEST(CostTest, AHigherTierOutweighsAnyLowerOne) {
  EXPECT_LT((TierCosts{0, 1'000, 0, 1'000, 1'000}), (TierCosts{1, 0, 0, 0, 0}));
  EXPECT_LT((TierCosts{0, 0, 0, 0, 1'000'000}), (TierCosts{0, 0, 0, 1, 0}));
}

}  // namespace
}  // namespace suppertide::planning
