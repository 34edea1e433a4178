// Rule 6: an oven with dough in it is not heated, and cools before dough enters.
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

TEST(OvenProofingRuleTest, DoughInTheOvenIsOutBeforeItHeats) {
  ProblemBuilder kitchen = kitchenWithOven();
  kitchen.step("proof").lasting(60).in("oven", 28).kind(StepKind::kFerment);
  kitchen.step("loaf").lasting(40).in("oven", 240);
  const Problem problem = kitchen.build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("proof", 0).put("loaf", 75)), IsEmpty());
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("proof", 0).put("loaf", 70)),
              ElementsAre("kOvenProofing: loaf (with proof) at 70 by 5"));
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("proof", 0).put("loaf", 30)),
              ElementsAre("kOvenProofing: loaf (with proof) at 30 by 212"));
}

TEST(OvenProofingRuleTest, AfterBakingTheOvenCoolsBeforeDoughEnters) {
  ProblemBuilder kitchen = kitchenWithOven();
  kitchen.problem().ovens[0].change[3][0] = 50;
  kitchen.step("loaf").lasting(40).in("oven", 240);
  kitchen.step("proof").lasting(60).in("oven", 28).kind(StepKind::kFerment);
  const Problem problem = kitchen.build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("loaf", 0).put("proof", 90)), IsEmpty());
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("loaf", 0).put("proof", 80)),
              ElementsAre("kOvenProofing: proof (with loaf) at 80 by 10"));
}

TEST(OvenProofingRuleTest, ABreachNamesBothLoadsAndTheOven) {
  ProblemBuilder kitchen = kitchenWithOven();
  kitchen.step("proof").lasting(60).in("oven", 28).kind(StepKind::kFerment);
  kitchen.step("loaf").lasting(40).in("oven", 240);
  const Problem problem = kitchen.build();
  const auto plan = ScheduleBuilder(problem).put("proof", 0).put("loaf", 70);
  EXPECT_THAT(wholeBreaches(problem, plan), ElementsAre(Breach{Rule::kOvenProofing, 1, 0, 0, 70, 5}));
  EXPECT_THAT(breaches(problem, ScheduleBuilder(plan).without("supper")), IsEmpty());
}

TEST(OvenProofingRuleTest, ALoadInTheWayOfTwoIsToldToEachRule) {
  ProblemBuilder kitchen = kitchenWithOven();
  kitchen.step("loaf").lasting(40).in("oven", 240);
  kitchen.step("proof").lasting(60).in("oven", 28).kind(StepKind::kFerment);
  kitchen.step("roast").lasting(60).in("oven", 170);
  const Problem problem = kitchen.build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("loaf", 0).put("proof", 60).put("roast", 110)),
              ElementsAre("kOvenProofing: roast (with proof) at 110 by 142"));
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("proof", 0).put("loaf", 65).put("roast", 110)),
              ElementsAre("kOvenProofing: loaf (with proof) at 65 by 10",
                          "kOvenTemperature: roast (with loaf) at 110 by 10"));
}

}  // namespace
}  // namespace suppertide::planning
