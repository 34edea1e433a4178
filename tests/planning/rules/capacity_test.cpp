// Rule 4: burners, pans, mixers, places, and what is used up.
#include "tests/planning/rules/breaches.h"

namespace suppertide::planning {
namespace {

TEST(CapacityRuleTest, EachPairInEachOthersWayIsABreachOfItsOwn) {
  ProblemBuilder kitchen(200);
  kitchen.resource("burners", 1);
  kitchen.dish("stew", {.serve = 200});
  kitchen.step("boil").lasting(20).using_("burners");
  kitchen.step("fry").lasting(20).using_("burners");
  kitchen.step("poach").lasting(60).using_("burners");
  const Problem problem = kitchen.build();
  EXPECT_THAT(
      breaches(problem, ScheduleBuilder(problem).put("poach", 10).put("boil", 20).put("fry", 40)),
      ElementsAre("kCapacity: boil (with poach) at 20 by 1", "kCapacity: fry (with poach) at 40 by 1"));
}

TEST(CapacityRuleTest, ThingsAreNeverOverTheirCapacity) {
  ProblemBuilder kitchen(200);
  kitchen.resource("burners", 3);
  kitchen.dish("stew", {.serve = 200});
  kitchen.step("boil").lasting(30).using_("burners", 2);
  kitchen.step("fry").lasting(30).using_("burners", 2);
  const Problem problem = kitchen.build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("boil", 0).put("fry", 30)), IsEmpty());
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("boil", 0).put("fry", 25)),
              ElementsAre("kCapacity: fry (with boil) at 25 by 1"));
}

TEST(CapacityRuleTest, WhatOthersTookIsNotThere) {
  ProblemBuilder kitchen(200);
  const int burners = kitchen.resource("burners", 3);
  kitchen.problem().resources[static_cast<std::size_t>(burners)].taken = {{{50, 80}, 2}};
  kitchen.dish("stew", {.serve = 200});
  kitchen.step("boil").lasting(30).using_("burners", 2);
  const Problem problem = kitchen.build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("boil", 20)), IsEmpty());
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("boil", 80)), IsEmpty());
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("boil", 40)),
              ElementsAre("kCapacity: boil at 50 by 1"));
}

TEST(CapacityRuleTest, StepsWithoutLengthTakeNothing) {
  ProblemBuilder kitchen(200);
  kitchen.resource("burners", 1);
  kitchen.dish("stew", {.serve = 200});
  kitchen.step("boil").lasting(30).using_("burners");
  kitchen.step("hold").lasting(0, 0, 30).using_("burners");
  const Problem problem = kitchen.build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("boil", 0).put("hold", 10)), IsEmpty());
}

TEST(CapacityRuleTest, UnservedDishesUseNothing) {
  ProblemBuilder kitchen(200);
  kitchen.resource("burners", 1);
  kitchen.dish("stew", {.serve = 200});
  kitchen.step("boil").lasting(30).using_("burners");
  kitchen.dish("eggs", {.serve = 200});
  kitchen.step("fry").lasting(30).using_("burners");
  const Problem problem = kitchen.build();
  const auto plan = ScheduleBuilder(problem).put("boil", 0).put("fry", 0);
  EXPECT_EQ(breaches(problem, plan).size(), 1u);
  EXPECT_THAT(breaches(problem, ScheduleBuilder(plan).without("stew")), IsEmpty());
}

TEST(CapacityRuleTest, ABreachNamesTheThing) {
  ProblemBuilder kitchen(200);
  kitchen.resource("mixer", 1);
  kitchen.resource("burners", 3);
  kitchen.dish("stew", {.serve = 200});
  kitchen.step("boil").lasting(30).using_("burners", 2);
  kitchen.step("fry").lasting(30).using_("burners", 2);
  const Problem problem = kitchen.build();
  EXPECT_THAT(wholeBreaches(problem, ScheduleBuilder(problem).put("boil", 0).put("fry", 25)),
              ElementsAre(Breach{Rule::kCapacity, 1, 0, 1, 25, 1}));
}

// Ten eggs; those of the third dish are one too many.
ProblemBuilder eggs() {
  ProblemBuilder kitchen(200);
  kitchen.stock("eggs", 10);
  kitchen.dish("cake", {.serve = 200});
  kitchen.step("beat").lasting(10).using_("eggs", 4);
  kitchen.dish("pasta", {.serve = 200});
  kitchen.step("knead").lasting(10).using_("eggs", 4);
  kitchen.dish("glaze", {.serve = 200});
  kitchen.step("brush").lasting(10).using_("eggs", 3);
  return kitchen;
}

TEST(CapacityRuleTest, WhatIsUsedUpIsNotGivenBack) {
  const Problem problem = eggs().build();
  const auto plan = ScheduleBuilder(problem).put("beat", 50).put("knead", 100).put("brush", 0);
  EXPECT_THAT(wholeBreaches(problem, plan), ElementsAre(Breach{Rule::kCapacity, 1, 0, 0, 100, 1}));
  EXPECT_THAT(breaches(problem, ScheduleBuilder(plan).without("glaze")), IsEmpty());
  EXPECT_THAT(breaches(problem, ScheduleBuilder(plan).without("cake")), IsEmpty());
}

TEST(CapacityRuleTest, WhatOthersUseUpIsGoneAtAnyTime) {
  ProblemBuilder kitchen = eggs();
  kitchen.problem().resources[0].taken = {{{0, 1}, 2}, {{190, 200}, 1}};
  const Problem problem = kitchen.build();
  const auto plan = ScheduleBuilder(problem).put("beat", 50).put("knead", 100).without("glaze");
  EXPECT_THAT(breaches(problem, plan), ElementsAre("kCapacity: knead (with beat) at 100 by 1"));
}

TEST(CapacityRuleTest, AStepWithoutLengthUsesNothingUp) {
  ProblemBuilder kitchen = eggs();
  kitchen.problem().steps[2].modes[0].length = LengthTable::range(0, 0, 10);
  const Problem problem = kitchen.build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("beat", 50).put("knead", 100).put("brush", 0)),
              IsEmpty());
}

}  // namespace
}  // namespace suppertide::planning
