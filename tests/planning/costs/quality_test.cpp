// Tier kQuality, in points: modes, minutes off the best length, waiting.
#include "server/planning/model/costs/quality.h"

#include "gtest/gtest.h"
#include "server/planning/model/schedule.h"
#include "tests/support/problem_builder.h"

namespace suppertide::planning {
namespace {

constexpr auto kQualityTier = static_cast<std::size_t>(Tier::kQuality);

// Soup is stirred for 20 minutes by Ana or Ben and served at 100.
ProblemBuilder soupByQuality() {
  ProblemBuilder kitchen(600);
  kitchen.cook("Ana");
  kitchen.cook("Ben");
  kitchen.dish("soup", {.serve = 100, .holdLimit = 60, .lateLimit = 30});
  kitchen.step("stir").lasting(10, 20, 40).by({"Ana", "Ben"}, 50);
  return kitchen;
}

TEST(QualityTierTest, WaitingCostsByItsCurve) {
  ProblemBuilder kitchen = soupByQuality();
  kitchen.problem().dishes[0].waitCost.knots = {{0, 0}, {30, 15}};
  const Problem problem = kitchen.build();
  const auto cost = costOf(problem, ScheduleBuilder(problem).put("stir", 60, "Ana").until("stir", 80).done());
  EXPECT_EQ(cost.total, (TierCosts{0, 0, 0, 10, 0}));
}

TEST(QualityTierTest, LengthsOffTheBestCostByTheMinuteOnEachSide) {
  ProblemBuilder kitchen = soupByQuality();
  kitchen.problem().steps[0].modes[0].qualityCost = 3;
  kitchen.problem().steps[0].modes[0].shortMinuteCost = 2;
  kitchen.problem().steps[0].modes[0].longMinuteCost = 1;
  const Problem problem = kitchen.build();
  const auto quality = [&](Minute start) {
    return costOf(problem, ScheduleBuilder(problem).put("stir", start, "Ana").until("stir", 100).done())
        .total[kQualityTier];
  };
  EXPECT_EQ(quality(80), 3);
  EXPECT_EQ(quality(90), 3 + 20);
  EXPECT_EQ(quality(65), 3 + 15);
}

TEST(QualityTierTest, ABestLengthReadyWhenServedCostsNothing) {
  ProblemBuilder kitchen = soupByQuality();
  kitchen.problem().steps[0].modes[0].shortMinuteCost = 2;
  kitchen.problem().steps[0].modes[0].longMinuteCost = 2;
  kitchen.problem().dishes[0].waitCost.knots = {{0, 0}, {30, 15}};
  const Problem problem = kitchen.build();
  const auto best = ScheduleBuilder(problem).put("stir", 80, "Ana").until("stir", 100);
  EXPECT_EQ(costOf(problem, best.done()).total[kQualityTier], 0);
}

TEST(QualityTierTest, TheBestLengthIsThatOfItsStart) {
  Mode mode;
  mode.length = {0, 60, {{90, 100, 120}, {60, 70, 80}}};
  mode.shortMinuteCost = 1;
  EXPECT_EQ(qualityCost(mode, 59, 59 + 95), 5);
  EXPECT_EQ(qualityCost(mode, 60, 60 + 65), 5);
  EXPECT_EQ(qualityCost(mode, 60, 60 + 75), 0);
}

TEST(QualityTierTest, UnservedDishesCostNothing) {
  ProblemBuilder kitchen = soupByQuality();
  kitchen.problem().steps[0].modes[0].qualityCost = 3;
  const Problem problem = kitchen.build();
  EXPECT_EQ(costOf(problem, ScheduleBuilder(problem).without("soup").done()).total[kQualityTier], 0);
}

}  // namespace
}  // namespace suppertide::planning
