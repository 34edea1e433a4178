// Rule 5: an oven has one setpoint at a time, and changing it takes its time.
#include "tests/planning/rules/breaches.h"

namespace suppertide::planning {
namespace {

// One oven with two racks; any change of setpoint takes 15 minutes.
ProblemBuilder kitchenWithDial() {
  ProblemBuilder kitchen(400);
  kitchen.oven("oven", {28, 170, 200, 240}, {.racks = 2, .changeMinutes = 15});
  kitchen.dish("supper", {.serve = 400});
  return kitchen;
}

TEST(OvenTemperatureRuleTest, TheFirstUseNeedsNothingBefore) {
  ProblemBuilder kitchen = kitchenWithDial();
  kitchen.step("loaf").lasting(40).in("oven", 240);
  const Problem problem = kitchen.build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("loaf", 0)), IsEmpty());
}

TEST(OvenTemperatureRuleTest, AllInItShareOneSetpoint) {
  ProblemBuilder kitchen = kitchenWithDial();
  kitchen.step("roast").lasting(60).in("oven", 170);
  kitchen.step("loaf").lasting(40).in("oven", 240);
  kitchen.step("gratin").lasting(30).in("oven", 170);
  const Problem problem = kitchen.build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("roast", 0).put("loaf", 75).put("gratin", 20)),
              IsEmpty());
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("roast", 0).put("loaf", 50).put("gratin", 20)),
              ElementsAre("kOvenTemperature: loaf (with roast) at 50 by 70"));
}

TEST(OvenTemperatureRuleTest, AChangeTakesItsTime) {
  ProblemBuilder kitchen = kitchenWithDial();
  kitchen.problem().ovens[0].change[1][3] = 10;
  kitchen.step("roast").lasting(60).in("oven", 170);
  kitchen.step("loaf").lasting(40).in("oven", 240);
  const Problem problem = kitchen.build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("roast", 0).put("loaf", 70)), IsEmpty());
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("roast", 0).put("loaf", 66)),
              ElementsAre("kOvenTemperature: loaf (with roast) at 66 by 4"));
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("loaf", 0).put("roast", 55)), IsEmpty());
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("loaf", 0).put("roast", 54)),
              ElementsAre("kOvenTemperature: roast (with loaf) at 54 by 1"));
}

TEST(OvenTemperatureRuleTest, OtherOvensDoNotMatter) {
  ProblemBuilder kitchen = kitchenWithDial();
  kitchen.oven("small oven", {240}, {});
  kitchen.step("roast").lasting(60).in("oven", 170);
  kitchen.step("loaf").lasting(40).in("small oven", 240);
  const Problem problem = kitchen.build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("roast", 0).put("loaf", 10)), IsEmpty());
}

TEST(OvenTemperatureRuleTest, AColdStartMayEnterDuringTheChangeButNotAmongOthers) {
  ProblemBuilder kitchen = kitchenWithDial();
  kitchen.step("roast").lasting(60).in("oven", 170);
  kitchen.step("braise").lasting(40).in("oven", 240).coldStart();
  const Problem problem = kitchen.build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("roast", 0).put("braise", 60)), IsEmpty());
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("roast", 0).put("braise", 59)),
              ElementsAre("kOvenTemperature: braise (with roast) at 59 by 70"));
}

TEST(OvenTemperatureRuleTest, WhoEntersBehindAColdStartWaitsForTheWholeChange) {
  ProblemBuilder kitchen = kitchenWithDial();
  kitchen.step("roast").lasting(60).in("oven", 170);
  kitchen.step("braise").lasting(40).in("oven", 240).coldStart();
  kitchen.step("loaf").lasting(40).in("oven", 240);
  const Problem problem = kitchen.build();
  const auto loafAt = [&](Minute start) {
    return breaches(problem, ScheduleBuilder(problem).put("roast", 0).put("braise", 60).put("loaf", start));
  };
  EXPECT_THAT(loafAt(75), IsEmpty());
  EXPECT_THAT(loafAt(70), ElementsAre("kOvenTemperature: loaf (with roast) at 70 by 5"));
}

TEST(OvenTemperatureRuleTest, OwnPhasesWaitForNothing) {
  ProblemBuilder kitchen = kitchenWithDial();
  kitchen.step("loaf").lasting(40).in("oven", {{240, 20}, {200, 20}});
  kitchen.step("gratin").lasting(30).in("oven", 200);
  const Problem problem = kitchen.build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("loaf", 0).put("gratin", 40)), IsEmpty());
}

TEST(OvenTemperatureRuleTest, WhatStandsBesideAPhaseChangeMustAskForTheSame) {
  ProblemBuilder kitchen = kitchenWithDial();
  kitchen.step("loaf").lasting(40).in("oven", {{240, 20}, {200, 20}});
  kitchen.step("rolls").lasting(40).in("oven", {{240, 20}, {200, 20}});
  kitchen.step("pizza").lasting(10).in("oven", 240);
  const Problem problem = kitchen.build();
  const auto plan = [&](Minute rolls, Minute pizza) {
    return breaches(problem, ScheduleBuilder(problem).put("loaf", 0).put("rolls", rolls).put("pizza", pizza));
  };
  EXPECT_THAT(plan(0, 200), IsEmpty());
  EXPECT_THAT(plan(200, 10), IsEmpty());
  EXPECT_THAT(plan(200, 15), ElementsAre("kOvenTemperature: pizza (with loaf) at 20 by 40"));
  // Rolls five minutes later: at 20 the loaf wants 200 and they still want 240.
  EXPECT_THAT(plan(5, 200), ElementsAre("kOvenTemperature: rolls (with loaf) at 20 by 40"));
}

TEST(OvenTemperatureRuleTest, WhoEntersASecondPhaseWaitsUntilItsTemperatureIsThere) {
  ProblemBuilder kitchen = kitchenWithDial();
  kitchen.step("loaf").lasting(60).in("oven", {{240, 20}, {200, 40}});
  kitchen.step("gratin").lasting(30).in("oven", 200);
  const Problem problem = kitchen.build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("loaf", 0).put("gratin", 35)), IsEmpty());
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("loaf", 0).put("gratin", 30)),
              ElementsAre("kOvenTemperature: gratin (with loaf) at 30 by 5"));
}

TEST(OvenTemperatureRuleTest, AnElasticStayHasItsSetpointToItsEnd) {
  ProblemBuilder kitchen = kitchenWithDial();
  kitchen.step("braise").lasting(30, 40, 60).in("oven", 170);
  kitchen.step("loaf").lasting(40).in("oven", 240);
  const Problem problem = kitchen.build();
  const auto plan = [&](Minute end) {
    return breaches(problem, ScheduleBuilder(problem).put("braise", 0).until("braise", end).put("loaf", 65));
  };
  EXPECT_THAT(plan(50), IsEmpty());
  EXPECT_THAT(plan(55), ElementsAre("kOvenTemperature: loaf (with braise) at 65 by 5"));
}

TEST(OvenTemperatureRuleTest, AShortUseBetweenDoesNotHideALongerChange) {
  ProblemBuilder kitchen = kitchenWithDial();
  kitchen.problem().ovens[0].change[3][1] = 40;  // 240 to 170, by way of 200 no sooner
  kitchen.problem().ovens[0].change[3][2] = 20;
  kitchen.problem().ovens[0].change[2][1] = 20;
  kitchen.step("loaf").lasting(40).in("oven", {{240, 35}, {200, 5}});
  kitchen.step("roast").lasting(60).in("oven", 170);
  const Problem problem = kitchen.build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("loaf", 0).put("roast", 75)), IsEmpty());
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("loaf", 0).put("roast", 65)),
              ElementsAre("kOvenTemperature: roast (with loaf) at 65 by 10"));
}

TEST(OvenTemperatureRuleTest, ABreachNamesBothLoadsAndTheOven) {
  ProblemBuilder kitchen = kitchenWithDial();
  kitchen.oven("small oven", {170, 240}, {.changeMinutes = 15});
  kitchen.step("roast").lasting(60).in("small oven", 170);
  kitchen.step("loaf").lasting(40).in("small oven", 240);
  const Problem problem = kitchen.build();
  const auto plan = ScheduleBuilder(problem).put("roast", 0).put("loaf", 66);
  EXPECT_THAT(wholeBreaches(problem, plan), ElementsAre(Breach{Rule::kOvenTemperature, 1, 0, 1, 66, 9}));
  EXPECT_THAT(breaches(problem, ScheduleBuilder(plan).without("supper")), IsEmpty());
}

}  // namespace
}  // namespace suppertide::planning
