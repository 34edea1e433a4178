// Tier kOvens, in minutes heated with nothing in it.
#include "server/planning/model/costs/idle_heat.h"

#include "gtest/gtest.h"
#include "server/planning/model/schedule.h"
#include "tests/support/problem_builder.h"

namespace suppertide::planning {
namespace {

// Heating up from cold takes 20 minutes.
ProblemBuilder kitchenWithOven() {
  ProblemBuilder kitchen(600);
  kitchen.oven("oven", {170, 240}, {.racks = 2, .changeMinutes = 20, .idleMinuteCost = 1});
  kitchen.dish("roast", {.serve = 600});
  kitchen.step("roast").lasting(60).in("oven", 170);
  kitchen.dish("loaf", {.serve = 600});
  kitchen.step("loaf").lasting(40).in("oven", 170);
  return kitchen;
}

std::int64_t idle(const Problem& problem, const ScheduleBuilder& schedule) {
  return costIn(costOf(problem, schedule.done()).total, Tier::kOvens);
}

TEST(OvensTierTest, APauseCostsItsMinutesButNoMoreThanHeatingFromCold) {
  const Problem problem = kitchenWithOven().build();
  const auto loafAt = [&](Minute start) {
    return idle(problem, ScheduleBuilder(problem).put("roast", 100).put("loaf", start));
  };
  EXPECT_EQ(loafAt(160), 20);  // of the roast, from cold
  EXPECT_EQ(loafAt(165), 20 + 5);
  EXPECT_EQ(loafAt(300), 20 + 20);
}

TEST(OvensTierTest, WhatEntersBesideAnotherCostsNothingMore) {
  const Problem problem = kitchenWithOven().build();
  EXPECT_EQ(idle(problem, ScheduleBuilder(problem).put("roast", 100).put("loaf", 120)), 20);
  EXPECT_EQ(idle(problem, ScheduleBuilder(problem).put("roast", 100).put("loaf", 100)), 20);
}

TEST(OvensTierTest, AColdStartWaitsForNoHeat) {
  ProblemBuilder kitchen = kitchenWithOven();
  kitchen.problem().steps[0].modes[0].oven->preheated = false;
  const Problem problem = kitchen.build();
  EXPECT_EQ(idle(problem, ScheduleBuilder(problem).put("roast", 100).put("loaf", 160)), 0);
}

TEST(OvensTierTest, AMinuteCostsWhatItsOvenSays) {
  ProblemBuilder kitchen = kitchenWithOven();
  kitchen.problem().ovens[0].idleMinuteCost = 3;
  const Problem dear = kitchen.build();
  EXPECT_EQ(idle(dear, ScheduleBuilder(dear).put("roast", 100).put("loaf", 165)), 3 * 25);
  kitchen.problem().ovens[0].idleMinuteCost = 0;
  const Problem free = kitchen.build();
  EXPECT_EQ(idle(free, ScheduleBuilder(free).put("roast", 100).put("loaf", 165)), 0);
}

TEST(OvensTierTest, UnservedDishesHeatNothing) {
  const Problem problem = kitchenWithOven().build();
  const auto plan = ScheduleBuilder(problem).put("roast", 100).put("loaf", 300);
  EXPECT_EQ(idle(problem, ScheduleBuilder(plan).without("roast")), 20);
  EXPECT_EQ(idle(problem, ScheduleBuilder(plan).without("roast").without("loaf")), 0);
}

}  // namespace
}  // namespace suppertide::planning
