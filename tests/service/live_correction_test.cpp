#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/service/supper.h"

namespace suppertide::service {
namespace {

using testing::ElementsAre;

v1::Report late(const std::string& step, int minutes) {
  v1::Report report = Supper::about(step);
  report.mutable_delayed_by()->set_seconds(minutes * kMinute);
  return report;
}

TEST(LiveCorrectionTest, ADelayMovesThePlanByItselfAndTellsWhatAndWhy) {
  Supper supper;
  const v1::Plan before = supper.makePlan();
  Follower follower(supper.served(), supper.served().token);
  supper.timeIs(Supper::startOf(before, "roast/season") - 20 * kMinute);
  const v1::Report report = late("roast/season", 40);
  ASSERT_TRUE(supper.tell(report).ok());
  const v1::Plan after = follower.nextPlan();
  EXPECT_GE(Supper::startOf(after, "roast/season"), Supper::startOf(before, "roast/season") + 40 * kMinute);
  const v1::MovedStep* season = Supper::moved(after, "roast/season");
  ASSERT_NE(season, nullptr);
  EXPECT_EQ(season->cause(), v1::MOVE_CAUSE_REPORTED);
  EXPECT_EQ(season->old_start_time().seconds(), Supper::startOf(before, "roast/season"));
  EXPECT_THAT(after.correction().report_ids(), ElementsAre(report.id()));
  EXPECT_EQ(after.breaches_size(), 0);
  EXPECT_EQ(after.meta().updated_by_member_id(), "");
}

TEST(LiveCorrectionTest, AStepDoneAsPlannedMovesNothingAndStoresNoPlan) {
  Supper supper;
  const v1::Plan before = supper.makePlan();
  Follower follower(supper.served(), supper.served().token);
  supper.timeIs(Supper::step(before, "roast/season").end_time().seconds());
  v1::Report done = Supper::about("roast/season");
  done.set_member_id(Supper::step(before, "roast/season").cook_member_id());
  done.set_finished(true);
  ASSERT_TRUE(supper.tell(done).ok());
  // The next plan that comes is the one of the delay: none came for the step done in time.
  const v1::Report report = late("gratin/prepare", 30);
  supper.timeIs(Supper::step(before, "roast/season").end_time().seconds() + 1);
  ASSERT_TRUE(supper.tell(report).ok());
  EXPECT_THAT(follower.nextPlan().correction().report_ids(), ElementsAre(done.id(), report.id()));
}

TEST(LiveCorrectionTest, ARiseSeenChangesTheForecastAtOnce) {
  Supper supper;
  const v1::Plan before = supper.makePlan();
  Follower follower(supper.served(), supper.served().token);
  const v1::PlannedStep& bulk = Supper::step(before, "rolls/bulk");
  supper.timeIs((bulk.start_time().seconds() + bulk.end_time().seconds()) / 2);
  v1::Report rise = Supper::about("rolls/bulk");
  rise.set_rise(1.02);
  ASSERT_TRUE(supper.tell(rise).ok());
  const v1::Plan after = follower.nextPlan();
  const auto bestOf = [](const v1::Plan& plan) {
    for (const v1::FermentForecast& stage : plan.doughs(0).stages())
      if (stage.step_id() == "rolls/bulk") return stage.best_time().seconds();
    return std::int64_t{0};
  };
  EXPECT_GT(bestOf(after), bestOf(before) + 5 * kMinute);
}

TEST(LiveCorrectionTest, ABakeThatNeedsTenMoreEndsTenMinutesLater) {
  Supper supper;
  const v1::Plan before = supper.makePlan();
  Follower follower(supper.served(), supper.served().token);
  const v1::PlannedStep& bake = Supper::step(before, "gratin/bake");
  supper.timeIs(bake.end_time().seconds());
  v1::Report more = Supper::about("gratin/bake");
  more.mutable_needs_more_duration()->set_seconds(10 * kMinute);
  ASSERT_TRUE(supper.tell(more).ok());
  const v1::Plan after = follower.nextPlan();
  EXPECT_EQ(Supper::step(after, "gratin/bake").end_time().seconds(),
            bake.end_time().seconds() + 10 * kMinute);
}

TEST(LiveCorrectionTest, WithAskFirstThePlanWaitsForAHost) {
  Supper supper(v1::LIVE_CORRECTION_ASK_FIRST);
  const v1::Plan before = supper.makePlan();
  Follower follower(supper.served(), supper.served().token);
  supper.timeIs(Supper::startOf(before, "roast/season") - 20 * kMinute);
  ASSERT_TRUE(supper.tell(late("roast/season", 40)).ok());
  const v1::PlanProposal proposal =
      follower.next([](const v1::Change& c) { return c.has_plan_proposal(); }).plan_proposal();
  EXPECT_EQ(supper.stored().meta().etag(), before.meta().etag());
  EXPECT_NE(Supper::moved(proposal.plan(), "roast/season"), nullptr);

  v1::AcceptProposalRequest asked;
  asked.set_household_id(supper.served().household);
  asked.set_event_id("supper");
  asked.set_etag("another");
  asked.set_request_id(freshRequest());
  v1::AcceptProposalResponse answer;
  const auto stub = v1::PlanService::NewStub(supper.served().channel());
  const auto stale = with(supper.served().token);
  EXPECT_EQ(stub->AcceptProposal(stale.get(), asked, &answer).error_code(), grpc::StatusCode::ABORTED);
  asked.set_etag(proposal.meta().etag());
  asked.set_request_id(freshRequest());
  const auto first = with(supper.served().token);
  const grpc::Status accepted = stub->AcceptProposal(first.get(), asked, &answer);
  ASSERT_TRUE(accepted.ok()) << accepted.error_message();
  EXPECT_EQ(Supper::startOf(supper.stored(), "roast/season"),
            Supper::startOf(proposal.plan(), "roast/season"));
  const v1::Change gone = follower.next([](const v1::Change& c) { return c.has_deleted(); });
  EXPECT_EQ(gone.deleted().kind(), "plan_proposal");
  // The answer was lost: the same request has the same outcome.
  const auto again = with(supper.served().token);
  EXPECT_TRUE(stub->AcceptProposal(again.get(), asked, &answer).ok());
  asked.set_request_id(freshRequest());
  const auto nothing = with(supper.served().token);
  EXPECT_EQ(stub->AcceptProposal(nothing.get(), asked, &answer).error_code(), grpc::StatusCode::NOT_FOUND);
}

TEST(LiveCorrectionTest, ADismissedProposalLeavesThePlan) {
  Supper supper(v1::LIVE_CORRECTION_ASK_FIRST);
  const v1::Plan before = supper.makePlan();
  Follower follower(supper.served(), supper.served().token);
  supper.timeIs(Supper::startOf(before, "roast/season") - 20 * kMinute);
  ASSERT_TRUE(supper.tell(late("roast/season", 40)).ok());
  follower.next([](const v1::Change& c) { return c.has_plan_proposal(); });
  v1::DismissProposalRequest asked;
  asked.set_household_id(supper.served().household);
  asked.set_event_id("supper");
  asked.set_request_id(freshRequest());
  v1::DismissProposalResponse answer;
  const auto context = with(supper.served().token);
  ASSERT_TRUE(v1::PlanService::NewStub(supper.served().channel())
                  ->DismissProposal(context.get(), asked, &answer)
                  .ok());
  follower.next([](const v1::Change& c) { return c.deleted().kind() == "plan_proposal"; });
  EXPECT_EQ(supper.stored().meta().etag(), before.meta().etag());
}

TEST(LiveCorrectionTest, WithCorrectionOffOnlyReportsAreStored) {
  Supper supper(v1::LIVE_CORRECTION_OFF);
  const v1::Plan before = supper.makePlan();
  supper.timeIs(Supper::startOf(before, "roast/season") - 20 * kMinute);
  v1::AddReportsResponse answer;
  ASSERT_TRUE(supper.tell(late("roast/season", 40), &answer).ok());
  // Stopping waits for whatever a correction would be doing.
  supper.served().server().backend().corrections().stop();
  EXPECT_EQ(supper.stored().meta().etag(), before.meta().etag());
}

TEST(LiveCorrectionTest, ManyReportsAtOnceEndInOnePlanThatKnowsThemAll) {
  Supper supper;
  const v1::Plan before = supper.makePlan();
  Follower follower(supper.served(), supper.served().token);
  supper.timeIs(Supper::startOf(before, "roast/season") - 30 * kMinute);
  std::string last;
  for (int minutes = 5; minutes <= 40; minutes += 5) {
    const v1::Report report = late("roast/season", minutes);
    ASSERT_TRUE(supper.tell(report).ok());
    last = report.id();
  }
  for (;;) {
    const v1::Plan plan = follower.nextPlan();
    ASSERT_FALSE(plan.id().empty());
    const auto& ids = plan.correction().report_ids();
    if (std::find(ids.begin(), ids.end(), last) != ids.end()) break;
  }
  EXPECT_EQ(supper.stored().breaches_size(), 0);
}

// What a person asks for right after a report finds the correction at any point of its way.
TEST(LiveCorrectionTest, APersonsReplanningIsNeverRefusedForACorrection) {
  Supper supper;
  const v1::Plan before = supper.makePlan();
  supper.timeIs(Supper::startOf(before, "roast/season") - 30 * kMinute);
  const auto stub = v1::PlanService::NewStub(supper.served().channel());
  v1::ReplanRequest asked;
  asked.set_household_id(supper.served().household);
  asked.set_event_id("supper");
  for (int k = 0; k < 12; ++k) {
    const v1::Report report = late("roast/season", 5);
    ASSERT_TRUE(supper.tell(report).ok());
    asked.set_request_id(freshRequest());
    const auto context = with(supper.served().token);
    const auto stream = stub->Replan(context.get(), asked);
    v1::MakePlanResponse message;
    while (stream->Read(&message)) {
    }
    const grpc::Status status = stream->Finish();
    ASSERT_TRUE(status.ok()) << k << ": " << status.error_message();
  }
  EXPECT_EQ(supper.stored().breaches_size(), 0);
}

TEST(LiveCorrectionTest, WhereStepsWereAndHowOftenTheyMovedIsKept) {
  Supper supper;
  const v1::Plan before = supper.makePlan();
  EXPECT_FALSE(Supper::step(before, "roast/season").has_first_start_time());
  Follower follower(supper.served(), supper.served().token);
  supper.timeIs(Supper::startOf(before, "roast/season") - 30 * kMinute);
  ASSERT_TRUE(supper.tell(late("roast/season", 20)).ok());
  const v1::Plan second = follower.nextPlan();
  ASSERT_TRUE(supper.tell(late("roast/season", 20)).ok());
  const v1::Plan third = follower.nextPlan();
  const v1::PlannedStep& season = Supper::step(third, "roast/season");
  EXPECT_EQ(season.first_start_time().seconds(), Supper::startOf(before, "roast/season"));
  EXPECT_EQ(Supper::step(second, "roast/season").move_count(), 1);
  EXPECT_EQ(season.move_count(), 2);
}

}  // namespace
}  // namespace suppertide::service
