// Rule 5: everything stands on racks that exist, in an oven that is open.
#include "tests/planning/rules/breaches.h"

namespace suppertide::planning {
namespace {

// One oven with two racks; any change of setpoint takes 15 minutes.
ProblemBuilder kitchenWithOven() {
  ProblemBuilder kitchen(400);
  kitchen.oven("oven", {28, 170, 200, 240}, {.racks = 2, .changeMinutes = 15});
  kitchen.dish("supper", {.serve = 400});
  return kitchen;
}

TEST(OvenRacksRuleTest, AllInItStandOnRacksThatExist) {
  ProblemBuilder kitchen = kitchenWithOven();
  kitchen.step("roast").lasting(60).in("oven", 170, 2);
  kitchen.step("gratin").lasting(30).in("oven", 170, 1);
  const Problem problem = kitchen.build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("roast", 0).put("gratin", 60)), IsEmpty());
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("roast", 0).put("gratin", 52)),
              ElementsAre("kOvenRacks: gratin at 52 by 8"));
}

TEST(OvenRacksRuleTest, NothingStandsInAClosedOven) {
  ProblemBuilder kitchen = kitchenWithOven();
  kitchen.problem().ovens[0].closed = {{100, 130}};
  kitchen.step("roast").lasting(60).in("oven", 170);
  const Problem problem = kitchen.build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("roast", 40)), IsEmpty());
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("roast", 130)), IsEmpty());
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("roast", 45)),
              ElementsAre("kOvenRacks: roast at 100 by 5"));
}

TEST(OvenRacksRuleTest, ABreachNamesTheLoadThatCameLastAndTheOven) {
  ProblemBuilder kitchen = kitchenWithOven();
  kitchen.oven("small oven", {170}, {.racks = 1});
  kitchen.step("roast").lasting(60).in("small oven", 170);
  kitchen.dish("side", {.serve = 400});
  kitchen.step("gratin").lasting(30).in("small oven", 170);
  const Problem problem = kitchen.build();
  const auto plan = ScheduleBuilder(problem).put("roast", 0).put("gratin", 52);
  EXPECT_THAT(wholeBreaches(problem, plan), ElementsAre(Breach{Rule::kOvenRacks, 1, -1, 1, 52, 8}));
  EXPECT_THAT(breaches(problem, ScheduleBuilder(plan).without("side")), IsEmpty());
}

}  // namespace
}  // namespace suppertide::planning
