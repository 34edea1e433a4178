#include "server/planning/model/schedule.h"

#include "gtest/gtest.h"
#include "tests/support/problem_builder.h"

namespace suppertide::planning {
namespace {

constexpr auto kUnserved = static_cast<std::size_t>(Tier::kUnserved);
constexpr auto kLateness = static_cast<std::size_t>(Tier::kLateness);
constexpr auto kQuality = static_cast<std::size_t>(Tier::kQuality);
constexpr auto kPeople = static_cast<std::size_t>(Tier::kPeople);

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

TEST(CostTest, WaitingCostsByItsCurve) {
  ProblemBuilder kitchen = soup();
  kitchen.problem().dishes[0].waitCost.knots = {{0, 0}, {30, 15}};
  const Problem problem = kitchen.build();
  const auto cost = costOf(problem, ScheduleBuilder(problem).put("stir", 60, "Ana").until("stir", 80).done());
  EXPECT_EQ(cost.total, (TierCosts{0, 0, 0, 10, 0}));
}

TEST(CostTest, LengthsOffTheBestCostByTheMinuteOnEachSide) {
  ProblemBuilder kitchen = soup();
  kitchen.problem().steps[0].modes[0].qualityCost = 3;
  kitchen.problem().steps[0].modes[0].shortMinuteCost = 2;
  kitchen.problem().steps[0].modes[0].longMinuteCost = 1;
  const Problem problem = kitchen.build();
  const auto quality = [&](Minute start) {
    return costOf(problem, ScheduleBuilder(problem).put("stir", start, "Ana").until("stir", 100).done())
        .total[kQuality];
  };
  EXPECT_EQ(quality(80), 3);
  EXPECT_EQ(quality(90), 3 + 20);
  EXPECT_EQ(quality(65), 3 + 15);
}

TEST(CostTest, UnsocialMinutesCostByTheMinuteWhateverTheAttention) {
  ProblemBuilder kitchen = soup();
  kitchen.problem().cooks[0].unsocial = {{{0, 85}, 2}, {{95, 200}, 3}};
  const Problem problem = kitchen.build();
  const auto people = [&](const char* cook) {
    return costOf(problem, ScheduleBuilder(problem).put("stir", 80, cook).until("stir", 100).done())
        .total[kPeople];
  };
  EXPECT_EQ(people("Ana"), 5 * 2 + 5 * 3);
  EXPECT_EQ(people("Ben"), 0);
}

TEST(CostTest, AskingACookCostsWhatTheOptionSays) {
  ProblemBuilder kitchen = soup();
  kitchen.problem().steps[0].modes[0].cooks[1].cost = 4;
  const Problem problem = kitchen.build();
  const auto people = [&](const char* cook) {
    return costOf(problem, ScheduleBuilder(problem).put("stir", 80, cook).until("stir", 100).done())
        .total[kPeople];
  };
  EXPECT_EQ(people("Ana"), 0);
  EXPECT_EQ(people("Ben"), 4);
}

// Ana does 40 weighted minutes alone: her fair half is 20, so 20 are beyond it.
TEST(CostTest, WorkBeyondTheFairShareCostsByTheStartedBlock) {
  ProblemBuilder kitchen = soup();
  kitchen.step("skim").lasting(60).by({"Ana"}, 50);
  kitchen.problem().dishes[0].lastStep = 0;
  kitchen.problem().shareBlockCost = 10;
  kitchen.problem().shareBlock = 15;
  const Problem problem = kitchen.build();
  const auto plan = [&](const char* stirrer) {
    return ScheduleBuilder(problem).put("stir", 80, stirrer).until("stir", 100).put("skim", 0, "Ana").done();
  };
  const CostBreakdown alone = costOf(problem, plan("Ana"));
  EXPECT_EQ(alone.overShareByCook[0], 2 * 10);
  EXPECT_EQ(alone.overShareByCook[1], 0);
  EXPECT_EQ(alone.total[kPeople], 20);
  // 30 and 10 minutes of 40: Ana is 10 beyond.
  EXPECT_EQ(costOf(problem, plan("Ben")).total[kPeople], 10);
}

TEST(CostTest, SharesAreMeasuredAgainstTheWantedOnes) {
  ProblemBuilder kitchen = soup();
  kitchen.problem().shareBlockCost = 10;
  kitchen.problem().shareBlock = 1;
  kitchen.problem().cooks[1].share = 0;
  const Problem problem = kitchen.build();
  const auto people = [&](const char* cook) {
    return costOf(problem, ScheduleBuilder(problem).put("stir", 80, cook).until("stir", 100).done())
        .total[kPeople];
  };
  EXPECT_EQ(people("Ana"), 0);
  EXPECT_EQ(people("Ben"), 10 * 10);
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
