// Clocks, separations and what is used up; calm, ovens and moves; loads and steps left out.
#include "gmock/gmock.h"
#include "gtest/gtest.h"
#include "server/planning/solver/solver.h"
#include "tests/support/breach_text.h"
#include "tests/support/problem_builder.h"

namespace suppertide::planning {
namespace {

using ::testing::IsEmpty;

Outcome provenPlan(const Problem& problem) {
  const auto outcome = makePlan(problem, SearchOptions{});
  EXPECT_TRUE(outcome.ok()) << outcome.status();
  EXPECT_THAT(breachTexts(problem, outcome->schedule), IsEmpty());
  EXPECT_TRUE(outcome->optimal());
  return *outcome;
}

const Placement& placed(const Problem& problem, const Outcome& outcome, std::string_view step) {
  return outcome.schedule.steps[static_cast<std::size_t>(stepIndex(problem, step))];
}

TEST(SolverClockTest, KeepsASpanAcrossSteps) {
  ProblemBuilder kitchen(600);
  kitchen.cook("Ana", 0, 100);
  kitchen.dish("tart", {.serve = 300, .holdLimit = 0, .lateLimit = 200});
  kitchen.step("fill").lasting(20).by({"Ana"});
  kitchen.step("bake").lasting(30).after("fill");
  kitchen.clock("room temperature", 120, {{.from = "fill", .to = "bake"}});
  const Problem problem = kitchen.build();
  EXPECT_EQ(costIn(provenPlan(problem).cost, Tier::kUnserved), 1)
      << "filled before 100, it would stand for two hours and more until 300";
  kitchen.problem().clocks.front().most = 230;
  const Problem longer = kitchen.build();
  const Outcome outcome = provenPlan(longer);
  EXPECT_EQ(costIn(outcome.cost, Tier::kUnserved), 0);
  EXPECT_EQ(placed(longer, outcome, "fill").start, 80);
}

TEST(SolverClockTest, CountsUntilServedEvenWhenReadyEarly) {
  ProblemBuilder kitchen(600);
  kitchen.cook("Ana", 0, 250);
  kitchen.dish("salad", {.serve = 300, .holdLimit = 300});
  kitchen.step("dress").lasting(20).by({"Ana"});
  kitchen.clock("room temperature", 60, {{.from = "dress", .fromEdge = Edge::kEnd}});
  const Problem problem = kitchen.build();
  const Outcome outcome = provenPlan(problem);
  EXPECT_GE(placed(problem, outcome, "dress").end, 240);
}

TEST(SolverClockTest, AddsUpSpansThatAreApart) {
  ProblemBuilder kitchen(600);
  kitchen.cook("Ana");
  kitchen.dish("pie", {.serve = 400, .holdLimit = 0, .lateLimit = 100});
  kitchen.step("warm").lasting(20, 60, 60).by({"Ana"}).quality(0, 1, 1);
  kitchen.step("chill").lasting(60).after("warm", 0, 0);
  kitchen.step("fill").lasting(20, 60, 60).by({"Ana"}).quality(0, 1, 1).after("chill", 0, 0);
  kitchen.clock("room temperature", 100, {{.from = "warm", .to = "warm"}, {.from = "fill", .to = "fill"}});
  const Problem problem = kitchen.build();
  EXPECT_EQ(costIn(provenPlan(problem).cost, Tier::kQuality), 20)
      << "twenty minutes less than both would like";
}

TEST(SolverClockTest, CountsOnlyInItsModes) {
  ProblemBuilder kitchen(600);
  kitchen.dish("dough", {.serve = 400, .holdLimit = 0});
  kitchen.step("rise").lasting(200).orMode("cool").lasting(200).quality(9);
  kitchen.clock("room temperature", 120, {{.from = "rise", .to = "rise", .modes = {0}}});
  const Problem problem = kitchen.build();
  const Outcome outcome = provenPlan(problem);
  EXPECT_EQ(placed(problem, outcome, "rise").mode, 1);
  EXPECT_EQ(costIn(outcome.cost, Tier::kQuality), 9);
}

Problem boardShared(Minute cleaning, Minute nutsBefore) {
  ProblemBuilder kitchen(600);
  kitchen.cook("Ana");
  kitchen.dish("free", {.serve = 300, .holdLimit = 300});
  kitchen.step("cut").lasting(30).by({"Ana"}).notBefore(60);
  kitchen.dish("nutty", {.serve = 300, .holdLimit = 300, .lateLimit = 300});
  kitchen.step("chop").lasting(30).by({"Ana"}).notAfter(nutsBefore);
  kitchen.separation("board", "cut", "chop", cleaning);
  return kitchen.build();
}

TEST(SolverSeparationTest, TheFreeDishGoesFirst) {
  const Problem problem = boardShared(kNoLimit, 600);
  const Outcome outcome = provenPlan(problem);
  EXPECT_LE(placed(problem, outcome, "cut").end, placed(problem, outcome, "chop").start);
}

TEST(SolverSeparationTest, OrComesAfterCleaning) {
  const Problem problem = boardShared(15, 45);
  const Outcome outcome = provenPlan(problem);
  EXPECT_EQ(costIn(outcome.cost, Tier::kUnserved), 0);
  EXPECT_GE(placed(problem, outcome, "cut").start, placed(problem, outcome, "chop").end + 15);
}

TEST(SolverSeparationTest, WithoutCleaningOneIsNotServed) {
  EXPECT_EQ(costIn(provenPlan(boardShared(kNoLimit, 45)).cost, Tier::kUnserved), 1);
}

TEST(SolverUsedUpTest, WhatIsGoneIsGone) {
  ProblemBuilder kitchen(600);
  kitchen.stock("eggs", 5);
  for (const char* name : {"cake", "custard", "glaze"}) {
    kitchen.dish(name, {.serve = 500, .holdLimit = 500});
    kitchen.step(name).lasting(10).using_("eggs", 3).orMode("fewer").lasting(10).using_("eggs", 1).quality(4);
  }
  const Problem problem = kitchen.build();
  EXPECT_EQ(costIn(provenPlan(problem).cost, Tier::kQuality), 8) << "one gets three eggs, the others one";
}

TEST(SolverCalmTest, LeavesAirBetweenTasksWhereItIsFree) {
  ProblemBuilder kitchen(600);
  kitchen.cook("Ana");
  kitchen.problem().airBetweenTasks = 10;
  for (const char* name : {"one", "two", "three"}) {
    kitchen.dish(name, {.serve = 100, .holdLimit = 100});
    kitchen.step(name).lasting(20).by({"Ana"});
  }
  const Problem problem = kitchen.build();
  EXPECT_EQ(costIn(provenPlan(problem).cost, Tier::kCalm), 0);
}

TEST(SolverCalmTest, NeverWaitsLongerForTheSakeOfAir) {
  ProblemBuilder kitchen(600);
  kitchen.cook("Ana");
  kitchen.problem().airBetweenTasks = 10;
  for (const char* name : {"one", "two"}) {
    kitchen.dish(name, {.serve = 100, .holdLimit = 100});
    kitchen.step(name).lasting(20).by({"Ana"});
    kitchen.problem().dishes.back().waitCost.knots = {{0, 0}, {100, 100}};
  }
  const Problem problem = kitchen.build();
  const Outcome outcome = provenPlan(problem);
  EXPECT_EQ(costIn(outcome.cost, Tier::kQuality), 20);
  EXPECT_EQ(costIn(outcome.cost, Tier::kCalm), 10);
}

TEST(SolverCalmTest, DoesNotBeginATaskInsideAnother) {
  ProblemBuilder kitchen(200);
  kitchen.cook("Ana");
  kitchen.problem().interruptionCost = 10;
  for (const char* name : {"stir", "watch"}) {
    kitchen.dish(name, {.serve = 100, .holdLimit = 100});
    kitchen.step(name).lasting(40).by({"Ana"}, 50);
  }
  const Problem problem = kitchen.build();
  EXPECT_EQ(costIn(provenPlan(problem).cost, Tier::kCalm), 0);
}

TEST(SolverCalmTest, LeavesTheAirAGapWants) {
  ProblemBuilder kitchen(200);
  kitchen.dish("roast", {.serve = 100, .holdLimit = 0});
  kitchen.step("roast").lasting(40);
  kitchen.step("carve").lasting(10).after("roast").air(15);
  const Problem problem = kitchen.build();
  const Outcome outcome = provenPlan(problem);
  EXPECT_EQ(costIn(outcome.cost, Tier::kCalm), 0);
  EXPECT_LE(placed(problem, outcome, "roast").end, 75);
}

TEST(SolverOvensTest, BakesOneAfterTheOtherRatherThanHeatTwice) {
  ProblemBuilder kitchen(600);
  kitchen.oven("oven", {180, 200}, {.racks = 1, .changeMinutes = 10, .idleMinuteCost = 1});
  kitchen.problem().ovens[0].heatFromCold = {20, 25};
  for (const char* name : {"tart", "cake"}) {
    kitchen.dish(name, {.serve = 500, .holdLimit = 500});
    kitchen.step(name).lasting(40).in("oven", 180);
  }
  const Problem problem = kitchen.build();
  EXPECT_EQ(costIn(provenPlan(problem).cost, Tier::kOvens), 20);
}

TEST(SolverMovesTest, StaysWhereItWasTold) {
  ProblemBuilder kitchen(600);
  kitchen.cook("Ana");
  kitchen.cook("Ben");
  kitchen.dish("soup", {.serve = 300, .holdLimit = 300});
  kitchen.step("cook").lasting(30).by({"Ana", "Ben"}).announced(100, "Ben");
  kitchen.problem().dishes[0].waitCost.knots = {{0, 0}, {300, 300}};
  const Problem problem = kitchen.build();
  const Outcome outcome = provenPlan(problem);
  EXPECT_EQ(costIn(outcome.cost, Tier::kMoves), 0);
  EXPECT_EQ(placed(problem, outcome, "cook").start, 100);
  EXPECT_EQ(placed(problem, outcome, "cook").cook, 1);
}

TEST(SolverMovesTest, MovesAsLittleAsItMust) {
  ProblemBuilder kitchen(600);
  kitchen.cook("Ana", 130, 600);
  kitchen.dish("soup", {.serve = 300, .holdLimit = 300});
  kitchen.step("cook").lasting(30).by({"Ana"}).announced(100, "Ana");
  const Problem problem = kitchen.build();
  const Outcome outcome = provenPlan(problem);
  EXPECT_EQ(placed(problem, outcome, "cook").start, 130);
  EXPECT_EQ(costIn(outcome.cost, Tier::kMoves), 40) << "thirty minutes and ten for moving at all";
}

// Two trays of one dish and room for one: one load after the other, both before it is served.
TEST(SolverLoadsTest, BakesADishInTwoLoads) {
  ProblemBuilder kitchen(600);
  kitchen.oven("oven", {180}, {.racks = 1});
  kitchen.cook("Ana");
  kitchen.dish("biscuits", {.serve = 300, .holdLimit = 60});
  kitchen.step("cut").lasting(20).by({"Ana"});
  kitchen.step("first tray").lasting(15).in("oven", 180).after("cut", 0, 60);
  kitchen.step("second tray").lasting(15).in("oven", 180).after("cut", 0, 60);
  kitchen.step("cool").lasting(30).after("first tray").after("second tray");
  const Problem problem = kitchen.build();
  const Outcome outcome = provenPlan(problem);
  EXPECT_EQ(costIn(outcome.cost, Tier::kUnserved), 0);
  const Placement& a = placed(problem, outcome, "first tray");
  const Placement& b = placed(problem, outcome, "second tray");
  EXPECT_TRUE(a.end <= b.start || b.end <= a.start);
}

// Warming a bread up again is left out when the oven is taken, and done when it is free.
TEST(SolverOptionalTest, LeavesAStepOutWhenThereIsNoRoom) {
  for (const bool taken : {false, true}) {
    ProblemBuilder kitchen(600);
    kitchen.oven("oven", {180}, {.racks = 1});
    if (taken) kitchen.problem().ovens[0].closed = {{200, 320}};
    kitchen.dish("loaf", {.serve = 300, .holdLimit = 10});
    kitchen.step("bake").lasting(40).in("oven", 180).notAfter(200);
    kitchen.step("warm").lasting(10).in("oven", 180).after("bake").orMode("left out").lasting(0).quality(15);
    const Problem problem = kitchen.build();
    const Outcome outcome = provenPlan(problem);
    EXPECT_EQ(costIn(outcome.cost, Tier::kQuality), taken ? 15 : 0);
    EXPECT_EQ(costIn(outcome.cost, Tier::kUnserved), 0);
  }
}

TEST(SolverPlacesTest, AFridgeKeepsItsRoomOverDays) {
  ProblemBuilder kitchen(3 * 1440);
  kitchen.resource("fridge", 10);
  kitchen.dish("ham", {.serve = 3000, .holdLimit = 0});
  kitchen.step("cure").lasting(2880).using_("fridge", 7);
  kitchen.dish("cream", {.serve = 3000, .holdLimit = 0, .lateLimit = 600});
  kitchen.step("chill").lasting(120).using_("fridge", 5).notBefore(1500);
  const Problem problem = kitchen.build();
  const Outcome outcome = provenPlan(problem);
  EXPECT_EQ(costIn(outcome.cost, Tier::kLateness), 120) << "it fits only once the ham is out";
}

TEST(SolverPlacesTest, ADoughRisesInTheOvenBeforeItIsHeated) {
  ProblemBuilder kitchen(600);
  kitchen.oven("oven", {30, 220}, {.racks = 2, .changeMinutes = 20});
  kitchen.dish("rolls", {.serve = 400, .holdLimit = 0});
  kitchen.step("rise").kind(StepKind::kFerment).lasting(60).in("oven", 30).kind(StepKind::kFerment);
  kitchen.step("bake").lasting(20).in("oven", 220).after("rise", 0, 60);
  kitchen.dish("roast", {.serve = 400, .holdLimit = 200});
  kitchen.step("roast").lasting(90).in("oven", 220);
  const Problem problem = kitchen.build();
  const Outcome outcome = provenPlan(problem);
  EXPECT_EQ(costIn(outcome.cost, Tier::kUnserved), 0);
  EXPECT_EQ(placed(problem, outcome, "bake").start - placed(problem, outcome, "rise").end, 20);
}

}  // namespace
}  // namespace suppertide::planning
