// What is seen of doughs and bakes while an event is cooked.
#include <gtest/gtest.h>

#include <algorithm>

#include "server/compose/replanner.h"
#include "server/compose/seen_bakes.h"
#include "tests/compose/small_dinner.h"

namespace suppertide::compose {
namespace {

class SeenTest : public testing::Test {
 protected:
  SeenTest() : documents_(documentsOf(smallDinner())) {
    auto made = planEvent(documents_, {.seed = 1, .workLimit = 3000});
    EXPECT_TRUE(made.ok());
    plan_ = *made;
  }

  static const v1::PlannedStep& step(const v1::Plan& plan, const std::string& id) {
    return *std::find_if(plan.steps().begin(), plan.steps().end(),
                         [&](const v1::PlannedStep& one) { return one.id() == id; });
  }
  std::int64_t startOf(const std::string& id) const { return step(plan_, id).start_time().seconds(); }
  std::int64_t endOf(const std::string& id) const { return step(plan_, id).end_time().seconds(); }

  v1::Report& report(const std::string& dish, const std::string& step, std::int64_t seconds) {
    v1::Report& added = *progress_.add_reports();
    added.set_id("r" + std::to_string(progress_.reports_size()));
    added.set_dish_id(dish);
    added.set_step_id(step);
    added.mutable_happen_time()->set_seconds(seconds);
    return added;
  }

  RunningPlan runningAt(std::int64_t seconds, const v1::Plan& plan) const {
    google::protobuf::Timestamp now;
    now.set_seconds(seconds);
    return {plan, progress_, now};
  }
  ReplannedEvent replanAt(std::int64_t seconds, const v1::Plan& plan) const {
    auto result = replanEvent(documents_, runningAt(seconds, plan), {.seed = 1, .workLimit = 3000});
    EXPECT_TRUE(result.ok()) << result.status();
    return *std::move(result);
  }
  ReplannedEvent replanAt(std::int64_t seconds) const { return replanAt(seconds, plan_); }

  // What the forecast has of a ferment at a moment.
  double riseAt(const std::string& id, std::int64_t seconds) const {
    double rise = 1;
    for (const v1::DoughForecast& dough : plan_.doughs())
      for (const v1::FermentForecast& stage : dough.stages())
        for (const v1::RiseSample& sample : stage.samples())
          if (stage.step_id() == id && sample.time().seconds() <= seconds) rise = sample.rise();
    return rise;
  }
  static const v1::MovedStep* moved(const v1::Plan& plan, const std::string& id) {
    const auto found = std::find_if(plan.moved_steps().begin(), plan.moved_steps().end(),
                                    [&](const v1::MovedStep& one) { return one.step_id() == id; });
    return found == plan.moved_steps().end() ? nullptr : &*found;
  }

  Documents documents_;
  v1::Plan plan_;
  v1::Progress progress_;
};

TEST_F(SeenTest, ADoughThatRisesAsForecastMovesNothing) {
  const std::int64_t now = endOf("rolls/bulk") - 1800;
  report("rolls", "bulk", now).set_rise(riseAt("rolls/bulk", now));
  const ReplannedEvent result = replanAt(now);
  EXPECT_TRUE(result.nothingMoves) << result.plan.moved_steps(0).ShortDebugString();
  EXPECT_EQ(result.plan.breaches_size(), 0);
}

TEST_F(SeenTest, ASlowDoughIsShapedLaterAndTheCauseIsItsLength) {
  const std::int64_t now = endOf("rolls/bulk") - 1800;
  report("rolls", "bulk", now).set_rise(1 + (riseAt("rolls/bulk", now) - 1) * 0.1);
  const v1::Plan plan = replanAt(now).plan;
  EXPECT_GT(step(plan, "rolls/bulk").end_time().seconds(), endOf("rolls/bulk") + 600);
  const v1::MovedStep* bulk = moved(plan, "rolls/bulk");
  ASSERT_NE(bulk, nullptr);
  EXPECT_EQ(bulk->cause(), v1::MOVE_CAUSE_LENGTH);
  EXPECT_EQ(bulk->new_start_time().seconds(), bulk->old_start_time().seconds());
  EXPECT_GT(bulk->new_end_time().seconds(), bulk->old_end_time().seconds());
  const v1::MovedStep* shape = moved(plan, "rolls/shape");
  ASSERT_NE(shape, nullptr);
  EXPECT_EQ(shape->cause(), v1::MOVE_CAUSE_FOLLOWS);
  EXPECT_GT(shape->new_start_time().seconds(), shape->old_start_time().seconds());
}

TEST_F(SeenTest, AFastDoughIsShapedSooner) {
  const std::int64_t now = endOf("rolls/bulk") - 3600;
  report("rolls", "bulk", now).set_rise(1 + (riseAt("rolls/bulk", endOf("rolls/bulk")) - 1) * 1.6);
  const v1::Plan plan = replanAt(now).plan;
  EXPECT_LT(step(plan, "rolls/bulk").end_time().seconds(), endOf("rolls/bulk") - 300);
}

TEST_F(SeenTest, ATakenBackRiseMovesNothing) {
  const std::int64_t now = endOf("rolls/bulk") - 1800;
  report("rolls", "bulk", now).set_rise(1.02);
  report("", "", now).set_undone_report_id("r1");
  EXPECT_TRUE(replanAt(now).nothingMoves);
}

TEST_F(SeenTest, AColdDoughTakesLonger) {
  const std::int64_t now = startOf("rolls/bulk") + 60;
  report("rolls", "bulk", now).set_dough_celsius(19);
  const v1::Plan plan = replanAt(now).plan;
  EXPECT_GT(step(plan, "rolls/bulk").end_time().seconds(), endOf("rolls/bulk") + 300);
}

TEST_F(SeenTest, ADentThatSpringsBackLateAsksForPatience) {
  const std::int64_t now = endOf("rolls/bulk") - 60;
  for (int i = 0; i < 3; ++i) report("rolls", "bulk", now).set_dent_test(v1::DENT_TEST_SPRINGS_BACK);
  const v1::Plan plan = replanAt(now).plan;
  EXPECT_GE(step(plan, "rolls/bulk").end_time().seconds(), endOf("rolls/bulk"));
}

TEST_F(SeenTest, AReplannedPlanAuditsCleanAndIsAtRest) {
  const std::int64_t now = endOf("rolls/bulk") - 1800;
  report("rolls", "bulk", now).set_rise(1 + (riseAt("rolls/bulk", now) - 1) * 0.1);
  const v1::Plan plan = replanAt(now).plan;
  ASSERT_EQ(plan.unserved_size(), 0);
  ASSERT_EQ(plan.breaches_size(), 0);
  for (const std::int64_t later : {now + 60, now + 3600, endOf("roast/roast")}) {
    const auto audit = auditRunning(documents_, runningAt(later, plan));
    ASSERT_TRUE(audit.ok()) << audit.status();
    EXPECT_TRUE(audit->breaches.empty()) << audit->breaches.front().ShortDebugString();
    const ReplannedEvent again = replanAt(later, plan);
    EXPECT_TRUE(again.nothingMoves) << again.plan.moved_steps(0).ShortDebugString();
  }
}

TEST_F(SeenTest, AReasonInAReplannedPlanIsTheDoughThatWasSeen) {
  const std::int64_t now = endOf("rolls/bulk") - 1800;
  report("rolls", "bulk", now).set_rise(1 + (riseAt("rolls/bulk", now) - 1) * 0.1);
  const v1::Plan plan = replanAt(now).plan;
  const auto told = explainStep(documents_, runningAt(now + 60, plan), "rolls/shape", -30);
  ASSERT_TRUE(told.ok()) << told.status();
  ASSERT_FALSE(told->obstacles.empty());
  EXPECT_EQ(told->obstacles.front().blocking_step_id(), "rolls/bulk");
}

TEST_F(SeenTest, ADelayOfAStepUnderWayStaysInLaterPlans) {
  const std::int64_t now = startOf("roast/roast") + 1800;
  report("roast", "roast", now).mutable_delayed_by()->set_seconds(1200);
  const v1::Plan plan = replanAt(now).plan;
  EXPECT_GE(step(plan, "roast/roast").end_time().seconds(), endOf("roast/roast") + 1200);
  const v1::Plan again = replanAt(now + 600, plan).plan;
  EXPECT_EQ(step(again, "roast/roast").end_time().seconds(), step(plan, "roast/roast").end_time().seconds());
  const auto audit = auditRunning(documents_, runningAt(now + 600, plan));
  ASSERT_TRUE(audit.ok());
  for (const v1::Breach& breach : audit->breaches)
    EXPECT_TRUE(std::any_of(plan.breaches().begin(), plan.breaches().end(), [&](const v1::Breach& b) {
      return b.step_id() == breach.step_id();
    })) << breach.ShortDebugString();
}

TEST_F(SeenTest, AColdCentreBakesLongerAndAWarmOneKeepsItsTime) {
  const std::int64_t now = startOf("roast/roast") + 3600;
  report("roast", "roast", now).set_core_celsius(30);
  const v1::Plan slow = replanAt(now).plan;
  EXPECT_GT(step(slow, "roast/roast").end_time().seconds(), endOf("roast/roast") + 600);
  ASSERT_NE(moved(slow, "roast/roast"), nullptr);
  EXPECT_EQ(moved(slow, "roast/roast")->cause(), v1::MOVE_CAUSE_LENGTH);
  progress_.clear_reports();
  report("roast", "roast", now).set_core_celsius(64);
  EXPECT_TRUE(replanAt(now).nothingMoves);
}

v1::OvenNeed roast() {
  v1::OvenNeed need;
  need.set_start_core_celsius(12);
  need.set_end_core_celsius(74);
  return need;
}

TEST_F(SeenTest, AnOvenReadWhileItHeatsUpBeginsNoBakeAndStretchesNone) {
  const std::int64_t now = startOf("roast/roast") - 10 * 60;
  report("roast", "roast", now).set_oven_celsius(95);
  const ReplannedEvent result = replanAt(now);
  EXPECT_TRUE(result.nothingMoves) << result.plan.moved_steps(0).ShortDebugString();
}

TEST(SeenBakeTest, ACentreOnItsWayLeavesTheMinutes) {
  // From 12 to 74 in 120 minutes at 165 degrees: half-way at 165 - 153 * sqrt(91 / 153) = 47.
  EXPECT_NEAR(bakeMinutesBySight(roast(), 165, 120, 1000, {{1060, true, 47.0}}), 120, 1);
}

TEST(SeenBakeTest, DoneIsDone) {
  EXPECT_EQ(bakeMinutesBySight(roast(), 165, 120, 1000, {{1090, true, 75.0}}), 90);
}

TEST(SeenBakeTest, ACoolOvenTakesLongerUntilItIsRight) {
  const int cool = bakeMinutesBySight(roast(), 165, 120, 1000, {{1000, false, 130.0}});
  EXPECT_GT(cool, 150);
  const int mended =
      bakeMinutesBySight(roast(), 165, 120, 1000, {{1000, false, 130.0}, {1030, false, 160.0}});
  EXPECT_GT(mended, 120);
  EXPECT_LT(mended, cool);
}

TEST(SeenBakeTest, ASwingOfTheThermostatSaysNothing) {
  EXPECT_NEAR(bakeMinutesBySight(roast(), 165, 120, 1000, {{1010, false, 155.0}}), 120, 1);
}

TEST(SeenBakeTest, WithoutTemperaturesOfTheCentreTheMinutesStay) {
  EXPECT_EQ(bakeMinutesBySight({}, 165, 120, 1000, {{1060, true, 20.0}}), 120);
}

TEST(SeenBakeTest, AnOvenGoneColdIsNoMoreThanThreeTimesAsLong) {
  EXPECT_EQ(bakeMinutesBySight(roast(), 165, 120, 1000, {{1010, false, 40.0}}), 360);
}

}  // namespace
}  // namespace suppertide::compose
