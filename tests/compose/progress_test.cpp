#include "server/compose/progress.h"

#include <gtest/gtest.h>

#include "server/compose/replanner.h"
#include "tests/compose/small_dinner.h"

namespace suppertide::compose {
namespace {

using Kind = planning::StepState::Kind;

class ProgressReadingTest : public testing::Test {
 protected:
  ProgressReadingTest() : documents_(documentsOf(smallDinner())) {
    auto made = planEvent(documents_, {.seed = 1, .workLimit = 3000});
    EXPECT_TRUE(made.ok());
    plan_ = *made;
  }

  const v1::PlannedStep& planned(const std::string& id) const {
    for (const v1::PlannedStep& step : plan_.steps())
      if (step.id() == id) return step;
    ADD_FAILURE() << id;
    return plan_.steps(0);
  }
  v1::Report& report(const std::string& dish, const std::string& step, std::int64_t seconds) {
    v1::Report& added = *progress_.add_reports();
    added.set_id("r" + std::to_string(progress_.reports_size()));
    added.set_dish_id(dish);
    added.set_step_id(step);
    added.mutable_happen_time()->set_seconds(seconds);
    return added;
  }
  // The state of a step at `seconds`.
  planning::StepState stateOf(const std::string& id, std::int64_t seconds, int known = 0) {
    auto composition = composeProblem(documents_);
    EXPECT_TRUE(composition.ok());
    google::protobuf::Timestamp now;
    now.set_seconds(seconds);
    const auto running = runningOf(*composition, plan_, progress_, known, composition->axis.minuteOf(now));
    for (std::size_t i = 0; i < composition->steps.size(); ++i)
      if (composition->stepId(static_cast<int>(i)) == id) return running.states[i];
    ADD_FAILURE() << id;
    return {};
  }

  Documents documents_;
  v1::Plan plan_;
  v1::Progress progress_;
};

TEST_F(ProgressReadingTest, SilenceMeansAsPlanned) {
  const v1::PlannedStep& season = planned("roast/season");
  EXPECT_EQ(stateOf("roast/season", season.start_time().seconds() - 300).kind, Kind::kWaiting);
  EXPECT_EQ(stateOf("roast/season", season.start_time().seconds() + 300).kind, Kind::kStarted);
  EXPECT_EQ(stateOf("roast/season", season.end_time().seconds() + 300).kind, Kind::kFinished);
}

TEST_F(ProgressReadingTest, WhatFollowsALateStepHasNotBegun) {
  const v1::PlannedStep& season = planned("roast/season");
  const v1::PlannedStep& temper = planned("roast/temper");
  report("roast", "season", season.start_time().seconds()).set_started(true);
  const std::int64_t now = temper.start_time().seconds() + 300;
  EXPECT_EQ(stateOf("roast/season", now).kind, Kind::kStarted);
  EXPECT_EQ(stateOf("roast/temper", now).kind, Kind::kWaiting);
}

TEST_F(ProgressReadingTest, TrueTimesCountAndUndoneReportsDoNot) {
  const v1::PlannedStep& season = planned("roast/season");
  const std::int64_t start = season.start_time().seconds();
  report("roast", "season", start - 600).set_started(true);
  report("roast", "season", start - 300).set_finished(true);
  planning::StepState state = stateOf("roast/season", start);
  EXPECT_EQ(state.kind, Kind::kFinished);
  EXPECT_EQ(state.end - state.start, 5);
  report("", "", start).set_undone_report_id("r2");
  EXPECT_EQ(stateOf("roast/season", start).kind, Kind::kStarted);
}

TEST_F(ProgressReadingTest, ADelayCountsUntilAPlanHasIt) {
  const std::int64_t start = planned("roast/season").start_time().seconds();
  report("roast", "season", start - 900).mutable_delayed_by()->set_seconds(1200);
  const planning::StepState late = stateOf("roast/season", start - 900);
  EXPECT_EQ(late.kind, Kind::kWaiting);
  EXPECT_GT(late.notBefore, 0);
  EXPECT_EQ(stateOf("roast/season", start - 900, 1).notBefore, 0);
}

TEST_F(ProgressReadingTest, ASkippedStepIsNotWaitedFor) {
  const std::int64_t start = planned("rolls/fold").start_time().seconds();
  report("rolls", "fold", start).set_skipped(true);
  EXPECT_EQ(stateOf("rolls/fold", start + 60).kind, Kind::kSkipped);
}

TEST_F(ProgressReadingTest, NothingMovesAtAnyMomentOfAnEveningThatGoesAsPlanned) {
  for (const v1::PlannedStep& step : plan_.steps()) {
    google::protobuf::Timestamp now = step.start_time();
    now.set_seconds(now.seconds() + 60);
    const auto result = replanEvent(documents_, {plan_, progress_, now}, {.seed = 1, .workLimit = 1000});
    ASSERT_TRUE(result.ok()) << result.status();
    EXPECT_TRUE(result->nothingMoves) << step.id();
    EXPECT_EQ(result->plan.moved_steps_size(), 0) << step.id();
    EXPECT_EQ(result->plan.unserved_size(), 0) << step.id();
    EXPECT_EQ(result->plan.breaches_size(), 0) << step.id() << result->plan.breaches(0).ShortDebugString();
  }
}

}  // namespace
}  // namespace suppertide::compose
