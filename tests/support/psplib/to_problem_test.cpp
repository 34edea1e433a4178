#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <sstream>

#include "server/planning/audit/audit.h"
#include "server/planning/solver/solver.h"
#include "tests/support/psplib/project.h"
#include "tests/support/psplib/samples.h"

namespace suppertide::planning::psplib {
namespace {

Project read(const char* text) {
  std::istringstream in(text);
  return *readProject(in);
}

Project readLags(const char* text) {
  std::istringstream in(text);
  return *readLagProject(in);
}

Outcome solve(const Problem& problem) {
  return *makePlan(problem, {.seed = 1, .workLimit = 100'000, .grid = 1});
}

TEST(PsplibProblemTest, TheLongestChainTakesTheShortestModes) {
  EXPECT_EQ(longestChain(read(kOneMode)), 6);
  EXPECT_EQ(longestChain(read(kTwoModes)), 2);
  EXPECT_EQ(longestChain(readLags(kLags)), 4);
}

TEST(PsplibProblemTest, LatenessIsHowFarTheMakespanIsAboveTheChain) {
  const Problem oneMode = *toProblem(read(kOneMode));
  const Outcome outcome = solve(oneMode);
  EXPECT_GE(outcome.provenTiers, 2);
  EXPECT_EQ(costIn(outcome.cost, Tier::kLateness), 9 - 6);
  EXPECT_THAT(audit(oneMode, outcome.schedule), testing::IsEmpty());
}

TEST(PsplibProblemTest, AStockIsUsedUp) {
  const Problem twoModes = *toProblem(read(kTwoModes));
  const Outcome outcome = solve(twoModes);
  EXPECT_GE(outcome.provenTiers, 2);
  EXPECT_EQ(costIn(outcome.cost, Tier::kLateness), 6 - 2);
  EXPECT_THAT(audit(twoModes, outcome.schedule), testing::IsEmpty());
}

TEST(PsplibProblemTest, MaximumLagsAreKept) {
  const Problem lags = *toProblem(readLags(kLags));
  const Outcome outcome = solve(lags);
  EXPECT_GE(outcome.provenTiers, 2);
  EXPECT_EQ(costIn(outcome.cost, Tier::kLateness), 0);
  EXPECT_THAT(audit(lags, outcome.schedule), testing::IsEmpty());
}

TEST(PsplibProblemTest, WhatHasNoScheduleIsUnserved) {
  const Outcome outcome = solve(*toProblem(readLags(kUnsatLags)));
  EXPECT_GE(outcome.provenTiers, 1);
  EXPECT_TRUE(outcome.schedule.unserved.front());
}

TEST(PsplibProblemTest, AModeThatNeedsMoreThanThereIsIsLeftOut) {
  Project project = read(kTwoModes);
  project.jobs[1].modes[0].consumes[0] = 5;
  EXPECT_EQ(toProblem(project)->steps[1].modes.size(), 1u);
}

TEST(PsplibProblemTest, AJobThatNoModeCanDoLeavesNoSchedule) {
  Project project = read(kOneMode);
  project.jobs[1].modes[0].uses[0] = 2;
  const Outcome outcome = solve(*toProblem(project));
  EXPECT_GE(outcome.provenTiers, 1);
  EXPECT_TRUE(outcome.schedule.unserved.front());
}

TEST(PsplibProblemTest, RefusesAResourceForNoTime) {
  Project project = read(kTwoModes);
  project.jobs[1].modes[0].length = 0;
  EXPECT_EQ(toProblem(project).status().code(), absl::StatusCode::kInvalidArgument);
}

}  // namespace
}  // namespace suppertide::planning::psplib
