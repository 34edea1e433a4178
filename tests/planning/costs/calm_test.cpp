// Tier kCalm, in points: interruptions, air between tasks and after what is uncertain.
#include "server/planning/model/costs/calm.h"

#include "gtest/gtest.h"
#include "server/planning/model/schedule.h"
#include "tests/support/problem_builder.h"

namespace suppertide::planning {
namespace {

// Ana stirs soup, and she or Ben tosses salad; fifteen minutes of air are wanted between tasks.
ProblemBuilder tasks() {
  ProblemBuilder kitchen(600);
  kitchen.cook("Ana");
  kitchen.cook("Ben");
  kitchen.problem().airBetweenTasks = 15;
  kitchen.problem().interruptionCost = 10;
  kitchen.dish("soup", {.serve = 600});
  kitchen.step("stir").lasting(20).by({"Ana"}, 50);
  kitchen.dish("salad", {.serve = 600});
  kitchen.step("toss").lasting(10).by({"Ana", "Ben"}, 50);
  return kitchen;
}

std::int64_t calm(const Problem& problem, const ScheduleBuilder& schedule) {
  return costIn(costOf(problem, schedule.done()).total, Tier::kCalm);
}

TEST(CalmTierTest, EachMinuteShortOfTheAirBetweenTasksCostsOne) {
  const Problem problem = tasks().build();
  const auto tossAt = [&](Minute start) {
    return calm(problem, ScheduleBuilder(problem).put("stir", 100, "Ana").put("toss", start, "Ana"));
  };
  EXPECT_EQ(tossAt(135), 0);
  EXPECT_EQ(tossAt(131), 4);
  EXPECT_EQ(tossAt(120), 15);
  EXPECT_EQ(tossAt(80), 5);  // stirring then begins ten minutes after tossing
}

TEST(CalmTierTest, BeginningATaskInTheMiddleOfAnotherIsAnInterruption) {
  const Problem problem = tasks().build();
  const auto tossAt = [&](Minute start, const char* cook) {
    return calm(problem, ScheduleBuilder(problem).put("stir", 100, "Ana").put("toss", start, cook));
  };
  EXPECT_EQ(tossAt(110, "Ana"), 10);
  EXPECT_EQ(tossAt(100, "Ana"), 0);
  EXPECT_EQ(tossAt(110, "Ben"), 0);
}

TEST(CalmTierTest, KeepingAnEyeOnSomethingIsNoTask) {
  ProblemBuilder kitchen = tasks();
  kitchen.problem().steps[0].modes[0].attention = kTaskAttention - 1;
  const Problem problem = kitchen.build();
  EXPECT_EQ(calm(problem, ScheduleBuilder(problem).put("stir", 100, "Ana").put("toss", 110, "Ana")), 0);
}

TEST(CalmTierTest, TasksOfOneDishNeedNoAir) {
  ProblemBuilder kitchen = tasks();
  kitchen.problem().steps[1].dish = 0;
  kitchen.problem().dishes.pop_back();
  kitchen.problem().dishes[0].lastStep = 1;
  const Problem problem = kitchen.build();
  EXPECT_EQ(calm(problem, ScheduleBuilder(problem).put("stir", 100, "Ana").put("toss", 120, "Ana")), 0);
}

TEST(CalmTierTest, TheWorstNeighbourCounts) {
  ProblemBuilder kitchen = tasks();
  kitchen.dish("cake", {.serve = 600});
  kitchen.step("ice").lasting(15).by({"Ana"}, 50);
  const Problem problem = kitchen.build();
  const auto plan =
      ScheduleBuilder(problem).put("stir", 100, "Ana").put("toss", 125, "Ana").put("ice", 108, "Ana");
  // Icing interrupts stirring. Tossing begins 5 minutes after stirring and 2 after icing.
  EXPECT_EQ(calm(problem, plan), 10 + 13);
}

TEST(CalmTierTest, UnservedDishesDisturbNobody) {
  const Problem problem = tasks().build();
  const auto plan = ScheduleBuilder(problem).put("stir", 100, "Ana").put("toss", 121, "Ana");
  EXPECT_EQ(calm(problem, plan), 14);
  EXPECT_EQ(calm(problem, ScheduleBuilder(plan).without("soup")), 0);
}

TEST(CalmTierTest, AGapShortOfItsAirCostsTheMissingMinutes) {
  ProblemBuilder kitchen(600);
  kitchen.dish("loaf", {.serve = 600});
  kitchen.step("proof").lasting(60);
  kitchen.step("bake").lasting(40).after("proof", 5, 60).air(20);
  const Problem problem = kitchen.build();
  const auto bakeAt = [&](Minute start) {
    return calm(problem, ScheduleBuilder(problem).put("proof", 100).put("bake", start));
  };
  EXPECT_EQ(bakeAt(185), 0);
  EXPECT_EQ(bakeAt(175), 10);
  EXPECT_EQ(bakeAt(165), 20);
  EXPECT_EQ(bakeAt(190), 0);
}

}  // namespace
}  // namespace suppertide::planning
