#include "server/planning/replan/replan.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "server/planning/audit/audit.h"
#include "server/planning/replan/loss.h"
#include "tests/support/breach_text.h"
#include "tests/support/disturbance.h"
#include "tests/support/problem_builder.h"
#include "tests/support/random_dinner.h"

namespace suppertide::planning {
namespace {

// Soup: chop 100-120, simmer 120-180, served at 240. Bread: bake 150-190, cool 190-220, served at 240.
class RunningDinnerTest : public ::testing::Test {
 protected:
  RunningDinnerTest() {
    ProblemBuilder kitchen(400);
    kitchen.cook("Ana");
    kitchen.cook("Ben");
    kitchen.oven("old oven", {220}, {.racks = 1, .changeMinutes = 15});
    kitchen.oven("new oven", {220}, {.racks = 1, .changeMinutes = 15});
    kitchen.dish("soup", {.serve = 240, .holdLimit = 120, .lateLimit = 60});
    kitchen.step("chop").lasting(20).by({"Ana", "Ben"});
    kitchen.step("simmer").lasting(60).after("chop", 0, 15);
    kitchen.dish("bread", {.serve = 240, .holdLimit = 120, .lateLimit = 60});
    kitchen.step("bake").lasting(40).in("old oven", 220).orMode("new").lasting(40).in("new oven", 220);
    kitchen.step("cool").lasting(30).after("bake");
    problem_ = kitchen.build();
    plan_ = ScheduleBuilder(problem_)
                .put("chop", 100, "Ana")
                .put("simmer", 120)
                .put("bake", 150)
                .put("cool", 190)
                .done();
  }
  int step(const char* id) const { return stepIndex(problem_, id); }
  StepState& state(Running& running, const char* id) {
    return running.states[static_cast<std::size_t>(step(id))];
  }
  const Placement& placed(const Replanned& result, const char* id) const {
    return result.schedule.steps[static_cast<std::size_t>(step(id))];
  }
  Replanned replanned(const Running& running) {
    ReplanOptions options;
    options.search.grid = 5;
    const auto result = replan(problem_, running, options);
    EXPECT_TRUE(result.ok()) << result.status();
    EXPECT_EQ(breachTexts(result->remains.problem, result->schedule), std::vector<std::string>{});
    return *result;
  }
  const Move* moveOf(const Replanned& result, const char* id) const {
    for (const Move& move : result.moves)
      if (move.step == step(id)) return &move;
    return nullptr;
  }

  Problem problem_;
  Schedule plan_;
};

TEST_F(RunningDinnerTest, NothingMovesWhileAllGoesAsPlanned) {
  for (const Minute now : {0, 99, 110, 160, 200, 239}) {
    const Replanned result = replanned(asPlanned(problem_, plan_, now));
    EXPECT_EQ(result.way, Replanned::Way::kNothingMoves) << now;
    EXPECT_TRUE(result.moves.empty()) << now;
    EXPECT_EQ(result.schedule, plan_) << now;
  }
}

TEST_F(RunningDinnerTest, NothingMovesForWhatHasRoom) {
  Running running = asPlanned(problem_, plan_, 118);
  state(running, "chop").longer = 0;
  state(running, "chop").kind = StepState::Kind::kFinished;
  state(running, "chop").end = 116;
  const Replanned result = replanned(running);
  EXPECT_EQ(result.way, Replanned::Way::kNothingMoves);
  EXPECT_EQ(placed(result, "chop").end, 116);
  EXPECT_EQ(placed(result, "simmer").start, 120);
}

TEST_F(RunningDinnerTest, ALateStepMovesWhatFollowsItAndNothingElse) {
  Running running = asPlanned(problem_, plan_, 110);
  state(running, "chop").longer = 15;
  const Replanned result = replanned(running);
  EXPECT_EQ(placed(result, "chop").start, 100);
  EXPECT_EQ(placed(result, "chop").end, 135);
  EXPECT_EQ(placed(result, "simmer").start, 135);
  EXPECT_EQ(placed(result, "bake").start, 150);
  ASSERT_EQ(result.moves.size(), 1u);
  EXPECT_EQ(result.moves[0].step, step("simmer"));
  EXPECT_EQ(result.moves[0].cause, MoveCause::kFollows);
  EXPECT_EQ(result.moves[0].causeStep, step("chop"));
  EXPECT_EQ(result.moves[0].before.start, 120);
  EXPECT_EQ(result.moves[0].after.start, 135);
}

TEST_F(RunningDinnerTest, AnOvenThatBreaksSendsTheBakeToTheOther) {
  problem_.ovens[0].closed.push_back({130, 400});
  const Replanned result = replanned(asPlanned(problem_, plan_, 130));
  EXPECT_EQ(placed(result, "bake").mode, 1);
  EXPECT_EQ(placed(result, "bake").start, 150);
  const Move* move = moveOf(result, "bake");
  ASSERT_NE(move, nullptr);
  EXPECT_EQ(move->cause, MoveCause::kOven);
  EXPECT_EQ(move->thing, ovenIndex(problem_, "old oven"));
}

TEST_F(RunningDinnerTest, ABakeInAnOvenThatBreaksBeginsAgainInTheOther) {
  problem_.ovens[0].closed.push_back({160, 400});
  const Replanned result = replanned(asPlanned(problem_, plan_, 160));
  EXPECT_EQ(placed(result, "bake").mode, 1);
  EXPECT_GE(placed(result, "bake").start, 160);
  EXPECT_EQ(placed(result, "bake").end - placed(result, "bake").start, 40);
}

TEST_F(RunningDinnerTest, ACookWhoLeavesHandsOver) {
  problem_.cooks[0].available = {{0, 90}};
  const Replanned result = replanned(asPlanned(problem_, plan_, 80));
  EXPECT_EQ(placed(result, "chop").cook, cookIndex(problem_, "Ben"));
  EXPECT_EQ(placed(result, "chop").start, 100);
  const Move* move = moveOf(result, "chop");
  ASSERT_NE(move, nullptr);
  EXPECT_EQ(move->cause, MoveCause::kCook);
}

TEST_F(RunningDinnerTest, WhatWasNotBegunBeginsNow) {
  Running running = asPlanned(problem_, plan_, 112);
  state(running, "chop") = {};
  const Replanned result = replanned(running);
  EXPECT_GE(placed(result, "chop").start, 112);
  const Move* move = moveOf(result, "chop");
  ASSERT_NE(move, nullptr);
  EXPECT_EQ(move->cause, MoveCause::kNotBegun);
}

TEST_F(RunningDinnerTest, ADishThatIsAddedIsFittedIn) {
  Running running = asPlanned(problem_, plan_, 50);
  running.plan.unserved[static_cast<std::size_t>(dishIndex(problem_, "bread"))] = true;
  running.addedDishes = {dishIndex(problem_, "bread")};
  const Replanned result = replanned(running);
  EXPECT_FALSE(result.schedule.unserved[1]);
  const Move* move = moveOf(result, "bake");
  ASSERT_NE(move, nullptr);
  EXPECT_EQ(move->cause, MoveCause::kDish);
  EXPECT_EQ(moveOf(result, "chop"), nullptr);
}

TEST_F(RunningDinnerTest, WhatIsPinnedElsewhereTakesItsFollowersAlong) {
  problem_.steps[static_cast<std::size_t>(step("chop"))].pin.start = 130;
  const Replanned result = replanned(asPlanned(problem_, plan_, 50));
  EXPECT_EQ(placed(result, "chop").start, 130);
  EXPECT_EQ(placed(result, "simmer").start, 150);
  EXPECT_EQ(moveOf(result, "chop")->cause, MoveCause::kPinned);
}

TEST_F(RunningDinnerTest, ADoughUnderWayMayOverrunItsLimitButIsNotThrownAway) {
  // What follows may go on at 150 only, 15 minutes past the dough's limit.
  problem_.steps[static_cast<std::size_t>(step("simmer"))].earliest = 150;
  problem_.steps[static_cast<std::size_t>(step("chop"))].kind = StepKind::kFerment;
  const Replanned result = *replan(problem_, asPlanned(problem_, plan_, 118), {});
  EXPECT_FALSE(result.schedule.unserved[0]);
  EXPECT_EQ(result.strained, std::vector<int>{0});
  const auto breaches = audit(result.remains.problem, result.schedule);
  ASSERT_EQ(breaches.size(), 1u);
  EXPECT_EQ(breaches[0].rule, Rule::kGap);
  EXPECT_EQ(breaches[0].amount, 15);
}

TEST_F(RunningDinnerTest, WhatStaysInTheFridgeWaitsPastItsRecipesLimit) {
  problem_.steps[static_cast<std::size_t>(step("simmer"))].earliest = 150;
  problem_.steps[static_cast<std::size_t>(step("chop"))].kind = StepKind::kChill;
  const Replanned result = *replan(problem_, asPlanned(problem_, plan_, 118), {});
  EXPECT_FALSE(result.schedule.unserved[0]);
  EXPECT_EQ(result.strained, std::vector<int>{0});
}

// A roast that needs longer keeps the only oven from a dough that is already rising: the dough waits.
TEST(ReplanTest, ADoughUnderWayWaitsForARoastThatNeedsLongerRatherThanEitherBeThrownAway) {
  ProblemBuilder kitchen(600);
  kitchen.cook("Ana");
  kitchen.oven("oven", {160, 220}, {.racks = 1, .changeMinutes = 10});
  kitchen.dish("roast", {.serve = 240, .holdLimit = 120, .lateLimit = 60});
  kitchen.step("roast").lasting(70).in("oven", 160);
  kitchen.step("carve").lasting(20).by({"Ana"}).after("roast", 0, 60);
  kitchen.dish("rolls", {.serve = 240, .holdLimit = 120, .lateLimit = 60});
  kitchen.step("proof").kind(StepKind::kFerment).lasting(40);
  kitchen.step("bake").lasting(20).in("oven", 220).after("proof", 0, 15);
  const Problem problem = kitchen.build();
  Running running = asPlanned(problem,
                              ScheduleBuilder(problem)
                                  .put("roast", 60)
                                  .put("carve", 150, "Ana")
                                  .put("proof", 100)
                                  .put("bake", 140)
                                  .done(),
                              120);
  running.states[static_cast<std::size_t>(stepIndex(problem, "roast"))].longer = 40;
  const auto result = replan(problem, running, {});
  ASSERT_TRUE(result.ok()) << result.status();
  EXPECT_EQ(result->schedule.unserved, (std::vector<bool>{false, false}));
  EXPECT_EQ(result->strained, std::vector<int>{dishIndex(problem, "rolls")});
  EXPECT_EQ(result->schedule.steps[static_cast<std::size_t>(stepIndex(problem, "bake"))].start, 180);
  const auto breaches = audit(result->remains.problem, result->schedule);
  ASSERT_EQ(breaches.size(), 1u);
  EXPECT_EQ(breaches[0].rule, Rule::kGap);
}

TEST_F(RunningDinnerTest, NoOtherLimitIsOverrunSinceItMayBeOneOfFoodSafety) {
  problem_.steps[static_cast<std::size_t>(step("simmer"))].earliest = 150;
  const Replanned result = *replan(problem_, asPlanned(problem_, plan_, 118), {});
  EXPECT_TRUE(result.schedule.unserved[0]);
  EXPECT_TRUE(result.strained.empty());
}

TEST_F(RunningDinnerTest, ALimitThatOnlySaysHowGoodADishGetsIsOverrunBeforeTheDishIsLeftOut) {
  problem_.steps[static_cast<std::size_t>(step("simmer"))].earliest = 150;
  Running running = asPlanned(problem_, plan_, 118);
  running.patient.assign(problem_.gaps.size(), true);
  const Replanned result = *replan(problem_, running, {});
  EXPECT_FALSE(result.schedule.unserved[0]);
  EXPECT_EQ(result.strained, std::vector<int>{0});
}

TEST_F(RunningDinnerTest, AnOverrunThatWasToldMovesNothingAgain) {
  problem_.steps[static_cast<std::size_t>(step("simmer"))].earliest = 150;
  Running running = asPlanned(problem_, plan_, 118);
  running.patient.assign(problem_.gaps.size(), true);
  running.plan = replan(problem_, running, {})->schedule;
  const Replanned again = *replan(problem_, running, {});
  EXPECT_EQ(again.way, Replanned::Way::kNothingMoves);
  EXPECT_EQ(again.strained, std::vector<int>{0});
}

TEST_F(RunningDinnerTest, WorkThatEndsSomeMinutesLateKeepsNothingWaiting) {
  Running running = asPlanned(problem_, plan_, 110);
  state(running, "chop").start = 104;
  EXPECT_EQ(replanned(running).way, Replanned::Way::kNothingMoves);
  running = asPlanned(problem_, plan_, 124);
  state(running, "chop").end = 124;
  state(running, "simmer") = {};
  const Replanned result = replanned(running);
  EXPECT_EQ(result.way, Replanned::Way::kNothingMoves);
  EXPECT_EQ(placed(result, "chop").end, 124);
  EXPECT_EQ(placed(result, "simmer").start, 120);
}

TEST_F(RunningDinnerTest, ABakeThatBeginsAMinuteLateEndsAMinuteLaterAndMovesNothing) {
  Running running = asPlanned(problem_, plan_, 160);
  state(running, "bake").start = 151;
  const Replanned result = replanned(running);
  EXPECT_EQ(result.way, Replanned::Way::kNothingMoves);
  EXPECT_EQ(placed(result, "bake").end, 191);
  EXPECT_EQ(placed(result, "cool").start, 190);
}

TEST_F(RunningDinnerTest, AClockCountsTheMinutesThatNobodyCooksTo) {
  problem_.clocks.push_back({"out", {{step("chop"), Edge::kStart, step("simmer"), Edge::kStart, {}}}, 22});
  Running running = asPlanned(problem_, plan_, 124);
  state(running, "simmer") = {};
  EXPECT_TRUE(replan(problem_, running, {})->schedule.unserved[0]);
}

TEST_F(RunningDinnerTest, ADishThatWasLeftOutIsTakenUpWhereItWasLeft) {
  Running running = asPlanned(problem_, plan_, 130);
  running.plan.unserved[0] = true;
  state(running, "simmer") = {};
  const Replanned result = replanned(running);
  EXPECT_FALSE(result.schedule.unserved[0]);
  EXPECT_EQ(placed(result, "chop").start, 100);
  EXPECT_EQ(placed(result, "simmer").start, 130);
}

TEST_F(RunningDinnerTest, WhatADishIsLeftOutForIsTold) {
  const auto lossAt = [&](const Running& running) {
    return lossOf(replan(problem_, running, {})->remains, 0, 5);
  };
  EXPECT_EQ(lossAt(asPlanned(problem_, plan_, 80)), Loss::kBesideOthers);
  Running late = asPlanned(problem_, plan_, 80);
  state(late, "chop").notBefore = 260;
  EXPECT_EQ(lossAt(late), Loss::kTooLate);
  problem_.clocks.push_back({"out", {{step("chop"), Edge::kStart, step("simmer"), Edge::kEnd, {}}}, 60});
  EXPECT_EQ(lossAt(asPlanned(problem_, plan_, 80)), Loss::kFoodSafety);
}

TEST_F(RunningDinnerTest, TheSecondReplanFindsNothingToMove) {
  Running running = asPlanned(problem_, plan_, 110);
  state(running, "chop").longer = 15;
  const Replanned first = replanned(running);
  running.plan = first.schedule;
  EXPECT_EQ(replanned(running).way, Replanned::Way::kNothingMoves);
}

TEST_F(RunningDinnerTest, ListsOfOtherLengthsAreRefused) {
  Running running = asPlanned(problem_, plan_, 0);
  running.states.pop_back();
  EXPECT_EQ(replan(problem_, running, {}).status().code(), absl::StatusCode::kInvalidArgument);
}

TEST(ReplanPropertyTest, EveryNewPlanKeepsTheRulesAndThePast) {
  for (std::uint64_t dinner = 1; dinner <= 4; ++dinner) {
    const Problem problem = randomDinner(dinner, 6, DinnerLoad::kMiddling);
    const auto planned = makePlan(problem, {.seed = 1, .workLimit = 300, .grid = kDinnerGrid});
    ASSERT_TRUE(planned.ok());
    for (std::uint64_t k = 0; k < 25; ++k) {
      const Disturbed disturbed = randomDisturbance(problem, planned->schedule, dinner * 100 + k);
      SCOPED_TRACE(testing::Message() << "dinner " << dinner << ", " << k << ": " << disturbed.what);
      ReplanOptions options;
      options.search = {.seed = 1, .workLimit = 100, .grid = kDinnerGrid};
      const auto result = replan(disturbed.problem, disturbed.running, options);
      ASSERT_TRUE(result.ok()) << result.status();
      // Only what is under way may overrun a limit, and that is said.
      for (const Breach& breach : audit(result->remains.problem, result->schedule)) {
        const int dish = problem.steps[static_cast<std::size_t>(breach.step)].dish;
        EXPECT_NE(std::find(result->strained.begin(), result->strained.end(), dish), result->strained.end())
            << breachText(result->remains.problem, breach);
      }
      for (std::size_t i = 0; i < problem.steps.size(); ++i) {
        const auto dish = static_cast<std::size_t>(problem.steps[i].dish);
        if (result->schedule.unserved[dish] || disturbed.running.plan.unserved[dish]) continue;
        if (!result->remains.past[i])
          EXPECT_GE(result->schedule.steps[i].start, disturbed.running.now) << problem.steps[i].id;
        else
          EXPECT_EQ(result->schedule.steps[i].start, disturbed.running.states[i].start)
              << problem.steps[i].id;
      }
    }
  }
}

}  // namespace
}  // namespace suppertide::planning
