#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <map>
#include <set>

#include "tests/compose/small_dinner.h"
#include "tests/service/served.h"

namespace suppertide::service {
namespace {

// The rolls and the gratin want their own temperatures in the one oven, and neither may wait.
v1::Bundle clashingDinner() {
  v1::Bundle bundle = compose::smallDinner();
  for (const int recipe : {0, 2}) {
    for (v1::Step& step : *bundle.mutable_recipes(recipe)->mutable_steps()) {
      if (!step.has_oven()) continue;
      step.mutable_oven()->set_min_setpoint_celsius(step.oven().setpoint_celsius());
      step.mutable_oven()->set_max_setpoint_celsius(step.oven().setpoint_celsius());
    }
    bundle.mutable_recipes(recipe)->mutable_holding()->mutable_longest()->set_seconds(300);
    bundle.mutable_recipes(recipe)->mutable_holding()->clear_best_until();
  }
  bundle.mutable_events(0)->mutable_courses(0)->mutable_late_limit()->set_seconds(0);
  return bundle;
}

class FindRemediesTest : public testing::Test {
 protected:
  FindRemediesTest() {
    served_.found();
    stub_ = v1::PlanService::NewStub(served_.channel());
  }

  void import(const v1::Bundle& bundle) {
    const grpc::Status status = served_.import(bundle);
    ASSERT_TRUE(status.ok()) << status.error_message();
  }

  v1::FindRemediesRequest asked(const std::string& eventId = "supper") const {
    v1::FindRemediesRequest request;
    request.set_household_id(served_.household);
    request.set_event_id(eventId);
    return request;
  }

  grpc::Status read(const v1::FindRemediesRequest& request, const std::string& token,
                    std::vector<v1::FindRemediesResponse>& messages) {
    const auto context = with(token);
    const auto stream = stub_->FindRemedies(context.get(), request);
    v1::FindRemediesResponse message;
    while (stream->Read(&message)) messages.push_back(message);
    return stream->Finish();
  }

  Served served_;
  std::unique_ptr<v1::PlanService::Stub> stub_;
};

TEST_F(FindRemediesTest, TellsTheClashThenEachRemedyThenTheRanking) {
  import(clashingDinner());
  std::vector<v1::FindRemediesResponse> messages;
  ASSERT_TRUE(read(asked(), served_.token, messages).ok());
  std::set<int> numbers;
  bool clashTold = false;
  for (const v1::FindRemediesResponse& message : messages) {
    clashTold = clashTold || message.clashes_size() > 0;
    if (!message.has_remedy()) continue;
    EXPECT_TRUE(clashTold);
    EXPECT_EQ(message.plan().breaches_size(), 0);
    EXPECT_EQ(message.plan().unserved_size(), 0);
    EXPECT_EQ(message.event().id(), "supper");
    numbers.insert(message.number());
  }
  ASSERT_GE(numbers.size(), 1u);
  const v1::FindRemediesResponse& last = messages.back();
  EXPECT_TRUE(last.final());
  EXPECT_FALSE(last.fits());
  EXPECT_EQ(std::set<int>(last.ranking().begin(), last.ranking().end()), numbers);
  EXPECT_GT(last.tried_count(), 0);
}

// The small dinner, planned; twenty minutes before the roast is due in it, the only oven breaks.
class BrokenOvenTest : public FindRemediesTest {
 protected:
  BrokenOvenTest() : dinner_(compose::smallDinner()) {
    v1::Event& event = *dinner_.mutable_events(0);
    event.mutable_courses(0)->mutable_late_limit()->set_seconds(0);
    event.set_live_correction(v1::LIVE_CORRECTION_OFF);
    import(dinner_);
    makePlan();
    for (const v1::PlannedStep& step : plan_.steps())
      if (step.id() == "roast/roast") now_ = step.start_time().seconds() - 20 * 60;
    v1::Unavailable& away = *event.add_unavailable();
    away.set_thing_id("large");
    away.mutable_when()->mutable_start()->set_seconds(now_);
    away.mutable_when()->mutable_limit()->set_seconds(now_ + 90 * 60);
    *dinner_.add_plans() = plan_;
  }

  void makePlan() {
    v1::MakePlanRequest asked;
    asked.set_household_id(served_.household);
    asked.set_event_id("supper");
    asked.set_work_limit(3'000);
    asked.set_request_id(freshRequest());
    const auto context = with(served_.token);
    const auto stream = stub_->MakePlan(context.get(), asked);
    v1::MakePlanResponse message;
    while (stream->Read(&message)) plan_ = message.plan();
    EXPECT_TRUE(stream->Finish().ok());
  }

  // What the household would hold with the remedy made.
  v1::Bundle remedied(const v1::FindRemediesResponse& remedy) const {
    v1::Bundle bundle = dinner_;
    *bundle.mutable_events(0) = remedy.event();
    *bundle.mutable_plans(0) = remedy.plan();
    if (remedy.has_kitchen()) *bundle.mutable_kitchens(0) = remedy.kitchen();
    for (const v1::Recipe& recipe : remedy.recipes()) *bundle.add_recipes() = recipe;
    return bundle;
  }

  v1::Bundle dinner_;
  v1::Plan plan_;
  std::int64_t now_ = 0;
};

TEST_F(BrokenOvenTest, WhatIsDoneStaysInEveryRemedyAndEachCanBeStored) {
  served_.clock().set(Instant(std::chrono::seconds(now_)));
  v1::UpdateEventRequest change;
  change.set_household_id(served_.household);
  change.set_request_id(freshRequest());
  *change.mutable_event() = dinner_.events(0);
  v1::WriteEventResponse written;
  const auto context = with(served_.token);
  const auto events = v1::EventService::NewStub(served_.channel());
  const grpc::Status updated = events->UpdateEvent(context.get(), change, &written);
  ASSERT_TRUE(updated.ok()) << updated.error_message();

  std::vector<v1::FindRemediesResponse> messages;
  ASSERT_TRUE(read(asked(), served_.token, messages).ok());
  int remedies = 0;
  for (const v1::FindRemediesResponse& message : messages) {
    if (!message.has_remedy()) continue;
    ++remedies;
    SCOPED_TRACE(message.remedy().ShortDebugString());
    EXPECT_EQ(message.plan().breaches_size(), 0);
    EXPECT_EQ(message.plan().unserved_size(), 0);
    std::map<std::string, std::int64_t> starts;
    for (const v1::PlannedStep& step : message.plan().steps())
      starts[step.id()] = step.start_time().seconds();
    for (const v1::PlannedStep& step : plan_.steps()) {
      if (step.start_time().seconds() < now_) {
        EXPECT_EQ(starts[step.id()], step.start_time().seconds()) << step.id();
      } else {
        EXPECT_GE(starts[step.id()], now_) << step.id();
      }
    }
    const grpc::Status stored = served_.import(remedied(message));
    EXPECT_TRUE(stored.ok()) << stored.error_message();
  }
  EXPECT_GE(remedies, 1);
}

TEST_F(FindRemediesTest, SaysThatTheEventFits) {
  import(compose::smallDinner());
  std::vector<v1::FindRemediesResponse> messages;
  ASSERT_TRUE(read(asked(), served_.token, messages).ok());
  EXPECT_TRUE(messages.back().final());
  EXPECT_TRUE(messages.back().fits());
  EXPECT_EQ(messages.back().ranking_size(), 0);
}

TEST_F(FindRemediesTest, StoresNothing) {
  import(clashingDinner());
  const auto revision = [&] {
    v1::ListEventsRequest list;
    list.set_household_id(served_.household);
    v1::ListEventsResponse answer;
    const auto context = with(served_.token);
    EXPECT_TRUE(v1::EventService::NewStub(served_.channel())->ListEvents(context.get(), list, &answer).ok());
    return answer.revision();
  };
  const auto before = revision();
  std::vector<v1::FindRemediesResponse> messages;
  ASSERT_TRUE(read(asked(), served_.token, messages).ok());
  EXPECT_EQ(revision(), before);
}

TEST_F(FindRemediesTest, AReaderMayNotAndAnUnknownEventIsNotFound) {
  import(clashingDinner());
  std::vector<v1::FindRemediesResponse> messages;
  EXPECT_EQ(read(asked(), served_.invite(v1::ROLE_READER), messages).error_code(),
            grpc::StatusCode::PERMISSION_DENIED);
  EXPECT_EQ(read(asked("breakfast"), served_.token, messages).error_code(), grpc::StatusCode::NOT_FOUND);
  EXPECT_TRUE(messages.empty());
}

TEST_F(FindRemediesTest, EndsWhenTheCallIsCancelled) {
  import(clashingDinner());
  const auto context = with(served_.token);
  const auto stream = stub_->FindRemedies(context.get(), asked());
  v1::FindRemediesResponse message;
  ASSERT_TRUE(stream->Read(&message));
  context->TryCancel();
  while (stream->Read(&message)) {
  }
  const grpc::StatusCode code = stream->Finish().error_code();
  EXPECT_TRUE(code == grpc::StatusCode::CANCELLED || code == grpc::StatusCode::OK)
      << code;  // it may have been done
  // The planning thread is free again: the next search is served.
  std::vector<v1::FindRemediesResponse> messages;
  ASSERT_TRUE(read(asked(), served_.token, messages).ok());
  EXPECT_TRUE(messages.back().final());
}

}  // namespace
}  // namespace suppertide::service
