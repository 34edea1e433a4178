// Robustness is bought where it is free, and nowhere else.
#include "server/planning/chance/robustness.h"

#include <algorithm>
#include <cstdint>
#include <cstdio>
#include <map>

#include "absl/strings/str_cat.h"
#include "gmock/gmock.h"
#include "gtest/gtest.h"
#include "server/planning/solver/solver.h"
#include "tests/support/breach_text.h"
#include "tests/support/problem_builder.h"
#include "tests/support/random_dinner.h"

namespace suppertide::planning {
namespace {

using ::testing::IsEmpty;

RobustnessOptions oneCourse() {
  RobustnessOptions options;
  options.evenings.courses = {{0}};
  options.evenings.grace = 0;
  return options;
}

// Chopping varies; what was chopped keeps for two hours. Served at 200 from the pan.
ProblemBuilder stirFry() {
  ProblemBuilder kitchen(600);
  kitchen.cook("Ana");
  kitchen.dish("stir-fry", {.serve = 200, .holdLimit = 10});
  kitchen.problem().dishes[0].waitCost.knots = {{0, 0}, {10, 20}};
  kitchen.step("chop").lasting(20).by({"Ana"}).spread(0.7, 1.8);
  kitchen.step("fry").lasting(20).by({"Ana"}).after("chop", 0, 120);
  return kitchen;
}

double chance(const Problem& problem, const Schedule& plan) {
  EveningOptions options = oneCourse().evenings;
  options.evenings = 4'000;
  options.seed = 77;
  return chancesOf(problem, plan, options).byCourse[0];
}

TEST(RobustnessTest, WhatVariesIsDoneEarlierWhereThatCostsNothing) {
  const Problem problem = stirFry().build();
  const Schedule tight = ScheduleBuilder(problem).put("chop", 160, "Ana").put("fry", 180, "Ana").done();
  const Schedule bought = buyRobustness(problem, tight, oneCourse());
  EXPECT_LT(chance(problem, tight), 0.6);
  EXPECT_GT(chance(problem, bought), 0.97);
  EXPECT_EQ(bought.steps[1], tight.steps[1]);
  EXPECT_EQ(costOf(problem, bought).total, costOf(problem, tight).total);
}

TEST(RobustnessTest, NothingIsMovedThatWouldCostSomething) {
  ProblemBuilder kitchen = stirFry();
  kitchen.problem().cooks[0].unsocial = {{{0, 160}, 1}};
  const Problem problem = kitchen.build();
  const Schedule tight = ScheduleBuilder(problem).put("chop", 160, "Ana").put("fry", 180, "Ana").done();
  EXPECT_EQ(buyRobustness(problem, tight, oneCourse()), tight);
}

TEST(RobustnessTest, NoRuleIsBroken) {
  ProblemBuilder kitchen = stirFry();
  kitchen.problem().cooks[0].available = {{150, 600}};
  kitchen.problem().gaps[0].most = 10;
  const Problem problem = kitchen.build();
  const Schedule tight = ScheduleBuilder(problem).put("chop", 160, "Ana").put("fry", 180, "Ana").done();
  const Schedule bought = buyRobustness(problem, tight, oneCourse());
  EXPECT_THAT(breachTexts(problem, bought), IsEmpty());
  EXPECT_EQ(bought.steps[0].start, 150);
}

TEST(RobustnessTest, WhatComesBeforeMovesAlong) {
  ProblemBuilder kitchen(600);
  kitchen.cook("Ana");
  kitchen.dish("stir-fry", {.serve = 200, .holdLimit = 10});
  kitchen.problem().dishes[0].waitCost.knots = {{0, 0}, {10, 20}};
  kitchen.step("wash").lasting(10).by({"Ana"});
  kitchen.step("chop").lasting(20).by({"Ana"}).after("wash", 0, 5).spread(0.7, 1.8);
  kitchen.step("fry").lasting(20).by({"Ana"}).after("chop", 0, 120);
  const Problem problem = kitchen.build();
  const Schedule tight =
      ScheduleBuilder(problem).put("wash", 150, "Ana").put("chop", 160, "Ana").put("fry", 180, "Ana").done();
  const Schedule bought = buyRobustness(problem, tight, oneCourse());
  EXPECT_THAT(breachTexts(problem, bought), IsEmpty());
  EXPECT_GT(chance(problem, bought), 0.97);
  EXPECT_LT(bought.steps[0].start, 150);
}

TEST(RobustnessTest, PinnedStepsStay) {
  ProblemBuilder kitchen = stirFry();
  kitchen.problem().steps[0].pin.start = 160;
  const Problem problem = kitchen.build();
  const Schedule tight = ScheduleBuilder(problem).put("chop", 160, "Ana").put("fry", 180, "Ana").done();
  EXPECT_EQ(buyRobustness(problem, tight, oneCourse()), tight);
}

TEST(RobustnessTest, WithoutTrialsNothingIsMoved) {
  const Problem problem = stirFry().build();
  const Schedule tight = ScheduleBuilder(problem).put("chop", 160, "Ana").put("fry", 180, "Ana").done();
  RobustnessOptions options = oneCourse();
  options.trials = 0;
  EXPECT_EQ(buyRobustness(problem, tight, options), tight);
}

// Random dinners: the promises of the header, and that evenings not seen while buying are better too.
TEST(RobustnessTest, RandomDinnersGetNoDearerAndMoreLikelyInTime) {
  double before = 0;
  double after = 0;
  int better = 0;
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    SCOPED_TRACE(absl::StrCat("seed ", seed));
    const Problem problem =
        randomDinner(seed, 2 + static_cast<int>(seed % 6), static_cast<DinnerLoad>(seed % 3),
                     {.clocks = true, .separations = true, .spreads = true});
    const auto outcome = makePlan(problem, {.seed = seed, .workLimit = 20, .grid = kDinnerGrid});
    ASSERT_TRUE(outcome.ok()) << outcome.status();
    std::map<Minute, std::vector<int>> courses;
    for (int d = 0; d < static_cast<int>(problem.dishes.size()); ++d)
      if (!outcome->schedule.unserved[static_cast<std::size_t>(d)])
        courses[problem.dishes[static_cast<std::size_t>(d)].serve].push_back(d);
    RobustnessOptions options;
    for (const auto& [serve, dishes] : courses) options.evenings.courses.push_back(dishes);
    options.trials = 100;
    const Schedule bought = buyRobustness(problem, outcome->schedule, options);
    EXPECT_EQ(bought, buyRobustness(problem, outcome->schedule, options));
    EXPECT_THAT(breachTexts(problem, bought), IsEmpty());
    const TierCosts costs = costOf(problem, bought).total;
    for (std::size_t t = 0; t < costs.size(); ++t) EXPECT_LE(costs[t], outcome->cost[t]);
    EXPECT_EQ(bought.unserved, outcome->schedule.unserved);
    EveningOptions fresh = options.evenings;
    fresh.evenings = 4'000;
    fresh.seed = 99;
    const auto least = [&](const Schedule& schedule) {
      double chance = 1;
      for (const double course : chancesOf(problem, schedule, fresh).byCourse)
        chance = std::min(chance, course);
      return chance;
    };
    const double old = least(outcome->schedule);
    const double now = least(bought);
    EXPECT_GE(now, old - 0.02);
    before += old;
    after += now;
    if (now > old + 0.02) ++better;
  }
  std::printf("mean least chance %.3f, bought %.3f; %d of 20 better\n", before / 20, after / 20, better);
  EXPECT_GT(after, before + 0.5);
}

}  // namespace
}  // namespace suppertide::planning
