#include "tests/service/supper.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/compose/small_dinner.h"

namespace suppertide::service {

Follower::Follower(Served& served, const std::string& token) : context_(with(token)) {
  v1::WatchRequest asked;
  asked.set_household_id(served.household);
  stub_ = v1::SyncService::NewStub(served.channel());
  stream_ = stub_->Watch(context_.get(), asked);
  v1::WatchResponse message;
  while (stream_->Read(&message) && !message.has_bookmark()) {
  }
}

v1::Change Follower::next(const std::function<bool(const v1::Change&)>& wanted) {
  v1::WatchResponse message;
  while (stream_->Read(&message))
    for (const v1::Change& change : message.changes().changes())
      if (wanted(change)) return change;
  ADD_FAILURE() << "the stream ended: " << stream_->Finish().error_message();
  return {};
}

v1::Plan Follower::nextPlan() {
  return next([](const v1::Change& change) { return change.has_plan(); }).plan();
}

Supper::Supper(v1::LiveCorrection correction, Backend::Options options, const std::string& calendar)
    : served_(std::move(options), "", calendar) {
  served_.found();
  v1::ImportBundleRequest asked;
  asked.set_household_id(served_.household);
  *asked.mutable_bundle() = compose::smallDinner();
  v1::Kitchen& kitchen = *asked.mutable_bundle()->mutable_kitchens(0);
  v1::Oven second = kitchen.ovens(0);
  second.set_id("second");
  second.set_display_name("Second oven");
  *kitchen.add_ovens() = second;
  asked.mutable_bundle()->mutable_events(0)->set_live_correction(correction);
  event_ = asked.bundle().events(0);
  asked.set_request_id(freshRequest());
  v1::ImportBundleResponse answer;
  const auto context = with(served_.token);
  const grpc::Status status =
      importBundle(*v1::HouseholdService::NewStub(served_.channel()), *context, asked, &answer);
  EXPECT_TRUE(status.ok()) << status.error_message();
}

v1::Plan Supper::makePlan() {
  v1::MakePlanRequest asked;
  asked.set_household_id(served_.household);
  asked.set_event_id("supper");
  asked.set_work_limit(3000);
  asked.set_request_id(freshRequest());
  const auto context = with(served_.token);
  const auto stream = v1::PlanService::NewStub(served_.channel())->MakePlan(context.get(), asked);
  v1::MakePlanResponse message;
  while (stream->Read(&message)) {
  }
  EXPECT_TRUE(stream->Finish().ok());
  EXPECT_EQ(message.plan().unserved_size(), 0);
  return stored();
}

v1::Plan Supper::stored() {
  v1::GetPlanRequest asked;
  asked.set_household_id(served_.household);
  asked.set_event_id("supper");
  v1::Plan plan;
  const auto context = with(served_.token);
  EXPECT_TRUE(v1::PlanService::NewStub(served_.channel())->GetPlan(context.get(), asked, &plan).ok());
  return plan;
}

v1::Report Supper::about(const std::string& stepId) {
  v1::Report report;
  report.set_id(freshRequest());
  report.set_dish_id(stepId.substr(0, stepId.find('/')));
  report.set_step_id(stepId.substr(stepId.find('/') + 1));
  return report;
}

grpc::Status Supper::tell(const v1::Report& report, v1::AddReportsResponse* answer,
                          const std::string& token) {
  v1::AddReportsRequest asked;
  asked.set_household_id(served_.household);
  asked.set_event_id("supper");
  asked.set_request_id(freshRequest());
  *asked.add_reports() = report;
  v1::AddReportsResponse scratch;
  const auto context = with(token.empty() ? served_.token : token);
  return v1::ProgressService::NewStub(served_.channel())
      ->AddReports(context.get(), asked, answer == nullptr ? &scratch : answer);
}

const v1::PlannedStep& Supper::step(const v1::Plan& plan, const std::string& id) {
  const auto found = std::find_if(plan.steps().begin(), plan.steps().end(),
                                  [&](const v1::PlannedStep& s) { return s.id() == id; });
  EXPECT_NE(found, plan.steps().end()) << id;
  return found == plan.steps().end() ? v1::PlannedStep::default_instance() : *found;
}

const v1::MovedStep* Supper::moved(const v1::Plan& plan, const std::string& id) {
  const auto found = std::find_if(plan.moved_steps().begin(), plan.moved_steps().end(),
                                  [&](const v1::MovedStep& s) { return s.step_id() == id; });
  return found == plan.moved_steps().end() ? nullptr : &*found;
}

}  // namespace suppertide::service
