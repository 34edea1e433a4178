// What is better, tier by tier, and what the engine promises about its search.
#include <algorithm>
#include <string>

#include "gmock/gmock.h"
#include "gtest/gtest.h"
#include "server/planning/solver/solver.h"
#include "tests/support/breach_text.h"
#include "tests/support/problem_builder.h"
#include "tests/support/random_dinner.h"

namespace suppertide::planning {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

Outcome planOf(const Problem& problem, SearchOptions options = {}) {
  const auto outcome = makePlan(problem, options);
  EXPECT_TRUE(outcome.ok()) << outcome.status();
  EXPECT_THAT(breachTexts(problem, outcome->schedule), IsEmpty());
  EXPECT_EQ(outcome->cost, costOf(problem, outcome->schedule).total);
  return *outcome;
}

TEST(SolverTiersTest, DropsTheCheaperOfTwoDishesThatCannotBothBeServed) {
  ProblemBuilder kitchen(200);
  kitchen.cook("Ana", 50, 100);
  kitchen.dish("roast", {.serve = 100, .holdLimit = 100});
  kitchen.step("roast").lasting(40).by({"Ana"});
  kitchen.dish("salad", {.serve = 100, .holdLimit = 100});
  kitchen.step("salad").lasting(40).by({"Ana"});
  kitchen.problem().dishes[0].unservedCost = 3;
  const Problem problem = kitchen.build();
  const Outcome outcome = planOf(problem);
  EXPECT_TRUE(outcome.optimal());
  EXPECT_EQ(costIn(outcome.cost, Tier::kUnserved), 1);
  EXPECT_TRUE(outcome.schedule.unserved[1]);
}

// Two bakes that both fill the oven when they are due, and three dishes that mind nobody.
Problem twoThatClash() {
  ProblemBuilder kitchen(200);
  kitchen.oven("oven", {180}, {.racks = 1, .changeMinutes = 0});
  for (const char* name : {"soup", "rolls", "salad", "tart", "cream"}) {
    kitchen.dish(name, {.serve = 100, .holdLimit = 10});
    if (name == std::string("rolls") || name == std::string("tart"))
      kitchen.step(name).lasting(40).in("oven", 180);
    else
      kitchen.step(name).lasting(40);
  }
  return kitchen.build();
}

TEST(SolverClashTest, NamesOnlyTheDishesThatCannotAllBeServed) {
  const Problem problem = twoThatClash();
  const Outcome outcome = planOf(problem, {.nameClash = true});
  EXPECT_THAT(outcome.clashing, ElementsAre(dishIndex(problem, "rolls"), dishIndex(problem, "tart")));
  EXPECT_EQ(costIn(outcome.bound, Tier::kUnserved), 1);
}

TEST(SolverClashTest, NamesADishThatNothingCanServe) {
  Problem problem = twoThatClash();
  problem.steps[static_cast<std::size_t>(problem.dishes[2].lastStep)].earliest = 90;
  EXPECT_THAT(planOf(problem, {.nameClash = true}).clashing, ElementsAre(2));
}

TEST(SolverClashTest, NamesNoneWhereAllCanBeServed) {
  Problem problem = twoThatClash();
  problem.dishes[1].holdLimit = 60;
  const Outcome outcome = planOf(problem, {.nameClash = true});
  EXPECT_THAT(outcome.clashing, IsEmpty());
  EXPECT_EQ(costIn(outcome.cost, Tier::kUnserved), 0);
}

TEST(SolverTiersTest, ChargesNothingForADroppedDish) {
  ProblemBuilder kitchen(200);
  kitchen.cook("Ana", 50, 100);
  for (const char* name : {"one", "two"}) {
    kitchen.dish(name, {.serve = 100, .holdLimit = 100});
    kitchen.step(name).lasting(40).by({"Ana"}).quality(7);
  }
  const Problem problem = kitchen.build();
  EXPECT_EQ(planOf(problem).cost, (TierCosts{1, 0, 0, 7, 0}));
}

TEST(SolverTiersTest, NeverServesLateForTheSakeOfQuality) {
  ProblemBuilder kitchen(200);
  kitchen.dish("stew", {.serve = 50, .lateLimit = 100});
  kitchen.step("fast").lasting(50).quality(1000).orMode("slow").lasting(60);
  const Problem problem = kitchen.build();
  EXPECT_EQ(planOf(problem).cost, (TierCosts{0, 0, 0, 1000, 0}));
}

TEST(SolverTiersTest, ServesFreshAndHoldsAsBriefAsItCan) {
  ProblemBuilder kitchen(300);
  kitchen.oven("oven", {180, 240}, {.racks = 1, .changeMinutes = 10});
  for (const char* name : {"loaf", "cake"}) {
    const int dish = kitchen.dish(name, {.serve = 200, .holdLimit = 100});
    kitchen.step(name).lasting(30).in("oven", name[0] == 'l' ? 240 : 180);
    kitchen.problem().dishes[static_cast<std::size_t>(dish)].waitCost.knots = {
        {0, 0}, {100, name[0] == 'l' ? 100 : 300}};
  }
  const Problem problem = kitchen.build();
  const Outcome outcome = planOf(problem);
  EXPECT_TRUE(outcome.optimal());
  EXPECT_EQ(outcome.cost, (TierCosts{0, 0, 0, 40, 0})) << "the loaf waits, since the cake suffers more";
}

TEST(SolverTiersTest, KeepsAFermentNearItsBestLength) {
  ProblemBuilder kitchen(400);
  kitchen.cook("Ana", 0, 100);
  kitchen.cook("Ben", 290, 400);
  kitchen.dish("loaf", {.serve = 300, .holdLimit = 0});
  kitchen.step("mix").lasting(10).by({"Ana"});
  kitchen.step("rise").lasting(100, 120, 240).after("mix", 0, 0).quality(0, 1, 2);
  kitchen.step("shape").lasting(10).by({"Ben"}).after("rise", 0, 0);
  const Problem problem = kitchen.build();
  EXPECT_EQ(planOf(problem).cost, (TierCosts{0, 0, 0, 2 * 70, 0}));
}

TEST(SolverTiersTest, AvoidsUnsocialHoursAndDearCooks) {
  ProblemBuilder kitchen(400);
  const int ana = kitchen.cook("Ana");
  kitchen.cook("Ben");
  kitchen.dish("dip", {.serve = 100, .holdLimit = 100});
  kitchen.step("stir").lasting(20).by({"Ana", "Ben"});
  Problem& draft = kitchen.problem();
  draft.shareBlockCost = 0;
  draft.cooks[static_cast<std::size_t>(ana)].unsocial.push_back({{0, 95}, 1});
  draft.steps[0].modes[0].cooks[1].cost = 30;
  const Problem problem = kitchen.build();
  const Outcome outcome = planOf(problem);
  EXPECT_TRUE(outcome.optimal());
  EXPECT_EQ(costIn(outcome.cost, Tier::kPeople), 15) << "Ana from 80 to 100, fifteen minutes of it unsocial";
}

TEST(SolverTiersTest, SharesTheWorkFairly) {
  ProblemBuilder kitchen(400);
  kitchen.cook("Ana");
  kitchen.cook("Ben");
  for (const char* name : {"a", "b", "c", "d"}) {
    kitchen.dish(name, {.serve = 300, .holdLimit = 300});
    kitchen.step(name).lasting(40).by({"Ana", "Ben"});
  }
  kitchen.problem().shareBlock = 30;
  kitchen.problem().shareBlockCost = 10;
  kitchen.problem().cooks[1].share = 3;
  const Problem problem = kitchen.build();
  const Outcome outcome = planOf(problem);
  EXPECT_TRUE(outcome.optimal());
  EXPECT_EQ(costIn(outcome.cost, Tier::kQuality), 0);
  EXPECT_EQ(std::count_if(outcome.schedule.steps.begin(), outcome.schedule.steps.end(),
                          [](const Placement& place) { return place.cook == 1; }),
            3);
}

TEST(SolverTiersTest, CountsSharesWhereWorkDependsOnTheMode) {
  ProblemBuilder kitchen(400);
  kitchen.cook("Ana");
  kitchen.cook("Ben");
  for (const char* name : {"a", "b", "c"}) {
    kitchen.dish(name, {.serve = 300, .holdLimit = 300});
    kitchen.step(name)
        .lasting(60)
        .by({"Ana", "Ben"})
        .orMode("mixer")
        .lasting(20)
        .by({"Ana", "Ben"})
        .quality(5);
  }
  kitchen.problem().shareBlock = 30;
  kitchen.problem().shareBlockCost = 10;
  const Problem problem = kitchen.build();
  const Outcome outcome = planOf(problem);
  EXPECT_TRUE(outcome.optimal());
  EXPECT_EQ(outcome.cost, (TierCosts{0, 0, 0, 0, 10}));
}

TEST(SolverTiersTest, EveryOutcomeOnTheWayIsSoundAndNoWorse) {
  class Recorder : public Monitor {
   public:
    void improved(const Outcome& outcome) override { seen.push_back(outcome); }
    std::vector<Outcome> seen;
  } recorder;
  const Problem problem = randomDinner(4, 5, DinnerLoad::kMiddling);
  const auto last = makePlan(problem, {.seed = 4, .workLimit = 2000}, &recorder);
  ASSERT_TRUE(last.ok());
  ASSERT_FALSE(recorder.seen.empty());
  for (std::size_t k = 0; k < recorder.seen.size(); ++k) {
    EXPECT_THAT(breachTexts(problem, recorder.seen[k].schedule), IsEmpty());
    EXPECT_EQ(recorder.seen[k].cost, costOf(problem, recorder.seen[k].schedule).total);
    EXPECT_LE(recorder.seen[k].bound, last->cost);
    EXPECT_LE(recorder.seen[k].cost, recorder.seen[k == 0 ? 0 : k - 1].cost);
  }
  EXPECT_EQ(recorder.seen.back().cost, last->cost);
}

TEST(SolverTiersTest, StopsWhenAskedAndStillHasAPlan) {
  class StopAtOnce : public Monitor {
   public:
    bool stop() override { return true; }
  } monitor;
  const Problem problem = randomDinner(2, 12, DinnerLoad::kCrowded);
  const auto outcome = makePlan(problem, {}, &monitor);
  ASSERT_TRUE(outcome.ok());
  EXPECT_TRUE(outcome->stopped);
  EXPECT_FALSE(outcome->optimal());
  EXPECT_THAT(breachTexts(problem, outcome->schedule), IsEmpty());
}

TEST(SolverTiersTest, StopsAtTheWorkLimit) {
  const Problem problem = randomDinner(3, 14, DinnerLoad::kLight);
  const Outcome outcome = planOf(problem, {.seed = 3, .workLimit = 50});
  EXPECT_TRUE(outcome.stopped);
  EXPECT_LE(outcome.work, 60);
}

TEST(SolverTiersTest, EqualProblemsSeedsAndLimitsGiveEqualPlans) {
  const Problem problem = randomDinner(9, 8, DinnerLoad::kCrowded);
  const Outcome first = planOf(problem, {.seed = 7, .workLimit = 3000});
  const Outcome second = planOf(problem, {.seed = 7, .workLimit = 3000});
  EXPECT_EQ(first.schedule, second.schedule);
  EXPECT_EQ(first.work, second.work);
}

TEST(SolverTiersTest, RefusesAProblemThatDoesNotCheck) {
  Problem problem;
  EXPECT_EQ(makePlan(problem, {}).status().code(), absl::StatusCode::kInvalidArgument);
}

}  // namespace
}  // namespace suppertide::planning
