// Rule 1: order and gaps, bounds, lengths.
#include "tests/planning/rules/breaches.h"

namespace suppertide::planning {
namespace {

// Two waits of ten minutes, one after the other, in one dish served at 100.
ProblemBuilder twoSteps() {
  ProblemBuilder kitchen(200);
  kitchen.dish("stew", {.serve = 100});
  kitchen.step("soak").lasting(10).kind(StepKind::kWait);
  kitchen.step("rest").lasting(10).kind(StepKind::kWait);
  return kitchen;
}

TEST(GapRuleTest, AnOrderIsBrokenByTheMinutesThatAreMissing) {
  ProblemBuilder kitchen = twoSteps();
  kitchen.gap("soak", Edge::kEnd, "rest", Edge::kStart, 5);
  const Problem problem = kitchen.build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("soak", 20).put("rest", 35)), IsEmpty());
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("soak", 20).put("rest", 32)),
              ElementsAre("kGap: rest (with soak) at 32 by 3"));
}

TEST(GapRuleTest, AMostGapIsBrokenFromItsLastMinuteOn) {
  ProblemBuilder kitchen = twoSteps();
  kitchen.gap("soak", Edge::kEnd, "rest", Edge::kStart, 0, 15);
  const Problem problem = kitchen.build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("soak", 20).put("rest", 45)), IsEmpty());
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("soak", 20).put("rest", 50)),
              ElementsAre("kGap: rest (with soak) at 45 by 5"));
}

TEST(GapRuleTest, GapsMeasureBetweenTheEdgesTheyName) {
  ProblemBuilder kitchen = twoSteps();
  kitchen.gap("soak", Edge::kStart, "rest", Edge::kEnd, 30, 30);
  const Problem problem = kitchen.build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("soak", 20).put("rest", 40)), IsEmpty());
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("soak", 20).put("rest", 39)),
              ElementsAre("kGap: rest (with soak) at 49 by 1"));
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("soak", 20).put("rest", 41)),
              ElementsAre("kGap: rest (with soak) at 50 by 1"));
}

TEST(GapRuleTest, GapsOfUnservedDishesAreNotLookedAt) {
  ProblemBuilder kitchen = twoSteps();
  kitchen.dish("salad", {.serve = 100});
  kitchen.step("wash").lasting(10).after("rest", 0, 5);
  const Problem problem = kitchen.build();
  const auto plan = ScheduleBuilder(problem).put("soak", 0).put("rest", 90).put("wash", 20);
  EXPECT_THAT(breaches(problem, plan), ElementsAre("kGap: wash (with rest) at 20 by 80"));
  EXPECT_THAT(breaches(problem, ScheduleBuilder(plan).without("salad")), IsEmpty());
}

TEST(GapRuleTest, StepsStayOnTheAxis) {
  ProblemBuilder kitchen(100);
  kitchen.dish("stew", {.serve = 100, .lateLimit = kNoLimit});
  kitchen.step("rest").lasting(10);
  const Problem problem = kitchen.build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("rest", 0)), IsEmpty());
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("rest", 90)), IsEmpty());
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("rest", -2)),
              ElementsAre("kGap: rest at -2 by 2"));
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("rest", 93)),
              ElementsAre("kGap: rest at 100 by 3"));
}

TEST(GapRuleTest, EarliestBindsTheStartAndLatestTheEnd) {
  ProblemBuilder kitchen(200);
  kitchen.dish("stew", {.serve = 100});
  kitchen.step("rest").lasting(10).notBefore(30).notAfter(60);
  const Problem problem = kitchen.build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("rest", 30)), IsEmpty());
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("rest", 50)), IsEmpty());
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("rest", 26)),
              ElementsAre("kGap: rest at 26 by 4"));
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("rest", 56)),
              ElementsAre("kGap: rest at 60 by 6"));
}

TEST(GapRuleTest, LengthsStayInTheirRange) {
  ProblemBuilder kitchen(200);
  kitchen.dish("stew", {.serve = 100});
  kitchen.step("rest").lasting(10, 15, 20);
  const Problem problem = kitchen.build();
  const auto from20Until = [&](Minute end) {
    return breaches(problem, ScheduleBuilder(problem).put("rest", 20).until("rest", end));
  };
  EXPECT_THAT(from20Until(30), IsEmpty());
  EXPECT_THAT(from20Until(40), IsEmpty());
  EXPECT_THAT(from20Until(29), ElementsAre("kGap: rest at 29 by 1"));
  EXPECT_THAT(from20Until(41), ElementsAre("kGap: rest at 40 by 1"));
}

TEST(GapRuleTest, ABreachNamesBothSteps) {
  ProblemBuilder kitchen = twoSteps();
  kitchen.gap("soak", Edge::kEnd, "rest", Edge::kStart, 5);
  const Problem problem = kitchen.build();
  EXPECT_THAT(wholeBreaches(problem, ScheduleBuilder(problem).put("soak", 20).put("rest", 32)),
              ElementsAre(Breach{Rule::kGap, 1, 0, -1, 32, 3}));
}

TEST(GapRuleTest, BoundsAndLengthsOfUnservedDishesAreNotLookedAt) {
  ProblemBuilder kitchen(200);
  kitchen.dish("stew", {.serve = 100});
  kitchen.step("rest").lasting(10).notBefore(30).notAfter(60);
  const Problem problem = kitchen.build();
  const auto plan = ScheduleBuilder(problem).put("rest", 80).until("rest", 99);
  EXPECT_EQ(breaches(problem, plan).size(), 2u);
  EXPECT_THAT(breaches(problem, ScheduleBuilder(plan).without("stew")), IsEmpty());
}

}  // namespace
}  // namespace suppertide::planning
