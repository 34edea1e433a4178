// Rule 2: ready in time, and held no longer than it may be.
#include "tests/planning/rules/breaches.h"

namespace suppertide::planning {
namespace {

TEST(ServingRuleTest, ADishIsReadyInItsWindow) {
  ProblemBuilder kitchen(300);
  kitchen.dish("stew", {.serve = 100, .holdLimit = 30, .lateLimit = 10});
  kitchen.step("rest").lasting(10);
  const Problem problem = kitchen.build();
  const auto readyAt = [&](Minute end) {
    return breaches(problem, ScheduleBuilder(problem).put("rest", end - 10));
  };
  EXPECT_THAT(readyAt(70), IsEmpty());
  EXPECT_THAT(readyAt(110), IsEmpty());
  EXPECT_THAT(readyAt(69), ElementsAre("kServing: rest at 69 by 1"));
  EXPECT_THAT(readyAt(112), ElementsAre("kServing: rest at 110 by 2"));
}

TEST(ServingRuleTest, ABreachNamesTheLastStepAndTheDish) {
  ProblemBuilder kitchen(300);
  kitchen.dish("soup", {.serve = 100});
  kitchen.step("boil").lasting(10);
  kitchen.dish("stew", {.serve = 100, .lateLimit = 10});
  kitchen.step("chop").lasting(10);
  kitchen.step("rest").lasting(10);
  const Problem problem = kitchen.build();
  const auto plan = ScheduleBuilder(problem).put("boil", 20).put("chop", 150).put("rest", 105);
  EXPECT_THAT(wholeBreaches(problem, plan), ElementsAre(Breach{Rule::kServing, 2, -1, 1, 110, 5}));
  EXPECT_THAT(breaches(problem, ScheduleBuilder(plan).without("stew")), IsEmpty());
}

}  // namespace
}  // namespace suppertide::planning
