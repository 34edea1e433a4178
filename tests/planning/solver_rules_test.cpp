// Each hard rule alone: the best plan that keeps it, known by hand.
#include <memory>

#include "gmock/gmock.h"
#include "gtest/gtest.h"
#include "server/planning/solver/solver.h"
#include "tests/support/breach_text.h"
#include "tests/support/problem_builder.h"

namespace suppertide::planning {
namespace {

using ::testing::IsEmpty;

// The proven best plan; its costs are costOf's and the auditor finds nothing.
Outcome bestPlan(const Problem& problem, Minute grid = 5) {
  const auto outcome = makePlan(problem, {.seed = 1, .workLimit = 0, .grid = grid});
  EXPECT_TRUE(outcome.ok()) << outcome.status();
  EXPECT_TRUE(outcome->optimal());
  EXPECT_THAT(breachTexts(problem, outcome->schedule), IsEmpty());
  EXPECT_EQ(outcome->cost, costOf(problem, outcome->schedule).total);
  EXPECT_EQ(outcome->cost, outcome->bound);
  return *outcome;
}

Placement placeOf(const Problem& problem, const Outcome& outcome, std::string_view step) {
  return outcome.schedule.steps[static_cast<std::size_t>(stepIndex(problem, step))];
}

bool isUnserved(const Problem& problem, const Outcome& outcome, std::string_view dish) {
  return outcome.schedule.unserved[static_cast<std::size_t>(dishIndex(problem, dish))];
}

// What is hot already and left to the next one saves heating, yet does not find the sugar's cook time.
TEST(SolverRulesTest, ADishWithoutAPlaceForOneStepIsLeftOutHoweverWellItsBakeLies) {
  ProblemBuilder kitchen(300);
  kitchen.cook("Ana");
  kitchen.oven("oven", {180}, {.racks = 2, .changeMinutes = 20, .idleMinuteCost = 5});
  kitchen.dish("roast", {.serve = 200, .holdLimit = 0});
  kitchen.step("watch").lasting(190).by({"Ana"}).notAfter(190);
  kitchen.step("roast").lasting(60).in("oven", 180).after("watch", -50);
  kitchen.dish("rolls", {.serve = 100, .holdLimit = 0});
  kitchen.step("rolls").lasting(40).in("oven", 180);
  kitchen.dish("tart", {.serve = 195, .holdLimit = 100});
  kitchen.step("bake").lasting(30).in("oven", 180);
  kitchen.step("sugar").lasting(10).by({"Ana"}).after("bake", 0, 0).notAfter(185);
  kitchen.step("cool").lasting(5).after("bake");
  EXPECT_EQ(costIn(bestPlan(kitchen.build()).cost, Tier::kUnserved), 1);
}

TEST(SolverRulesTest, KeepsLeastAndMostGaps) {
  ProblemBuilder kitchen(300);
  kitchen.cook("Ana");
  kitchen.dish("soup", {.serve = 200, .holdLimit = 0});
  kitchen.step("soak").lasting(10).by({"Ana"});
  kitchen.step("cook").lasting(30).after("soak", 40, 60);
  const Problem problem = kitchen.build();
  const Outcome outcome = bestPlan(problem);
  EXPECT_EQ(placeOf(problem, outcome, "cook").end, 200);
  const Minute gap = placeOf(problem, outcome, "cook").start - placeOf(problem, outcome, "soak").end;
  EXPECT_GE(gap, 40);
  EXPECT_LE(gap, 60);
}

TEST(SolverRulesTest, KeepsAGapBetweenDishes) {
  ProblemBuilder kitchen(300);
  kitchen.dish("stock", {.serve = 100, .holdLimit = 100});
  kitchen.step("simmer").lasting(30);
  kitchen.dish("soup", {.serve = 100, .lateLimit = 60});
  kitchen.step("finish").lasting(10).after("simmer", 70);
  kitchen.problem().steps[0].earliest = 10;
  const Problem problem = kitchen.build();
  EXPECT_EQ(bestPlan(problem).cost, (TierCosts{0, 20, 0, 0, 0}));
}

TEST(SolverRulesTest, RoundsALeastGapUpToTheGridAfterAnOddLength) {
  ProblemBuilder kitchen(100);
  kitchen.dish("egg", {.serve = 60});
  kitchen.step("boil").lasting(7);
  kitchen.step("peel").lasting(5).after("boil", 0, 10);
  const Problem problem = kitchen.build();
  const Outcome outcome = bestPlan(problem);
  EXPECT_EQ(placeOf(problem, outcome, "boil").start % 5, 0);
  EXPECT_EQ(placeOf(problem, outcome, "boil").end - placeOf(problem, outcome, "boil").start, 7);
  EXPECT_EQ(placeOf(problem, outcome, "peel").start % 5, 0);
}

TEST(SolverRulesTest, ServesLateWhenTheOnlyCookIsBusy) {
  ProblemBuilder kitchen(200);
  kitchen.cook("Ana", 30, 200);
  kitchen.dish("salad", {.serve = 60, .holdLimit = 60, .lateLimit = 60});
  kitchen.step("cut").lasting(20).by({"Ana"});
  kitchen.dish("dip", {.serve = 60, .holdLimit = 60, .lateLimit = 60});
  kitchen.step("stir").lasting(20).by({"Ana"});
  const Problem problem = kitchen.build();
  EXPECT_EQ(costIn(bestPlan(problem).cost, Tier::kLateness), 10);
}

TEST(SolverRulesTest, LetsACookWatchTwoPotsButNotThree) {
  ProblemBuilder kitchen(200);
  kitchen.cook("Ana");
  for (const char* pot : {"rice", "beans", "peas"}) {
    kitchen.dish(pot, {.serve = 100, .holdLimit = 0, .lateLimit = 90});
    kitchen.step(pot).lasting(30).by({"Ana"}, 50);
  }
  const Problem problem = kitchen.build();
  EXPECT_EQ(costIn(bestPlan(problem).cost, Tier::kLateness), 30);
}

TEST(SolverRulesTest, AsksOnlyCooksWhoAreAwake) {
  ProblemBuilder kitchen(400);
  kitchen.cook("Ana", 0, 100);
  kitchen.cook("Ben", 150, 400);
  kitchen.dish("bread", {.serve = 200, .holdLimit = 0});
  kitchen.step("knead").lasting(20).by({"Ana", "Ben"});
  kitchen.step("rise").lasting(100, 120, 160).after("knead", 0, 0);
  const Problem problem = kitchen.build();
  EXPECT_EQ(placeOf(problem, bestPlan(problem), "knead").cook, cookIndex(problem, "Ana"));
}

TEST(SolverRulesTest, DropsADishWhoseCookNeverComes) {
  ProblemBuilder kitchen(200);
  kitchen.cook("Ana", 150, 200);
  kitchen.dish("toast", {.serve = 100, .holdLimit = 50});
  kitchen.step("toast it").lasting(10).by({"Ana"});
  kitchen.dish("water", {.serve = 100, .holdLimit = 50});
  kitchen.step("pour").lasting(5);
  const Problem problem = kitchen.build();
  const Outcome outcome = bestPlan(problem);
  EXPECT_TRUE(isUnserved(problem, outcome, "toast"));
  EXPECT_FALSE(isUnserved(problem, outcome, "water"));
}

TEST(SolverRulesTest, NeverUsesMoreBurnersThanThereAreOrOthersLeave) {
  ProblemBuilder kitchen(200);
  const int burners = kitchen.resource("burners", 2);
  kitchen.problem().resources[static_cast<std::size_t>(burners)].taken.push_back({{70, 100}, 1});
  for (const char* pot : {"rice", "beans"}) {
    kitchen.dish(pot, {.serve = 100, .holdLimit = 0, .lateLimit = 90});
    kitchen.step(pot).lasting(30).using_("burners");
  }
  const Problem problem = kitchen.build();
  EXPECT_EQ(costIn(bestPlan(problem).cost, Tier::kLateness), 30);
}

TEST(SolverRulesTest, WaitsForTheOvenToChangeItsTemperatureBothWays) {
  ProblemBuilder kitchen(400);
  kitchen.oven("oven", {180, 240}, {.racks = 2, .changeMinutes = 15});
  kitchen.dish("loaf", {.serve = 100, .holdLimit = 0, .lateLimit = 200});
  kitchen.step("bake loaf").lasting(40).in("oven", 240);
  kitchen.dish("cake", {.serve = 100, .holdLimit = 0, .lateLimit = 200});
  kitchen.step("bake cake").lasting(30).in("oven", 180);
  const Problem problem = kitchen.build();
  EXPECT_EQ(costIn(bestPlan(problem).cost, Tier::kLateness), 45);
}

TEST(SolverRulesTest, LetsAColdStartEnterWhileTheOvenCools) {
  ProblemBuilder kitchen(400);
  kitchen.oven("oven", {180, 240}, {.racks = 2, .changeMinutes = 15});
  kitchen.dish("loaf", {.serve = 100, .holdLimit = 0});
  kitchen.step("bake loaf").lasting(40).in("oven", 240);
  kitchen.dish("cake", {.serve = 100, .holdLimit = 0, .lateLimit = 200});
  kitchen.step("bake cake").lasting(30).in("oven", 180).coldStart();
  const Problem problem = kitchen.build();
  EXPECT_EQ(costIn(bestPlan(problem).cost, Tier::kLateness), 30);
}

TEST(SolverRulesTest, LoadsJoinALoafInItsCoolerPhase) {
  ProblemBuilder kitchen(400);
  kitchen.oven("oven", {180, 240}, {.racks = 2, .changeMinutes = 5});
  kitchen.dish("loaf", {.serve = 100, .holdLimit = 0});
  kitchen.step("bake loaf").in("oven", {{240, 20}, {180, 40}}).lasting(60);
  kitchen.dish("cake", {.serve = 100, .holdLimit = 0, .lateLimit = 100});
  kitchen.step("bake cake").lasting(30).in("oven", 180);
  const Problem problem = kitchen.build();
  EXPECT_EQ(costIn(bestPlan(problem).cost, Tier::kLateness), 0);
}

TEST(SolverRulesTest, PutsNoMoreOnRacksThanFit) {
  ProblemBuilder kitchen(400);
  kitchen.oven("oven", {180}, {.racks = 2});
  for (const char* tray : {"one", "two", "three"}) {
    kitchen.dish(tray, {.serve = 100, .holdLimit = 0, .lateLimit = 100});
    kitchen.step(tray).lasting(20).in("oven", 180);
  }
  const Problem problem = kitchen.build();
  EXPECT_EQ(costIn(bestPlan(problem).cost, Tier::kLateness), 20);
}

TEST(SolverRulesTest, KeepsOutOfAClosedOven) {
  ProblemBuilder kitchen(400);
  const int oven = kitchen.oven("oven", {180}, {.racks = 2});
  kitchen.problem().ovens[static_cast<std::size_t>(oven)].closed.push_back({80, 120});
  kitchen.dish("cake", {.serve = 100, .holdLimit = 10, .lateLimit = 100});
  kitchen.step("bake").lasting(30).in("oven", 180);
  const Problem problem = kitchen.build();
  EXPECT_EQ(costIn(bestPlan(problem).cost, Tier::kLateness), 50);
}

TEST(SolverRulesTest, EmptiesAProofingOvenBeforeItIsPreheated) {
  ProblemBuilder kitchen(600);
  kitchen.oven("oven", {30, 240}, {.racks = 2, .changeMinutes = 25});
  kitchen.dish("loaf", {.serve = 300, .holdLimit = 0, .lateLimit = 200});
  kitchen.step("proof").kind(StepKind::kFerment).lasting(60, 80, 120).in("oven", 30);
  kitchen.step("bake").lasting(40).in("oven", 240).after("proof", 0, 40);
  const Problem problem = kitchen.build();
  const Outcome outcome = bestPlan(problem);
  EXPECT_EQ(costIn(outcome.cost, Tier::kLateness), 0);
  EXPECT_GE(placeOf(problem, outcome, "bake").start - placeOf(problem, outcome, "proof").end, 25);
}

TEST(SolverRulesTest, TakesAFermentsLengthFromItsStart) {
  ProblemBuilder kitchen(300);
  kitchen.dish("dough", {.serve = 200, .holdLimit = 20});
  LengthTable byHour{0, 60, {{30, 30, 30}, {1, 1, 0}, {90, 90, 100}, {150, 150, 150}}};
  kitchen.step("rise").kind(StepKind::kFerment).lasting(byHour);
  const Problem problem = kitchen.build();
  EXPECT_EQ(costIn(bestPlan(problem).cost, Tier::kUnserved), 1) << "no start ends in the window";
  Problem later = problem;
  later.dishes[0].serve = 220;
  const Outcome outcome = bestPlan(later);
  EXPECT_EQ(costIn(outcome.cost, Tier::kUnserved), 0);
  EXPECT_GE(outcome.schedule.steps[0].start, 120);
}

TEST(SolverRulesTest, KeepsPinsAlsoOffTheGrid) {
  ProblemBuilder kitchen(300);
  kitchen.cook("Ana");
  kitchen.cook("Ben");
  kitchen.dish("salad", {.serve = 100});
  kitchen.step("wash").lasting(10).by({"Ana", "Ben"}).pinned({.start = 33, .end = {}, .mode = {}, .cook = 1});
  kitchen.step("cut").lasting(20).by({"Ben"}).after("wash");
  const Problem problem = kitchen.build();
  const Outcome outcome = bestPlan(problem);
  EXPECT_EQ(placeOf(problem, outcome, "wash"), (Placement{33, 43, 0, 1}));
  EXPECT_GE(placeOf(problem, outcome, "cut").start, 45);
}

TEST(SolverRulesTest, KeepsAPinnedEnd) {
  ProblemBuilder kitchen(300);
  kitchen.dish("stew", {.serve = 100});
  kitchen.step("braise").lasting(20, 40, 60).pinned({.start = {}, .end = 77, .mode = {}, .cook = {}});
  const Problem problem = kitchen.build();
  EXPECT_EQ(placeOf(problem, bestPlan(problem), "braise").end, 77);
}

TEST(SolverRulesTest, LeavesOutADishWhosePinsContradictIt) {
  ProblemBuilder kitchen(300);
  kitchen.dish("stew", {.serve = 100});
  kitchen.step("braise").lasting(20).pinned({.start = 10, .end = 60, .mode = {}, .cook = {}});
  const Problem problem = kitchen.build();
  EXPECT_TRUE(isUnserved(problem, bestPlan(problem), "stew"));
}

TEST(SolverRulesTest, ChoosesModesThatGoTogether) {
  ProblemBuilder kitchen(300);
  kitchen.dish("bread", {.serve = 200});
  kitchen.step("bulk").lasting(50).quality(3).orMode("warm").lasting(30);
  kitchen.step("proof")
      .lasting(40)
      .linkedTo("bulk", {0})
      .orMode("cold")
      .lasting(100)
      .quality(2)
      .after("bulk");
  const Problem problem = kitchen.build();
  const Outcome outcome = bestPlan(problem);
  EXPECT_EQ(costIn(outcome.cost, Tier::kQuality), 2)
      << "warm bulk with cold proof is cheaper than bulk and proof at room";
}

TEST(SolverRulesTest, KeepsAStepInsideItsOwnBounds) {
  ProblemBuilder kitchen(300);
  kitchen.dish("tea", {.serve = 200});
  kitchen.step("steep").lasting(10).notBefore(42).notAfter(58);
  const Problem problem = kitchen.build();
  const Placement place = placeOf(problem, bestPlan(problem), "steep");
  EXPECT_EQ(place.start, 45);
}

TEST(SolverRulesTest, CountsEveryUseOfOneThingInAMode) {
  ProblemBuilder kitchen(200);
  kitchen.resource("burner", 2);
  kitchen.dish("sauce", {.serve = 60, .holdLimit = 0});
  kitchen.step("simmer").lasting(30).using_("burner");
  kitchen.dish("pasta", {.serve = 60, .holdLimit = 0, .lateLimit = 60});
  kitchen.step("boil").lasting(30).using_("burner").using_("burner");
  const Problem problem = kitchen.build();
  const Outcome outcome = bestPlan(problem);
  EXPECT_EQ(outcome.cost, (TierCosts{0, 30, 0, 0, 0}));
}

}  // namespace
}  // namespace suppertide::planning
