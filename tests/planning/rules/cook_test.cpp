// Rule 3: a cook who is there, able, and has attention left.
#include "tests/planning/rules/breaches.h"

namespace suppertide::planning {
namespace {

// Ana may stir and whisk, Ben may only whisk; he comes at 50.
ProblemBuilder twoCooks() {
  ProblemBuilder kitchen(200);
  kitchen.cook("Ana");
  kitchen.cook("Ben", 50, 200);
  kitchen.dish("sauce", {.serve = 200});
  kitchen.step("stir").lasting(20).by({"Ana"}, 60);
  kitchen.step("whisk").lasting(20).by({"Ana", "Ben"}, 50);
  return kitchen;
}

TEST(CookRuleTest, AttentionNeverSumsAboveAll) {
  const Problem problem = twoCooks().build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("stir", 60, "Ana").put("whisk", 80, "Ana")),
              IsEmpty());
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("stir", 60, "Ana").put("whisk", 79, "Ana")),
              ElementsAre("kCook: whisk (with stir) at 79 by 10"));
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("stir", 60, "Ana").put("whisk", 60, "Ben")),
              IsEmpty());
}

TEST(CookRuleTest, AttentionThatAddsUpToAllIsNotTooMuch) {
  ProblemBuilder kitchen = twoCooks();
  kitchen.problem().steps[0].modes[0].attention = 50;
  const Problem problem = kitchen.build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("stir", 60, "Ana").put("whisk", 60, "Ana")),
              IsEmpty());
}

TEST(CookRuleTest, ACookIsThereAllThrough) {
  const Problem problem = twoCooks().build();
  const auto benFrom = [&](Minute start) {
    return breaches(problem, ScheduleBuilder(problem).put("stir", 0, "Ana").put("whisk", start, "Ben"));
  };
  EXPECT_THAT(benFrom(50), IsEmpty());
  EXPECT_THAT(benFrom(43), ElementsAre("kCook: whisk at 43 by 7"));
}

TEST(CookRuleTest, ACookMayLeaveAndComeBackBetweenSteps) {
  ProblemBuilder kitchen = twoCooks();
  kitchen.problem().cooks[0].available = {{0, 20}, {40, 60}, {60, 200}};
  const Problem problem = kitchen.build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("stir", 0, "Ana").put("whisk", 50, "Ana")),
              IsEmpty());
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("stir", 10, "Ana").put("whisk", 50, "Ana")),
              ElementsAre("kCook: stir at 20 by 10"));
}

TEST(CookRuleTest, OnlyThoseWhoMayDoItDoIt) {
  const Problem problem = twoCooks().build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("stir", 60, "Ben").put("whisk", 80, "Ben")),
              ElementsAre("kCook: stir at 60 by 1"));
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("stir", 60).put("whisk", 80, "Ben")),
              ElementsAre("kCook: stir at 60 by 1"));
}

TEST(CookRuleTest, AStepWithoutAttentionAsksNothingOfWhoIsNamed) {
  ProblemBuilder kitchen = twoCooks();
  kitchen.problem().steps[1].modes[0].attention = 0;
  const Problem problem = kitchen.build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("stir", 20, "Ana").put("whisk", 20, "Ben")),
              IsEmpty());
}

TEST(CookRuleTest, ABreachNamesTheCook) {
  const Problem problem = twoCooks().build();
  EXPECT_THAT(wholeBreaches(problem, ScheduleBuilder(problem).put("stir", 0, "Ana").put("whisk", 43, "Ben")),
              ElementsAre(Breach{Rule::kCook, 1, -1, 1, 43, 7}));
  EXPECT_THAT(wholeBreaches(problem, ScheduleBuilder(problem).put("stir", 60, "Ana").put("whisk", 79, "Ana")),
              ElementsAre(Breach{Rule::kCook, 1, 0, 0, 79, 10}));
  EXPECT_THAT(wholeBreaches(problem, ScheduleBuilder(problem).put("stir", 60).put("whisk", 80, "Ana")),
              ElementsAre(Breach{Rule::kCook, 0, -1, -1, 60, 1}));
}

TEST(CookRuleTest, UnservedDishesNeedNobody) {
  const Problem problem = twoCooks().build();
  const auto plan = ScheduleBuilder(problem).put("stir", 60, "Ben").put("whisk", 60, "Ben");
  EXPECT_EQ(breaches(problem, plan).size(), 2u);
  EXPECT_THAT(breaches(problem, ScheduleBuilder(plan).without("sauce")), IsEmpty());
}

}  // namespace
}  // namespace suppertide::planning
