#include "gmock/gmock.h"
#include "gtest/gtest.h"
#include "server/planning/explain/dish_alone.h"
#include "server/planning/explain/explain.h"
#include "tests/support/problem_builder.h"
#include "tests/support/random_dinner.h"

namespace suppertide::planning {
namespace {

using ::testing::IsEmpty;
using ::testing::SizeIs;

CostCurve dearWait() {
  return {{{0, 0}, {300, 300}}};
}

// A roast at 170 (or, less well, 200) and a loaf at 240, both served at 300; a small oven takes loaves only
// at a price.
ProblemBuilder bakesAtOnce() {
  ProblemBuilder kitchen(400);
  kitchen.oven("oven", {170, 200, 240}, {.racks = 2, .changeMinutes = 15});
  kitchen.oven("small oven", {200, 240}, {.racks = 1, .changeMinutes = 15});
  kitchen.dish("roast", {.serve = 300});
  kitchen.step("roast").lasting(60).in("oven", 170);
  kitchen.dish("loaf", {.serve = 300});
  kitchen.step("loaf")
      .lasting(40)
      .in("oven", 240)
      .orMode("small")
      .lasting(40)
      .in("small oven", 240)
      .quality(5);
  for (Dish& dish : kitchen.problem().dishes) dish.waitCost = dearWait();
  return kitchen;
}

TEST(NaiveClashTest, TwoSetpointsAtOnceInTheOvenThatBothLikeBest) {
  const Problem problem = bakesAtOnce().build();
  const std::vector<NaiveClash> clashes = naiveOvenClashes(problem);
  ASSERT_THAT(clashes, SizeIs(1));
  EXPECT_EQ(clashes[0].stepA, stepIndex(problem, "roast"));
  EXPECT_EQ(clashes[0].stepB, stepIndex(problem, "loaf"));
  EXPECT_EQ(clashes[0].oven, ovenIndex(problem, "oven"));
  EXPECT_EQ(clashes[0].setpointA, 170);
  EXPECT_EQ(clashes[0].setpointB, 240);
  EXPECT_EQ(clashes[0].whenA, (Interval<Minute>{240, 300}));
  EXPECT_EQ(clashes[0].whenB, (Interval<Minute>{260, 300}));
}

TEST(NaiveClashTest, BakesThatLieApartByTheChangeDoNotClash) {
  ProblemBuilder kitchen = bakesAtOnce();
  kitchen.problem().dishes[1].serve = 225;
  EXPECT_THAT(naiveOvenClashes(kitchen.build()), IsEmpty());
  kitchen.problem().dishes[1].serve = 230;
  EXPECT_THAT(naiveOvenClashes(kitchen.build()), SizeIs(1));
}

TEST(NaiveClashTest, OneSetpointClashesOnlyWhenTheRacksAreTooFew) {
  ProblemBuilder kitchen = bakesAtOnce();
  kitchen.problem().steps[1].modes[0].oven->phases[0].setpoint = 0;
  EXPECT_THAT(naiveOvenClashes(kitchen.build()), IsEmpty());
  kitchen.problem().steps[1].modes[0].oven->load.racks = 2;
  EXPECT_THAT(naiveOvenClashes(kitchen.build()), SizeIs(1));
}

TEST(NaiveClashTest, BakesOfOneDishAreNotAClash) {
  ProblemBuilder kitchen = bakesAtOnce();
  kitchen.problem().steps[1].dish = 0;
  kitchen.problem().dishes.pop_back();
  kitchen.gap("loaf", Edge::kEnd, "roast", Edge::kStart, 0, 5);
  EXPECT_THAT(naiveOvenClashes(kitchen.build()), IsEmpty());
}

TEST(SettlementTest, TellsOfMovesOvensAndSharedHeat) {
  const Problem problem = bakesAtOnce().build();
  const NaiveClash clash = naiveOvenClashes(problem)[0];
  const Settlement moved =
      settlementOf(problem, ScheduleBuilder(problem).put("roast", 240).put("loaf", 185).done(), clash);
  EXPECT_FALSE(moved.otherOven);
  EXPECT_FALSE(moved.sharedSetpoint);
  EXPECT_EQ(moved.movedA, 0);
  EXPECT_EQ(moved.movedB, -75);
  const Settlement other =
      settlementOf(problem, ScheduleBuilder(problem).put("roast", 240).put("loaf", 260, "", 1).done(), clash);
  EXPECT_TRUE(other.otherOven);
  EXPECT_EQ(other.movedB, 0);
  EXPECT_EQ(other.degreesB, 0);
}

TEST(SettlementTest, TellsOfDegreesGivenUpToShareTheOven) {
  ProblemBuilder kitchen(400);
  kitchen.oven("oven", {170, 200}, {.racks = 2, .changeMinutes = 15});
  kitchen.dish("roast", {.serve = 300});
  kitchen.step("roast").lasting(60).in("oven", 170).orMode("hot").lasting(50).in("oven", 200).quality(3);
  kitchen.dish("gratin", {.serve = 300});
  kitchen.step("gratin").lasting(40).in("oven", 200);
  const Problem problem = kitchen.build();
  const std::vector<NaiveClash> clashes = naiveOvenClashes(problem);
  ASSERT_THAT(clashes, SizeIs(1));
  const Settlement shared = settlementOf(
      problem, ScheduleBuilder(problem).put("roast", 250, "", 1).put("gratin", 260).done(), clashes[0]);
  EXPECT_TRUE(shared.sharedSetpoint);
  EXPECT_EQ(clashes[0].stepA == stepIndex(problem, "roast") ? shared.degreesA : shared.degreesB, 30);
  const Settlement dropped = settlementOf(
      problem, ScheduleBuilder(problem).put("roast", 250, "", 1).without("gratin").done(), clashes[0]);
  EXPECT_FALSE(dropped.sharedSetpoint || dropped.otherOven);
  EXPECT_EQ(dropped.degreesA, 0);
}

TEST(DishAloneTest, EndsWhenItIsServedAndWorksBackwardThroughItsGaps) {
  ProblemBuilder kitchen(600);
  kitchen.cook("Ana", 0, 400);
  kitchen.dish("pie", {.serve = 500, .holdLimit = 200});
  kitchen.step("crust").lasting(20).by({"Ana"});
  kitchen.step("filling").lasting(30).by({"Ana"});
  kitchen.step("bake").lasting(50).after("crust", 10, 30).after("filling", 0, 5);
  kitchen.step("cool").lasting(30, 60, 90).after("bake", 0, 0).quality(0, 1, 1);
  kitchen.problem().dishes[0].waitCost = dearWait();
  const Problem problem = kitchen.build();
  const auto plan = planAlone(problem, 0, 5);
  ASSERT_TRUE(plan);
  Schedule schedule = ScheduleBuilder(problem).done();
  for (const auto& [step, at] : *plan) schedule.steps[static_cast<std::size_t>(step)] = at;
  EXPECT_EQ(schedule.steps[3].end, 500);
  EXPECT_EQ(schedule.steps[3].start, 440) << "the best length costs nothing";
  EXPECT_EQ(schedule.steps[2].start, 390);
  EXPECT_LE(schedule.steps[0].end + 10, 390);
  EXPECT_GE(schedule.steps[0].end + 30, 390);
  EXPECT_LE(schedule.steps[1].end, 390);
  EXPECT_EQ(costOf(problem, schedule).total, TierCosts{});
}

TEST(DishAloneTest, ChoosesLinkedModesTogether) {
  ProblemBuilder kitchen(600);
  kitchen.dish("loaf", {.serve = 500, .holdLimit = 0});
  kitchen.step("bulk").lasting(100).orMode("warm").lasting(60).quality(2);
  kitchen.step("shape").lasting(10).after("bulk", 0, 0);
  kitchen.step("proof")
      .lasting(60)
      .linkedTo("bulk", {1})
      .orMode("fridge")
      .lasting(300)
      .quality(9)
      .after("shape", 0, 0);
  const Problem problem = kitchen.build();
  const auto plan = planAlone(problem, 0, 5);
  ASSERT_TRUE(plan);
  for (const auto& [step, at] : *plan)
    EXPECT_EQ(at.mode, step == 0 ? 1 : 0) << "the cheaper bulk forces the fridge";
}

TEST(DishAloneTest, WouldRatherBeInTimeThanGood) {
  ProblemBuilder kitchen(600);
  kitchen.cook("Ana", 290, 600);
  kitchen.dish("soup", {.serve = 300, .lateLimit = 60});
  kitchen.step("stir").lasting(20).by({"Ana"}).orMode("quickly").lasting(10).by({"Ana"}).quality(5);
  const auto plan = planAlone(kitchen.build(), 0, 5);
  ASSERT_TRUE(plan);
  EXPECT_EQ(plan->front().second, (Placement{290, 300, 1, 0}));
}

TEST(DishAloneTest, IsNothingWhenTheDishCannotBeMade) {
  ProblemBuilder kitchen(600);
  kitchen.cook("Ana", 0, 100);
  kitchen.dish("soup", {.serve = 500, .holdLimit = 60});
  kitchen.step("stir").lasting(20).by({"Ana"});
  EXPECT_FALSE(planAlone(kitchen.build(), 0, 5));
}

}  // namespace
}  // namespace suppertide::planning
