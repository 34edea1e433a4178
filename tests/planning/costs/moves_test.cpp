// Tier kMoves, in points: away from what was announced.
#include "server/planning/model/costs/moves.h"

#include "gtest/gtest.h"
#include "server/planning/model/schedule.h"
#include "tests/support/problem_builder.h"

namespace suppertide::planning {
namespace {

Problem announcedStir(int weight) {
  ProblemBuilder kitchen(600);
  kitchen.cook("Ana");
  kitchen.cook("Ben");
  kitchen.dish("soup", {.serve = 600});
  kitchen.step("stir")
      .lasting(20)
      .by({"Ana", "Ben"})
      .announced(100, "Ana", weight)
      .orMode("whisk")
      .lasting(20)
      .by({"Ana"});
  return kitchen.build();
}

std::int64_t moves(const Problem& problem, Minute start, const char* cook, int mode = 0) {
  const Schedule schedule = ScheduleBuilder(problem).put("stir", start, cook, mode).done();
  return costIn(costOf(problem, schedule).total, Tier::kMoves);
}

TEST(MovesTierTest, WhereItWasToldCostsNothing) {
  EXPECT_EQ(moves(announcedStir(1), 100, "Ana"), 0);
}

TEST(MovesTierTest, AStartMovedByFiveMinutesOrMoreCostsItsMinutesAndTen) {
  EXPECT_EQ(moves(announcedStir(1), 104, "Ana"), 0);
  EXPECT_EQ(moves(announcedStir(1), 96, "Ana"), 0);
  EXPECT_EQ(moves(announcedStir(1), 105, "Ana"), 15);
  EXPECT_EQ(moves(announcedStir(1), 70, "Ana"), 40);
}

TEST(MovesTierTest, AnotherModeOrCookCosts) {
  EXPECT_EQ(moves(announcedStir(1), 100, "Ana", 1), 10);
  EXPECT_EQ(moves(announcedStir(1), 100, "Ben"), 15);
  EXPECT_EQ(moves(announcedStir(1), 110, "Ben", 1), 20 + 10 + 15);
}

TEST(MovesTierTest, TheWeightMultiplies) {
  EXPECT_EQ(moves(announcedStir(3), 110, "Ben"), 3 * (20 + 15));
  EXPECT_EQ(moves(announcedStir(0), 110, "Ben"), 0);
}

TEST(MovesTierTest, WhatWasNotAnnouncedOrIsUnservedCostsNothing) {
  Problem problem = announcedStir(1);
  const auto plan = ScheduleBuilder(problem).put("stir", 200, "Ben").without("soup");
  EXPECT_EQ(costIn(costOf(problem, plan.done()).total, Tier::kMoves), 0);
  problem.steps[0].announced.reset();
  EXPECT_EQ(moves(problem, 200, "Ben"), 0);
}

}  // namespace
}  // namespace suppertide::planning
