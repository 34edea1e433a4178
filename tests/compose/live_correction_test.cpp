#include "server/compose/live_correction.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <random>

#include "server/compose/running_problem.h"
#include "tests/compose/small_dinner.h"

namespace suppertide::compose {
namespace {

class CorrectingTest : public testing::Test {
 protected:
  CorrectingTest() : documents_(documentsOf(smallDinner())) {
    v1::Oven second = documents_.kitchen.ovens(0);
    second.set_id("second");
    *documents_.kitchen.add_ovens() = second;
    auto made = planEvent(documents_, {.seed = 1, .workLimit = 3000});
    EXPECT_TRUE(made.ok());
    plan_ = *made;
  }

  const v1::PlannedStep& step(const std::string& id) const {
    for (const v1::PlannedStep& one : plan_.steps())
      if (one.id() == id) return one;
    ADD_FAILURE() << id;
    return plan_.steps(0);
  }
  static v1::Report about(const v1::PlannedStep& step, std::int64_t seconds, int number) {
    v1::Report report;
    report.set_id("r" + std::to_string(number));
    report.set_dish_id(step.dish_id());
    report.set_step_id(step.step_id());
    report.mutable_happen_time()->set_seconds(seconds);
    return report;
  }
  CorrectedPlan corrected(const v1::Progress& progress, std::int64_t now) {
    google::protobuf::Timestamp moment;
    moment.set_seconds(now);
    auto made = correctPlan(documents_, {plan_, progress, moment}, {.seed = 1, .workLimit = 2000});
    EXPECT_TRUE(made.ok()) << made.status();
    return *std::move(made);
  }

  Documents documents_;
  v1::Plan plan_;
};

TEST_F(CorrectingTest, NothingFluttersWhateverIsLate) {
  std::mt19937 random(7);
  for (int trial = 0; trial < 25; ++trial) {
    SCOPED_TRACE(testing::Message() << "trial " << trial);
    const v1::PlannedStep& late =
        plan_.steps(static_cast<int>(random() % static_cast<unsigned>(plan_.steps_size())));
    const std::int64_t now = late.start_time().seconds() - static_cast<std::int64_t>(random() % 20) * 60;
    v1::Progress progress;
    *progress.add_reports() = about(late, now, 1);
    progress.mutable_reports(0)->mutable_delayed_by()->set_seconds(
        60 + static_cast<std::int64_t>(random() % 45) * 60);
    const CorrectedPlan made = corrected(progress, now);
    for (const v1::MovedStep& moved : made.plan.moved_steps()) {
      if (!moved.has_old_start_time() || !moved.has_new_start_time()) continue;
      const std::int64_t by = std::abs(moved.new_start_time().seconds() - moved.old_start_time().seconds());
      EXPECT_TRUE(by == 0 || by >= 300) << moved.step_id() << " by " << by << " s";
      const bool near = moved.old_start_time().seconds() > now &&
                        moved.old_start_time().seconds() <= now + kAboutToStart * 60;
      const auto& forced = made.forcedStepIds;
      if (near && moved.step_id() != late.id()) {
        EXPECT_NE(std::find(forced.begin(), forced.end(), moved.step_id()), forced.end()) << moved.step_id();
      }
    }
    for (const v1::PlannedStep& one : made.plan.steps()) EXPECT_FALSE(one.pinned()) << one.id();
  }
}

TEST_F(CorrectingTest, AStepThatStaysWhereItIsSaysNothingNew) {
  const v1::PlannedStep& season = step("roast/season");
  v1::Progress progress;
  *progress.add_reports() = about(season, season.end_time().seconds(), 1);
  progress.mutable_reports(0)->set_finished(true);
  const CorrectedPlan made = corrected(progress, season.end_time().seconds());
  EXPECT_TRUE(made.nothingMoves);
  EXPECT_FALSE(made.saysMore);
}

TEST_F(CorrectingTest, FoodUnderWayIsMissedMoreThanWhatNobodyHasBegun) {
  const v1::PlannedStep& prepare = step("gratin/prepare");
  v1::Progress progress;
  google::protobuf::Timestamp now;
  now.set_seconds(std::min(prepare.start_time().seconds(), step("roast/season").start_time().seconds()) - 60);
  const auto missed = [&](int dish) {
    const auto problem = runningProblem(documents_, {plan_, progress, now});
    EXPECT_TRUE(problem.ok()) << problem.status();
    return (*problem)->composition->problem.dishes[static_cast<std::size_t>(dish)].unservedCost;
  };
  constexpr int kRoast = 1, kGratin = 2;
  EXPECT_GT(missed(kRoast), missed(kGratin));
  *progress.add_reports() = about(prepare, now.seconds(), 1);
  progress.mutable_reports(0)->set_finished(true);
  EXPECT_GT(missed(kGratin), missed(kRoast));
  EXPECT_LT(missed(kGratin), 2 * missed(kRoast)) << "one dish less still outweighs which";
}

TEST_F(CorrectingTest, ANoteIsNoSignThatAStepHasBegun) {
  const v1::PlannedStep& carve = step("roast/carve");
  v1::Progress progress;
  *progress.add_reports() = about(carve, carve.start_time().seconds() - 3600, 1);
  progress.mutable_reports(0)->set_note("the long knife");
  EXPECT_TRUE(corrected(progress, carve.start_time().seconds() - 3600).nothingMoves);
}

TEST_F(CorrectingTest, ABakeDoneByItsLookEndsThen) {
  const v1::PlannedStep& roast = step("roast/roast");
  const std::int64_t now = roast.end_time().seconds() - 20 * 60;
  v1::Progress progress;
  *progress.add_reports() = about(roast, now, 1);
  progress.mutable_reports(0)->set_done(true);
  const CorrectedPlan made = corrected(progress, now);
  for (const v1::PlannedStep& one : made.plan.steps()) {
    if (one.id() != roast.id()) continue;
    EXPECT_LE(one.end_time().seconds(), now + 5 * 60);
  }
}

TEST_F(CorrectingTest, AReportThatAgreesWithAnotherCountsOnce) {
  const v1::PlannedStep& season = step("roast/season");
  const std::int64_t start = season.start_time().seconds();
  v1::Progress progress;
  *progress.add_reports() = about(season, start, 1);
  progress.mutable_reports(0)->set_started(true);
  *progress.add_reports() = about(season, start + 600, 2);
  progress.mutable_reports(1)->set_started(true);
  progress.mutable_reports(1)->set_agrees_with_report_id("r1");
  const CorrectedPlan made = corrected(progress, start + 900);
  for (const v1::PlannedStep& one : made.plan.steps())
    if (one.id() == season.id()) {
      EXPECT_EQ(one.start_time().seconds(), start);
    }
}

}  // namespace
}  // namespace suppertide::compose
