#include <gtest/gtest.h>

#include <algorithm>

#include "tests/compose/small_dinner.h"
#include "tests/service/served.h"

namespace suppertide::service {
namespace {

// The small dinner with two ovens alike, planned and stored.
class ReplanTest : public testing::Test {
 protected:
  void SetUp() override {
    served_.found();
    v1::Bundle dinner = compose::smallDinner();
    v1::Kitchen& kitchen = *dinner.mutable_kitchens(0);
    v1::Oven second = kitchen.ovens(0);
    second.set_id("second");
    second.set_display_name("Second oven");
    *kitchen.add_ovens() = second;
    // What reports alone would do is tested elsewhere.
    dinner.mutable_events(0)->set_live_correction(v1::LIVE_CORRECTION_OFF);
    event_ = dinner.events(0);
    ASSERT_TRUE(served_.import(dinner).ok());
    stub_ = v1::PlanService::NewStub(served_.channel());
    makePlan();
  }

  void makePlan() {
    v1::MakePlanRequest asked;
    asked.set_household_id(served_.household);
    asked.set_event_id("supper");
    asked.set_work_limit(3000);
    asked.set_request_id(freshRequest());
    const auto context = with(served_.token);
    const auto stream = stub_->MakePlan(context.get(), asked);
    v1::MakePlanResponse message;
    while (stream->Read(&message)) plan_ = message.plan();
    ASSERT_TRUE(stream->Finish().ok());
    ASSERT_EQ(plan_.unserved_size(), 0);
    plan_ = stored();
  }

  v1::Plan stored() {
    v1::GetPlanRequest asked;
    asked.set_household_id(served_.household);
    asked.set_event_id("supper");
    v1::Plan plan;
    const auto context = with(served_.token);
    EXPECT_TRUE(stub_->GetPlan(context.get(), asked, &plan).ok());
    return plan;
  }

  v1::ReplanRequest request(bool validateOnly) {
    v1::ReplanRequest asked;
    asked.set_household_id(served_.household);
    asked.set_event_id("supper");
    asked.set_request_id(freshRequest());
    asked.set_validate_only(validateOnly);
    return asked;
  }
  v1::MakePlanResponse replan(const v1::ReplanRequest& asked) {
    const auto context = with(served_.token);
    const auto stream = stub_->Replan(context.get(), asked);
    v1::MakePlanResponse message;
    v1::MakePlanResponse last;
    while (stream->Read(&message)) last = message;
    const grpc::Status status = stream->Finish();
    EXPECT_TRUE(status.ok()) << status.error_message();
    EXPECT_TRUE(last.final());
    return last;
  }
  grpc::StatusCode refusal(const v1::ReplanRequest& asked) {
    const auto context = with(served_.token);
    const auto stream = stub_->Replan(context.get(), asked);
    v1::MakePlanResponse message;
    while (stream->Read(&message)) {
    }
    return stream->Finish().error_code();
  }

  static const v1::PlannedStep& step(const v1::Plan& plan, const std::string& id) {
    return *std::find_if(plan.steps().begin(), plan.steps().end(),
                         [&](const v1::PlannedStep& s) { return s.id() == id; });
  }
  static const v1::MovedStep* moved(const v1::Plan& plan, const std::string& id) {
    const auto found = std::find_if(plan.moved_steps().begin(), plan.moved_steps().end(),
                                    [&](const v1::MovedStep& s) { return s.step_id() == id; });
    return found == plan.moved_steps().end() ? nullptr : &*found;
  }
  std::int64_t startOf(const std::string& id) const { return step(plan_, id).start_time().seconds(); }

  v1::Report delay(const char* dish, const char* name, int minutes) {
    v1::Report report;
    report.set_id(freshRequest());
    report.set_dish_id(dish);
    report.set_step_id(name);
    report.mutable_delayed_by()->set_seconds(minutes * 60);
    return report;
  }
  void tell(const v1::Report& report) {
    v1::AddReportsRequest asked;
    asked.set_household_id(served_.household);
    asked.set_event_id("supper");
    asked.set_request_id(freshRequest());
    *asked.add_reports() = report;
    v1::AddReportsResponse answer;
    const auto context = with(served_.token);
    ASSERT_TRUE(
        v1::ProgressService::NewStub(served_.channel())->AddReports(context.get(), asked, &answer).ok());
  }
  void timeIs(std::int64_t seconds) { served_.clock().set(Instant(std::chrono::seconds(seconds))); }

  Served served_;
  std::unique_ptr<v1::PlanService::Stub> stub_;
  v1::Event event_;
  v1::Plan plan_;
};

TEST_F(ReplanTest, NothingMovesWhileAllGoesAsPlanned) {
  timeIs(startOf("roast/roast") + 300);
  const auto answer = replan(request(false));
  EXPECT_TRUE(answer.nothing_moves());
  EXPECT_EQ(answer.plan().moved_steps_size(), 0);
  EXPECT_EQ(answer.revision(), 0);
  EXPECT_EQ(stored().meta().revision(), plan_.meta().revision());
}

TEST_F(ReplanTest, APreviewStoresNothing) {
  v1::ReplanRequest asked = request(true);
  asked.mutable_now()->set_seconds(startOf("roast/season") - 600);
  *asked.add_reports() = delay("roast", "season", 40);
  const auto answer = replan(asked);
  EXPECT_FALSE(answer.nothing_moves());
  EXPECT_EQ(answer.revision(), 0);
  EXPECT_EQ(stored().meta().revision(), plan_.meta().revision());
}

TEST_F(ReplanTest, ALateStepMovesWhatFollowsItAndIsToldOnce) {
  timeIs(startOf("roast/season") - 600);
  tell(delay("roast", "season", 40));
  const auto answer = replan(request(false));
  EXPECT_FALSE(answer.nothing_moves());
  EXPECT_GT(answer.revision(), plan_.meta().revision());
  const v1::Plan now = stored();
  EXPECT_EQ(now.meta().revision(), answer.revision());
  EXPECT_GE(step(now, "roast/season").start_time().seconds(), startOf("roast/season") + 40 * 60);
  const v1::MovedStep* season = moved(now, "roast/season");
  ASSERT_NE(season, nullptr);
  EXPECT_EQ(season->cause(), v1::MOVE_CAUSE_REPORTED);
  EXPECT_EQ(season->old_start_time().seconds(), startOf("roast/season"));
  EXPECT_EQ(season->new_start_time().seconds(), step(now, "roast/season").start_time().seconds());
  EXPECT_EQ(now.unserved_size(), 0);
  // The delay is in the plan now; asked again, nothing moves.
  EXPECT_TRUE(replan(request(false)).nothing_moves());
}

TEST_F(ReplanTest, AnOvenThatBreaksSendsItsBakesToTheOther) {
  const std::string broken = step(plan_, "roast/roast").oven_id();
  v1::ReplanRequest asked = request(true);
  asked.mutable_now()->set_seconds(startOf("roast/roast") - 1800);
  *asked.mutable_event() = event_;
  v1::Unavailable& away = *asked.mutable_event()->add_unavailable();
  away.set_thing_id(broken);
  away.mutable_when()->mutable_start()->set_seconds(startOf("roast/roast") - 1800);
  away.mutable_when()->mutable_limit()->set_seconds(startOf("roast/roast") + 24 * 3600);
  const auto answer = replan(asked);
  EXPECT_FALSE(answer.nothing_moves());
  for (const v1::PlannedStep& one : answer.plan().steps()) {
    if (one.start_time().seconds() < asked.now().seconds()) continue;
    EXPECT_NE(one.oven_id(), broken) << one.id();
  }
  const v1::MovedStep* roast = moved(answer.plan(), "roast/roast");
  ASSERT_NE(roast, nullptr);
  EXPECT_EQ(roast->old_oven_id(), broken);
}

TEST_F(ReplanTest, WithoutAnyOvenTheBakesAreUnserved) {
  v1::ReplanRequest asked = request(true);
  asked.mutable_now()->set_seconds(startOf("roast/roast") - 1800);
  *asked.mutable_event() = event_;
  for (const char* oven : {"large", "second"}) {
    v1::Unavailable& away = *asked.mutable_event()->add_unavailable();
    away.set_thing_id(oven);
    away.mutable_when()->mutable_start()->set_seconds(startOf("roast/roast") - 1800);
    away.mutable_when()->mutable_limit()->set_seconds(startOf("roast/roast") + 24 * 3600);
  }
  const auto answer = replan(asked);
  EXPECT_GE(answer.plan().unserved_size(), 2);
}

TEST_F(ReplanTest, ADishLeftOutIsListed) {
  v1::ReplanRequest asked = request(true);
  asked.mutable_now()->set_seconds(startOf("rolls/feed") - 3600);
  *asked.mutable_event() = event_;
  auto& dishes = *asked.mutable_event()->mutable_dishes();
  dishes.erase(
      std::remove_if(dishes.begin(), dishes.end(), [](const v1::Dish& d) { return d.id() == "gratin"; }),
      dishes.end());
  const auto answer = replan(asked);
  const v1::MovedStep* gone = moved(answer.plan(), "gratin/prepare");
  ASSERT_NE(gone, nullptr);
  EXPECT_FALSE(gone->has_new_start_time());
  EXPECT_EQ(gone->cause(), v1::MOVE_CAUSE_DISH);
}

TEST_F(ReplanTest, WhatIfNeedsAPreview) {
  v1::ReplanRequest asked = request(false);
  *asked.add_reports() = delay("roast", "season", 10);
  EXPECT_EQ(refusal(asked), grpc::StatusCode::INVALID_ARGUMENT);
  asked = request(false);
  asked.mutable_now()->set_seconds(1'800'000'000);
  EXPECT_EQ(refusal(asked), grpc::StatusCode::INVALID_ARGUMENT);
  asked = request(true);
  *asked.add_reports() = delay("roast", "season", -10);
  EXPECT_EQ(refusal(asked), grpc::StatusCode::INVALID_ARGUMENT);
  asked = request(true);
  asked.set_event_id("none");
  EXPECT_EQ(refusal(asked), grpc::StatusCode::NOT_FOUND);
}

TEST_F(ReplanTest, ACookMayReplanButNotChangeTheEvent) {
  const std::string cook = served_.invite(v1::ROLE_COOK);
  served_.token = cook;
  v1::ReplanRequest asked = request(false);
  *asked.mutable_event() = event_;
  EXPECT_EQ(refusal(asked), grpc::StatusCode::PERMISSION_DENIED);
  timeIs(startOf("roast/roast"));
  EXPECT_EQ(refusal(request(false)), grpc::StatusCode::OK);
}

TEST_F(ReplanTest, AStepTellsWhyAndWhatItWouldTake) {
  v1::ExplainStepRequest asked;
  asked.set_household_id(served_.household);
  asked.set_event_id("supper");
  asked.set_step_id("roast/season");
  asked.mutable_shift_duration()->set_seconds(-30 * 60);
  v1::ExplainStepResponse answer;
  const auto context = with(served_.token);
  ASSERT_TRUE(stub_->ExplainStep(context.get(), asked, &answer).ok());
  EXPECT_EQ(answer.step().id(), "roast/season");
  ASSERT_TRUE(answer.possible());
  ASSERT_GE(answer.moved_steps_size(), 1);
  bool itself = false;
  for (const v1::MovedStep& one : answer.moved_steps())
    if (one.step_id() == "roast/season")
      itself = one.new_start_time().seconds() == startOf("roast/season") - 30 * 60;
  EXPECT_TRUE(itself);
  EXPECT_EQ(answer.costs_then().unserved(), 0);
}

TEST_F(ReplanTest, AnUnknownStepIsNotFound) {
  v1::ExplainStepRequest asked;
  asked.set_household_id(served_.household);
  asked.set_event_id("supper");
  asked.set_step_id("roast/none");
  v1::ExplainStepResponse answer;
  const auto context = with(served_.token);
  EXPECT_EQ(stub_->ExplainStep(context.get(), asked, &answer).error_code(), grpc::StatusCode::NOT_FOUND);
}

TEST_F(ReplanTest, PlansAreComparedStepByStepAndDishByDish) {
  v1::ComparePlansRequest asked;
  asked.set_household_id(served_.household);
  asked.set_event_id("supper");
  *asked.mutable_after() = plan_;
  v1::ComparePlansResponse answer;
  ASSERT_TRUE(stub_->ComparePlans(with(served_.token).get(), asked, &answer).ok());
  EXPECT_EQ(answer.moved_steps_size(), 0);
  EXPECT_EQ(answer.dishes_size(), 0);
  v1::PlannedStep& first = *asked.mutable_after()->mutable_steps(0);
  first.mutable_start_time()->set_seconds(first.start_time().seconds() + 600);
  asked.mutable_after()->mutable_dishes(0)->mutable_costs()->set_quality(999);
  ASSERT_TRUE(stub_->ComparePlans(with(served_.token).get(), asked, &answer).ok());
  ASSERT_EQ(answer.moved_steps_size(), 1);
  EXPECT_EQ(answer.moved_steps(0).step_id(), first.id());
  ASSERT_EQ(answer.dishes_size(), 1);
  EXPECT_EQ(answer.dishes(0).after().costs().quality(), 999);
}

}  // namespace
}  // namespace suppertide::service
