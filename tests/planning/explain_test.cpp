#include "server/planning/explain/explain.h"

#include <memory>

#include "gmock/gmock.h"
#include "gtest/gtest.h"
#include "tests/support/breach_text.h"
#include "tests/support/problem_builder.h"

namespace suppertide::planning {
namespace {

using ::testing::IsEmpty;

StepNote noteOn(const Problem& problem, const ScheduleBuilder& schedule, const char* step) {
  EXPECT_THAT(breachTexts(problem, schedule.done()), IsEmpty());
  return explain(problem, schedule.done())[static_cast<std::size_t>(stepIndex(problem, step))];
}

// Waiting costs one a minute, so a dish wants to be ready when it is served.
CostCurve freshness() {
  return {{{0, 0}, {300, 300}}};
}

// Soup and salad, each one step by hand, both served at 200.
ProblemBuilder soupAndSalad() {
  ProblemBuilder kitchen(400);
  kitchen.cook("Ana");
  kitchen.cook("Ben");
  kitchen.resource("burner", 1);
  kitchen.dish("soup", {.serve = 200});
  kitchen.step("stir").lasting(20).by({"Ana", "Ben"}).using_("burner");
  kitchen.dish("salad", {.serve = 200});
  kitchen.step("toss").lasting(20).by({"Ana", "Ben"});
  for (Dish& dish : kitchen.problem().dishes) dish.waitCost = freshness();
  return kitchen;
}

TEST(ReasonTest, AStepThatEndsWhenItIsServedIsThereForServing) {
  const Problem problem = soupAndSalad().build();
  const Reason reason =
      noteOn(problem, ScheduleBuilder(problem).put("stir", 180, "Ana").put("toss", 180, "Ben"), "stir")
          .reason;
  EXPECT_EQ(reason.cause, Cause::kServing);
  EXPECT_EQ(reason.blockingStep, -1);
}

TEST(ReasonTest, ABusyCookIsNamedWithTheStepInTheWay) {
  const Problem problem = soupAndSalad().build();
  const Reason reason =
      noteOn(problem, ScheduleBuilder(problem).put("stir", 155, "Ana").put("toss", 175, "Ana"), "stir")
          .reason;
  EXPECT_EQ(reason.cause, Cause::kCookBusy);
  EXPECT_EQ(reason.blockingStep, stepIndex(problem, "toss"));
  EXPECT_EQ(reason.thing, cookIndex(problem, "Ana"));
  EXPECT_EQ(reason.room, 25) << "without the salad it could move until it is served";
}

TEST(ReasonTest, ACookWhoLeavesIsTheReason) {
  ProblemBuilder kitchen = soupAndSalad();
  kitchen.problem().cooks[0].available = {{0, 170}};
  const Problem problem = kitchen.build();
  const Reason reason =
      noteOn(problem, ScheduleBuilder(problem).put("stir", 150, "Ana").put("toss", 180, "Ben"), "stir")
          .reason;
  EXPECT_EQ(reason.cause, Cause::kCookAway);
  EXPECT_EQ(reason.thing, cookIndex(problem, "Ana"));
}

TEST(ReasonTest, AThingInUseIsTheReason) {
  ProblemBuilder kitchen = soupAndSalad();
  kitchen.problem().steps[1].modes[0].uses = {{0, 1}};
  const Problem problem = kitchen.build();
  const Reason reason =
      noteOn(problem, ScheduleBuilder(problem).put("stir", 158, "Ana").put("toss", 178, "Ben"), "stir")
          .reason;
  EXPECT_EQ(reason.cause, Cause::kThingBusy);
  EXPECT_EQ(reason.blockingStep, stepIndex(problem, "toss"));
  EXPECT_EQ(reason.thing, resourceIndex(problem, "burner"));
}

TEST(ReasonTest, WhatOthersTookIsAThingInUseByNoStep) {
  ProblemBuilder kitchen = soupAndSalad();
  kitchen.problem().resources[0].taken = {{{170, 300}, 1}};
  const Problem problem = kitchen.build();
  const Reason reason =
      noteOn(problem, ScheduleBuilder(problem).put("stir", 150, "Ana").put("toss", 180, "Ben"), "stir")
          .reason;
  EXPECT_EQ(reason.cause, Cause::kThingBusy);
  EXPECT_EQ(reason.blockingStep, -1);
}

TEST(ReasonTest, APinnedStepSaysSo) {
  ProblemBuilder kitchen = soupAndSalad();
  kitchen.problem().steps[0].pin.start = 100;
  const Problem problem = kitchen.build();
  const Reason reason =
      noteOn(problem, ScheduleBuilder(problem).put("stir", 100, "Ana").put("toss", 180, "Ben"), "stir")
          .reason;
  EXPECT_EQ(reason.cause, Cause::kPinned);
}

TEST(ReasonTest, AStepThatNothingPushesLiesAtItsBest) {
  ProblemBuilder kitchen = soupAndSalad();
  kitchen.problem().cooks[0].unsocial = {{{0, 100}, 1}, {{120, 400}, 1}};
  kitchen.problem().dishes[0].waitCost = {};
  const Problem problem = kitchen.build();
  const Reason reason =
      noteOn(problem, ScheduleBuilder(problem).put("stir", 100, "Ana").put("toss", 180, "Ben"), "stir")
          .reason;
  EXPECT_EQ(reason.cause, Cause::kBest);
}

TEST(ReasonTest, AStepRightAfterAnotherFollowsIt) {
  ProblemBuilder kitchen = soupAndSalad();
  kitchen.dish("eggs", {.serve = 300});
  kitchen.step("boil").lasting(10);
  kitchen.step("cool").lasting(10).after("boil", 5, 20);
  const Problem problem = kitchen.build();
  const auto plan = ScheduleBuilder(problem)
                        .put("stir", 180, "Ana")
                        .put("toss", 180, "Ben")
                        .put("boil", 100)
                        .put("cool", 115);
  const Reason follows = noteOn(problem, plan, "cool").reason;
  EXPECT_EQ(follows.cause, Cause::kFollows);
  EXPECT_EQ(follows.blockingStep, stepIndex(problem, "boil"));
  const Reason limited = noteOn(problem, ScheduleBuilder(plan).put("cool", 130), "cool").reason;
  EXPECT_EQ(limited.cause, Cause::kMustFollow);
  EXPECT_EQ(limited.blockingStep, stepIndex(problem, "boil"));
}

TEST(ReasonTest, AStepThatTouchesNothingHasRoom) {
  ProblemBuilder kitchen(400);
  kitchen.dish("eggs", {.serve = 300});
  kitchen.step("boil").lasting(10);
  kitchen.step("cool").lasting(10).after("boil", 5, 20);
  const Problem problem = kitchen.build();
  const Reason reason =
      noteOn(problem, ScheduleBuilder(problem).put("boil", 100).put("cool", 116), "cool").reason;
  EXPECT_EQ(reason.cause, Cause::kBest);
  EXPECT_EQ(reason.room, 1);
}

TEST(ReasonTest, AFermentIsHeldByItsWindow) {
  ProblemBuilder kitchen(400);
  kitchen.dish("loaf", {.serve = 300});
  kitchen.step("proof").kind(StepKind::kFerment).lasting(60, 90, 100).quality(0, 1, 0);
  kitchen.problem().dishes[0].waitCost = freshness();
  const Problem problem = kitchen.build();
  const Reason reason =
      noteOn(problem, ScheduleBuilder(problem).put("proof", 0).until("proof", 100), "proof").reason;
  EXPECT_EQ(reason.cause, Cause::kReadiness);
}

TEST(ReasonTest, AFoodSafetyClockThatWouldRunOverIsNamed) {
  ProblemBuilder kitchen(400);
  kitchen.dish("trout", {.serve = 300});
  kitchen.step("slice").kind(StepKind::kWait).lasting(10);
  kitchen.step("plate").kind(StepKind::kWait).lasting(10);
  kitchen.problem().dishes[0].waitCost = freshness();
  kitchen.gap("slice", Edge::kEnd, "plate", Edge::kStart, 0);
  kitchen.clock("room", 60, {{.from = "slice", .fromEdge = Edge::kEnd, .to = "plate", .toEdge = Edge::kEnd}});
  const Problem problem = kitchen.build();
  const Reason reason =
      noteOn(problem, ScheduleBuilder(problem).put("slice", 100).put("plate", 160), "plate").reason;
  EXPECT_EQ(reason.cause, Cause::kFoodSafety);
  EXPECT_EQ(reason.thing, 0);
  EXPECT_EQ(reason.blockingStep, stepIndex(problem, "slice"));
}

TEST(ReasonTest, AStepKeptApartFromAnAllergenSaysFromWhat) {
  ProblemBuilder kitchen(400);
  kitchen.dish("squash", {.serve = 300});
  kitchen.step("stuff").kind(StepKind::kWait).lasting(30);
  kitchen.problem().dishes[0].waitCost = freshness();
  kitchen.dish("cake", {.serve = 300});
  kitchen.step("crack").kind(StepKind::kWait).lasting(30);
  kitchen.separation("board", "stuff", "crack");
  const Problem problem = kitchen.build();
  const Reason reason =
      noteOn(problem, ScheduleBuilder(problem).put("stuff", 100).put("crack", 130), "stuff").reason;
  EXPECT_EQ(reason.cause, Cause::kKeptApart);
  EXPECT_EQ(reason.thing, 0);
  EXPECT_EQ(reason.blockingStep, stepIndex(problem, "crack"));
}

TEST(ReasonTest, TheStepsOfAnUnservedDishGetAnEmptyNote) {
  const Problem problem = soupAndSalad().build();
  const StepNote note =
      noteOn(problem, ScheduleBuilder(problem).put("toss", 180, "Ben").without("soup"), "stir");
  EXPECT_EQ(note.reason.cause, Cause::kBest);
  EXPECT_EQ(note.slackLater, 0);
}

// A roast at 170 and a loaf at 240 in one oven of two racks.
ProblemBuilder roastAndLoaf() {
  ProblemBuilder kitchen(400);
  kitchen.oven("oven", {170, 240}, {.racks = 2, .changeMinutes = 15});
  kitchen.dish("roast", {.serve = 300});
  kitchen.step("roast").lasting(60).in("oven", 170);
  kitchen.dish("loaf", {.serve = 300});
  kitchen.step("loaf").lasting(40).in("oven", 240);
  for (Dish& dish : kitchen.problem().dishes) dish.waitCost = freshness();
  return kitchen;
}

TEST(ReasonTest, AnOvenAtAnotherTemperatureIsTheReason) {
  const Problem problem = roastAndLoaf().build();
  const Reason reason =
      noteOn(problem, ScheduleBuilder(problem).put("roast", 240).put("loaf", 185), "loaf").reason;
  EXPECT_EQ(reason.cause, Cause::kOvenSetpoint);
  EXPECT_EQ(reason.blockingStep, stepIndex(problem, "roast"));
  EXPECT_EQ(reason.thing, ovenIndex(problem, "oven"));
}

TEST(ReasonTest, AnOvenWithoutAFreeRackIsTheReason) {
  ProblemBuilder kitchen = roastAndLoaf();
  kitchen.dish("gratin", {.serve = 300});
  kitchen.step("gratin").lasting(30).in("oven", 170, 2);
  kitchen.problem().dishes[2].waitCost = freshness();
  const Problem problem = kitchen.build();
  const Reason reason =
      noteOn(problem, ScheduleBuilder(problem).put("roast", 240).put("gratin", 210).put("loaf", 100),
             "gratin")
          .reason;
  EXPECT_EQ(reason.cause, Cause::kOvenFull);
  EXPECT_EQ(reason.blockingStep, stepIndex(problem, "roast"));
}

TEST(SlackTest, AStepMayEndLaterUntilItsCourseIsServed) {
  const Problem problem = soupAndSalad().build();
  const auto plan = ScheduleBuilder(problem).put("stir", 150, "Ana").put("toss", 180, "Ben");
  EXPECT_EQ(noteOn(problem, plan, "stir").slackLater, 30);
  EXPECT_EQ(noteOn(problem, plan, "toss").slackLater, 0);
}

TEST(SlackTest, WhoIsNextAtTheSameCookLimitsTheSlack) {
  const Problem problem = soupAndSalad().build();
  const auto plan = ScheduleBuilder(problem).put("stir", 140, "Ana").put("toss", 170, "Ana");
  EXPECT_EQ(noteOn(problem, plan, "toss").slackLater, 10);
  EXPECT_EQ(noteOn(problem, plan, "stir").slackLater, 20) << "the salad moves on by 10 behind it";
}

TEST(SlackTest, ALateDishHasNone) {
  ProblemBuilder kitchen = soupAndSalad();
  kitchen.problem().dishes[0].lateLimit = 60;
  const Problem problem = kitchen.build();
  EXPECT_EQ(noteOn(problem, ScheduleBuilder(problem).put("stir", 190, "Ana").put("toss", 170, "Ben"), "stir")
                .slackLater,
            0);
}

TEST(SlackTest, AnElasticWaitTakesUpADelay) {
  ProblemBuilder kitchen = soupAndSalad();
  kitchen.dish("loaf", {.serve = 300, .holdLimit = 0});
  kitchen.step("mix").lasting(20).by({"Ana"});
  kitchen.step("proof").kind(StepKind::kFerment).lasting(60, 90, 120).after("mix", 0, 0);
  const Problem problem = kitchen.build();
  const auto plan = ScheduleBuilder(problem)
                        .put("stir", 180, "Ana")
                        .put("toss", 180, "Ben")
                        .put("mix", 200, "Ana")
                        .put("proof", 220)
                        .until("proof", 300);
  EXPECT_EQ(noteOn(problem, plan, "mix").slackLater, 20);
  EXPECT_EQ(noteOn(problem, plan, "proof").slackLater, 0);
}

TEST(SlackTest, AFermentThatGoesFasterLaterGivesMoreSlack) {
  ProblemBuilder kitchen(400);
  kitchen.dish("loaf", {.serve = 300, .holdLimit = 0});
  kitchen.step("mix").lasting(20);
  kitchen.step("proof")
      .kind(StepKind::kFerment)
      .lasting(
          {0,
           50,
           {{80, 100, 250}, {80, 100, 250}, {80, 100, 250}, {80, 100, 250}, {60, 70, 250}, {40, 70, 250}}})
      .after("mix", 0, 0);
  const Problem problem = kitchen.build();
  const auto plan = ScheduleBuilder(problem).put("mix", 80).put("proof", 100).until("proof", 300);
  EXPECT_EQ(noteOn(problem, plan, "mix").slackLater, 260 - 100)
      << "the dough may start at 260 and be ready in 40";
}

TEST(SlackTest, TheOvensChangeTimeIsKept) {
  const Problem problem = roastAndLoaf().build();
  const auto plan = ScheduleBuilder(problem).put("loaf", 100).put("roast", 200);
  EXPECT_EQ(noteOn(problem, plan, "roast").slackLater, 40);
  EXPECT_EQ(noteOn(problem, plan, "loaf").slackLater, 240 - 15 - 140);
}

TEST(SlackTest, PhasesOfALoafCountFromTheirOwnEnd) {
  ProblemBuilder kitchen(400);
  kitchen.oven("oven", {170, 240}, {.racks = 2, .changeMinutes = 15});
  kitchen.dish("supper", {.serve = 300});
  kitchen.step("loaf").lasting(30).in("oven", {{240, 20}, {170, 10}});
  kitchen.step("roast").lasting(60).in("oven", 170);
  const Problem problem = kitchen.build();
  const auto plan = ScheduleBuilder(problem).put("loaf", 100).put("roast", 200);
  EXPECT_EQ(noteOn(problem, plan, "loaf").slackLater, (240 - 5) - 130)
      << "10 of the 15 minutes pass with the loaf in";
}

TEST(SlackTest, ABakeThatNeedsAllRacksKeepsItsTurn) {
  ProblemBuilder kitchen(400);
  kitchen.oven("oven", {170}, {.racks = 1});
  for (const char* id : {"first", "second"}) {
    kitchen.dish(id, {.serve = 300});
    kitchen.step(id).lasting(30).in("oven", 170);
  }
  Problem problem = kitchen.build();
  const auto slack = [&] {
    return noteOn(problem, ScheduleBuilder(problem).put("first", 100).put("second", 200), "first").slackLater;
  };
  EXPECT_EQ(slack(), 270 - 130);
  problem.ovens[0].racks = std::make_shared<RackCount>(2);
  EXPECT_EQ(slack(), 300 - 130);
}

TEST(SlackTest, AMostGapTiesAStepToTheOneBefore) {
  ProblemBuilder kitchen(400);
  kitchen.dish("eggs", {.serve = 300});
  kitchen.step("boil").lasting(10).notAfter(120);
  kitchen.step("cool").lasting(10).after("boil", 0, 20);
  const Problem problem = kitchen.build();
  EXPECT_EQ(noteOn(problem, ScheduleBuilder(problem).put("boil", 100).put("cool", 120), "cool").slackLater,
            20);
}

TEST(SlackTest, WhatOthersTakeComesFirstWhereItDoesNow) {
  ProblemBuilder kitchen = soupAndSalad();
  kitchen.problem().resources[0].taken = {{{160, 170}, 1}};
  const Problem problem = kitchen.build();
  const auto plan = ScheduleBuilder(problem).put("stir", 100, "Ana").put("toss", 180, "Ben");
  EXPECT_EQ(noteOn(problem, plan, "stir").slackLater, 40);
}

TEST(SlackTest, UnitsOfAThingAreHandedOnInOrder) {
  ProblemBuilder kitchen(400);
  kitchen.resource("burners", 2);
  kitchen.dish("stew", {.serve = 200});
  kitchen.step("a").lasting(50).using_("burners");
  kitchen.step("b").lasting(20).using_("burners");
  kitchen.step("c").lasting(50).using_("burners", 2).notAfter(150);
  kitchen.step("serve").lasting(0);
  const Problem problem = kitchen.build();
  const auto plan = ScheduleBuilder(problem).put("a", 0).put("b", 10).put("c", 60).put("serve", 200);
  EXPECT_EQ(noteOn(problem, plan, "a").slackLater, 50);
  EXPECT_EQ(noteOn(problem, plan, "b").slackLater, 70);
}

}  // namespace
}  // namespace suppertide::planning
