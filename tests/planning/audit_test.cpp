// Each rule by its own verifier: a schedule that breaks exactly this rule, and one that just keeps it.
#include "server/planning/audit/audit.h"

#include "gmock/gmock.h"
#include "gtest/gtest.h"
#include "tests/support/breach_text.h"
#include "tests/support/problem_builder.h"

namespace suppertide::planning {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

std::vector<std::string> breaches(const Problem& problem, const ScheduleBuilder& schedule) {
  return breachTexts(problem, schedule.done());
}

// Two waits of ten minutes, one after the other, in one dish served at 100.
ProblemBuilder twoSteps() {
  ProblemBuilder kitchen(200);
  kitchen.dish("stew", {.serve = 100});
  kitchen.step("soak").lasting(10).kind(StepKind::kWait);
  kitchen.step("rest").lasting(10).kind(StepKind::kWait);
  return kitchen;
}

TEST(AuditGapTest, AnOrderIsBrokenByTheMinutesThatAreMissing) {
  ProblemBuilder kitchen = twoSteps();
  kitchen.gap("soak", Edge::kEnd, "rest", Edge::kStart, 5);
  const Problem problem = kitchen.build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("soak", 20).put("rest", 35)), IsEmpty());
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("soak", 20).put("rest", 32)),
              ElementsAre("kGap: rest (with soak) at 32 by 3"));
}

TEST(AuditGapTest, AMostGapIsBrokenFromItsLastMinuteOn) {
  ProblemBuilder kitchen = twoSteps();
  kitchen.gap("soak", Edge::kEnd, "rest", Edge::kStart, 0, 15);
  const Problem problem = kitchen.build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("soak", 20).put("rest", 45)), IsEmpty());
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("soak", 20).put("rest", 50)),
              ElementsAre("kGap: rest (with soak) at 45 by 5"));
}

TEST(AuditGapTest, GapsMeasureBetweenTheEdgesTheyName) {
  ProblemBuilder kitchen = twoSteps();
  kitchen.gap("soak", Edge::kStart, "rest", Edge::kEnd, 30, 30);
  const Problem problem = kitchen.build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("soak", 20).put("rest", 40)), IsEmpty());
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("soak", 20).put("rest", 39)),
              ElementsAre("kGap: rest (with soak) at 49 by 1"));
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("soak", 20).put("rest", 41)),
              ElementsAre("kGap: rest (with soak) at 50 by 1"));
}

TEST(AuditGapTest, GapsOfUnservedDishesAreNotLookedAt) {
  ProblemBuilder kitchen = twoSteps();
  kitchen.dish("salad", {.serve = 100});
  kitchen.step("wash").lasting(10).after("rest", 0, 5);
  const Problem problem = kitchen.build();
  const auto plan = ScheduleBuilder(problem).put("soak", 0).put("rest", 90).put("wash", 20);
  EXPECT_THAT(breaches(problem, plan), ElementsAre("kGap: wash (with rest) at 20 by 80"));
  EXPECT_THAT(breaches(problem, ScheduleBuilder(plan).without("salad")), IsEmpty());
}

TEST(AuditBoundsTest, StepsStayOnTheAxis) {
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

TEST(AuditBoundsTest, EarliestBindsTheStartAndLatestTheEnd) {
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

TEST(AuditBoundsTest, LengthsStayInTheirRange) {
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

TEST(AuditReadinessTest, AFermentEndsInTheWindowOfItsStart) {
  ProblemBuilder kitchen(300);
  kitchen.dish("loaf", {.serve = 300});
  kitchen.step("proof").kind(StepKind::kFerment).lasting({0, 60, {{90, 100, 120}, {60, 70, 80}}});
  const Problem problem = kitchen.build();
  const auto proof = [&](Minute start, Minute end) {
    return breaches(problem, ScheduleBuilder(problem).put("proof", start).until("proof", end));
  };
  EXPECT_THAT(proof(59, 149), IsEmpty());
  EXPECT_THAT(proof(60, 140), IsEmpty());
  EXPECT_THAT(proof(59, 139), ElementsAre("kReadiness: proof at 139 by 10"));
  EXPECT_THAT(proof(60, 149), ElementsAre("kReadiness: proof at 140 by 9"));
}

TEST(AuditReadinessTest, AFermentCannotStartWhereItNeverGetsReady) {
  ProblemBuilder kitchen(300);
  kitchen.dish("loaf", {.serve = 300});
  kitchen.step("proof").kind(StepKind::kFerment).lasting({0, 60, {{90, 100, 120}, {1, 1, 0}}});
  const Problem problem = kitchen.build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("proof", 60).until("proof", 150)),
              ElementsAre("kReadiness: proof at 60 by 90"));
}

TEST(AuditServingTest, ADishIsReadyInItsWindow) {
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

TEST(AuditCookTest, AttentionNeverSumsAboveAll) {
  const Problem problem = twoCooks().build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("stir", 60, "Ana").put("whisk", 80, "Ana")),
              IsEmpty());
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("stir", 60, "Ana").put("whisk", 79, "Ana")),
              ElementsAre("kCook: whisk (with stir) at 79 by 10"));
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("stir", 60, "Ana").put("whisk", 60, "Ben")),
              IsEmpty());
}

TEST(AuditCookTest, AttentionThatAddsUpToAllIsNotTooMuch) {
  ProblemBuilder kitchen = twoCooks();
  kitchen.problem().steps[0].modes[0].attention = 50;
  const Problem problem = kitchen.build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("stir", 60, "Ana").put("whisk", 60, "Ana")),
              IsEmpty());
}

TEST(AuditCookTest, ACookIsThereAllThrough) {
  const Problem problem = twoCooks().build();
  const auto benFrom = [&](Minute start) {
    return breaches(problem, ScheduleBuilder(problem).put("stir", 0, "Ana").put("whisk", start, "Ben"));
  };
  EXPECT_THAT(benFrom(50), IsEmpty());
  EXPECT_THAT(benFrom(43), ElementsAre("kCook: whisk at 43 by 7"));
}

TEST(AuditCookTest, ACookMayLeaveAndComeBackBetweenSteps) {
  ProblemBuilder kitchen = twoCooks();
  kitchen.problem().cooks[0].available = {{0, 20}, {40, 60}, {60, 200}};
  const Problem problem = kitchen.build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("stir", 0, "Ana").put("whisk", 50, "Ana")),
              IsEmpty());
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("stir", 10, "Ana").put("whisk", 50, "Ana")),
              ElementsAre("kCook: stir at 20 by 10"));
}

TEST(AuditCookTest, OnlyThoseWhoMayDoItDoIt) {
  const Problem problem = twoCooks().build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("stir", 60, "Ben").put("whisk", 80, "Ben")),
              ElementsAre("kCook: stir at 60 by 1"));
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("stir", 60).put("whisk", 80, "Ben")),
              ElementsAre("kCook: stir at 60 by 1"));
}

TEST(AuditCookTest, AStepWithoutAttentionAsksNothingOfWhoIsNamed) {
  ProblemBuilder kitchen = twoCooks();
  kitchen.problem().steps[1].modes[0].attention = 0;
  const Problem problem = kitchen.build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("stir", 20, "Ana").put("whisk", 20, "Ben")),
              IsEmpty());
}

TEST(AuditCapacityTest, EachPairInEachOthersWayIsABreachOfItsOwn) {
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

TEST(AuditCapacityTest, ThingsAreNeverOverTheirCapacity) {
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

TEST(AuditCapacityTest, WhatOthersTookIsNotThere) {
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

TEST(AuditCapacityTest, StepsWithoutLengthTakeNothing) {
  ProblemBuilder kitchen(200);
  kitchen.resource("burners", 1);
  kitchen.dish("stew", {.serve = 200});
  kitchen.step("boil").lasting(30).using_("burners");
  kitchen.step("hold").lasting(0, 0, 30).using_("burners");
  const Problem problem = kitchen.build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("boil", 0).put("hold", 10)), IsEmpty());
}

TEST(AuditCapacityTest, UnservedDishesUseNothing) {
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

TEST(AuditPinTest, EachPinnedPartIsKept) {
  ProblemBuilder kitchen = twoCooks();
  kitchen.step("plate").lasting(10, 10, 20).by({"Ana", "Ben"}).orMode("on a board").lasting(10).by({"Ana"});
  kitchen.problem().steps[2].pin = {.start = 100, .end = 110, .mode = 0, .cook = 1};
  const Problem problem = kitchen.build();
  const auto plan = [&](Minute start, Minute end, const char* cook, int mode) {
    return breaches(problem, ScheduleBuilder(problem)
                                 .put("stir", 0, "Ana")
                                 .put("whisk", 60, "Ana")
                                 .put("plate", start, cook, mode)
                                 .until("plate", end));
  };
  EXPECT_THAT(plan(100, 110, "Ben", 0), IsEmpty());
  EXPECT_THAT(plan(97, 110, "Ben", 0), ElementsAre("kPinned: plate at 100 by 3"));
  EXPECT_THAT(plan(100, 112, "Ben", 0), ElementsAre("kPinned: plate at 110 by 2"));
  EXPECT_THAT(plan(100, 110, "Ana", 0), ElementsAre("kPinned: plate at 100 by 1"));
  EXPECT_THAT(plan(100, 110, "Ana", 1),
              ElementsAre("kPinned: plate at 100 by 1", "kPinned: plate at 100 by 1"));
}

TEST(AuditModeLinkTest, AModeGetsTheOtherModeItAsksFor) {
  ProblemBuilder kitchen(200);
  kitchen.dish("loaf", {.serve = 200});
  kitchen.step("bulk").lasting(30).orMode("warm").lasting(20);
  kitchen.step("proof").lasting(30).linkedTo("bulk", {0}).orMode("fridge").lasting(60);
  const Problem problem = kitchen.build();
  const auto modes = [&](int bulk, int proof) {
    return breaches(problem, ScheduleBuilder(problem).put("bulk", 0, "", bulk).put("proof", 40, "", proof));
  };
  EXPECT_THAT(modes(0, 0), IsEmpty());
  EXPECT_THAT(modes(1, 1), IsEmpty());
  EXPECT_THAT(modes(1, 0), ElementsAre("kModeLink: proof (with bulk) at 40 by 1"));
}

TEST(AuditModeLinkTest, AModeThatIsNotThereIsReported) {
  const Problem problem = twoSteps().build();
  Schedule schedule = ScheduleBuilder(problem).put("soak", 0).put("rest", 30).done();
  schedule.steps[0].mode = 5;
  EXPECT_THAT(breachTexts(problem, schedule), ElementsAre("kModeLink: soak at 0 by 1"));
}

TEST(AuditTest, BreachesComeInTheOrderOfTheirMinutes) {
  ProblemBuilder kitchen(200);
  kitchen.resource("burners", 1);
  kitchen.dish("stew", {.serve = 100});
  kitchen.step("boil").lasting(30).using_("burners");
  kitchen.step("fry").lasting(30).using_("burners").notBefore(60);
  const Problem problem = kitchen.build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("boil", 60).put("fry", 50)),
              ElementsAre("kGap: fry at 50 by 10", "kCapacity: boil (with fry) at 60 by 1"));
}

}  // namespace
}  // namespace suppertide::planning
