#include <gtest/gtest.h>

#include <atomic>
#include <future>
#include <limits>
#include <mutex>

#include "tests/compose/small_dinner.h"
#include "tests/service/served.h"

namespace suppertide::service {
namespace {

// A planner that improves once, then goes on until it is told to stop.
absl::StatusOr<v1::Plan> endless(const compose::Documents& documents, const compose::PlanOptions&,
                                 compose::PlanMonitor* monitor) {
  v1::Plan plan;
  plan.set_id(documents.event.id());
  plan.mutable_quality()->mutable_costs()->set_quality(7);
  monitor->improved(plan);
  while (!monitor->stop()) std::this_thread::yield();
  return plan;
}

// Whether what was being planned has ended, and what it had to write is written.
bool settle(Backend& backend) {
  const auto done = std::make_shared<std::promise<void>>();
  backend.planning().post(
      "settle", [&backend, done] { backend.queue().run([done](storage::Store&) { done->set_value(); }); });
  return done->get_future().wait_for(std::chrono::seconds(20)) == std::future_status::ready;
}

class PlanServiceTest : public testing::Test {
 protected:
  explicit PlanServiceTest(Planner planner = nullptr) {
    Backend::Options options;
    if (planner) options.planner = std::move(planner);
    served_ = std::make_unique<Served>(options);
    served_->found();
    served_->importDinner();
    stub_ = v1::PlanService::NewStub(served_->channel());
  }

  v1::MakePlanRequest planning() const {
    v1::MakePlanRequest asked;
    asked.set_household_id(served_->household);
    asked.set_event_id("supper");
    asked.set_request_id(freshRequest());
    return asked;
  }
  bool stop() {
    v1::StopPlanningRequest asked;
    asked.set_household_id(served_->household);
    asked.set_event_id("supper");
    v1::StopPlanningResponse answer;
    const auto context = with(served_->token);
    EXPECT_TRUE(stub_->StopPlanning(context.get(), asked, &answer).ok());
    return answer.was_running();
  }
  grpc::StatusCode getPlan(v1::Plan* plan) {
    v1::GetPlanRequest asked;
    asked.set_household_id(served_->household);
    asked.set_event_id("supper");
    const auto context = with(served_->token);
    return stub_->GetPlan(context.get(), asked, plan).error_code();
  }

  std::unique_ptr<Served> served_;
  std::unique_ptr<v1::PlanService::Stub> stub_;
};

class EndlessPlanTest : public PlanServiceTest {
 protected:
  EndlessPlanTest() : PlanServiceTest(endless) {}
};

TEST_F(PlanServiceTest, PlansTheRealDinnerAndStoresIt) {
  const auto context = with(served_->token);
  const auto stream = stub_->MakePlan(context.get(), planning());
  v1::MakePlanResponse message;
  v1::MakePlanResponse last;
  int plans = 0;
  while (stream->Read(&message)) {
    plans += message.has_plan() ? 1 : 0;
    last = message;
  }
  ASSERT_TRUE(stream->Finish().ok());
  EXPECT_TRUE(last.final());
  EXPECT_GT(last.revision(), 0);
  EXPECT_GE(plans, 1);
  v1::Plan stored;
  ASSERT_EQ(getPlan(&stored), grpc::StatusCode::OK);
  EXPECT_EQ(stored.breaches_size(), 0);
  EXPECT_EQ(stored.unserved_size(), 0);
  EXPECT_EQ(stored.meta().revision(), last.revision());
  EXPECT_EQ(stored.input_etags().count("event/supper"), 1u);
  v1::AuditPlanRequest audit;
  audit.set_household_id(served_->household);
  audit.set_event_id("supper");
  v1::AuditPlanResponse audited;
  const auto second = with(served_->token);
  ASSERT_TRUE(stub_->AuditPlan(second.get(), audit, &audited).ok());
  EXPECT_EQ(audited.breaches_size(), 0);
  EXPECT_EQ(audited.costs().quality(), stored.quality().costs().quality());
}

TEST_F(PlanServiceTest, AnEventThatIsNotThereIsNotFound) {
  v1::MakePlanRequest asked = planning();
  asked.set_event_id("breakfast");
  const auto context = with(served_->token);
  const auto stream = stub_->MakePlan(context.get(), asked);
  v1::MakePlanResponse message;
  EXPECT_FALSE(stream->Read(&message));
  EXPECT_EQ(stream->Finish().error_code(), grpc::StatusCode::NOT_FOUND);
}

TEST_F(PlanServiceTest, DeletingTheEventDeletesItsPlan) {
  const auto context = with(served_->token);
  const auto stream = stub_->MakePlan(context.get(), planning());
  v1::MakePlanResponse message;
  while (stream->Read(&message)) {
  }
  ASSERT_TRUE(stream->Finish().ok());
  v1::DeleteEventRequest asked;
  asked.set_household_id(served_->household);
  asked.set_event_id("supper");
  asked.set_request_id(freshRequest());
  v1::DeleteEventResponse answer;
  const auto second = with(served_->token);
  ASSERT_TRUE(v1::EventService::NewStub(served_->channel())->DeleteEvent(second.get(), asked, &answer).ok());
  v1::Plan plan;
  EXPECT_EQ(getPlan(&plan), grpc::StatusCode::NOT_FOUND);
}

TEST_F(EndlessPlanTest, StoppingKeepsTheBestSoFar) {
  const auto context = with(served_->token);
  const auto stream = stub_->MakePlan(context.get(), planning());
  v1::MakePlanResponse message;
  while (stream->Read(&message) && !message.has_plan()) {
  }
  EXPECT_TRUE(stop());
  v1::MakePlanResponse last = message;
  while (stream->Read(&message)) last = message;
  EXPECT_TRUE(stream->Finish().ok());
  EXPECT_TRUE(last.final());
  v1::Plan plan;
  EXPECT_EQ(getPlan(&plan), grpc::StatusCode::OK);
  EXPECT_FALSE(stop());
}

TEST_F(EndlessPlanTest, CancellingStoresNothing) {
  const auto context = with(served_->token);
  const auto stream = stub_->MakePlan(context.get(), planning());
  v1::MakePlanResponse message;
  while (stream->Read(&message) && !message.has_plan()) {
  }
  context->TryCancel();
  while (stream->Read(&message)) {
  }
  EXPECT_EQ(stream->Finish().error_code(), grpc::StatusCode::CANCELLED);
  ASSERT_TRUE(settle(served_->server().backend()));
  v1::Plan plan;
  EXPECT_EQ(getPlan(&plan), grpc::StatusCode::NOT_FOUND);
}

TEST_F(EndlessPlanTest, ASecondPlanningOfTheSameEventIsRefused) {
  const auto context = with(served_->token);
  const auto stream = stub_->MakePlan(context.get(), planning());
  v1::MakePlanResponse message;
  ASSERT_TRUE(stream->Read(&message));
  const auto other = with(served_->token);
  const auto second = stub_->MakePlan(other.get(), planning());
  EXPECT_FALSE(second->Read(&message));
  EXPECT_EQ(second->Finish().error_code(), grpc::StatusCode::FAILED_PRECONDITION);
  EXPECT_TRUE(stop());
  while (stream->Read(&message)) {
  }
  EXPECT_TRUE(stream->Finish().ok());
}

TEST_F(EndlessPlanTest, TellsProgressWhileItSearchesAndEndsAtItsTime) {
  v1::MakePlanRequest asked = planning();
  asked.mutable_time_limit()->set_seconds(1);
  asked.set_validate_only(true);
  const auto context = with(served_->token);
  const auto stream = stub_->MakePlan(context.get(), asked);
  v1::MakePlanResponse message;
  v1::MakePlanResponse last;
  int told = 0;
  while (stream->Read(&message)) {
    ++told;
    last = message;
  }
  EXPECT_TRUE(stream->Finish().ok());
  EXPECT_GE(told, 2);
  EXPECT_TRUE(last.final());
  EXPECT_EQ(last.revision(), 0);
  v1::Plan plan;
  EXPECT_EQ(getPlan(&plan), grpc::StatusCode::NOT_FOUND);
}

TEST_F(EndlessPlanTest, AServerThatStopsEndsThePlanning) {
  const auto context = with(served_->token);
  const auto stream = stub_->MakePlan(context.get(), planning());
  v1::MakePlanResponse message;
  ASSERT_TRUE(stream->Read(&message));
  auto draining = std::async(std::launch::async, [&] { served_->server().drain(); });
  while (stream->Read(&message)) {
  }
  EXPECT_EQ(stream->Finish().error_code(), grpc::StatusCode::UNAVAILABLE);
  draining.get();
}

TEST_F(EndlessPlanTest, ATimeLimitMayBeAPartOfASecond) {
  v1::MakePlanRequest asked = planning();
  asked.mutable_time_limit()->set_nanos(50'000'000);
  const auto context = with(served_->token);
  const auto stream = stub_->MakePlan(context.get(), asked);
  v1::MakePlanResponse message;
  v1::MakePlanResponse last;
  while (stream->Read(&message)) last = message;
  EXPECT_TRUE(stream->Finish().ok());
  EXPECT_EQ(last.time_used().seconds(), 0);
}

TEST_F(EndlessPlanTest, ATimeLimitOutsideItsBoundsIsRefused) {
  for (const auto& [seconds, nanos] : std::vector<std::pair<std::int64_t, int>>{
           {301, 0}, {300, 1}, {-1, 0}, {0, -1}, {std::numeric_limits<std::int64_t>::max(), 0}}) {
    v1::MakePlanRequest asked = planning();
    asked.mutable_time_limit()->set_seconds(seconds);
    asked.mutable_time_limit()->set_nanos(nanos);
    const auto context = with(served_->token);
    const auto stream = stub_->MakePlan(context.get(), asked);
    v1::MakePlanResponse message;
    EXPECT_FALSE(stream->Read(&message));
    EXPECT_EQ(stream->Finish().error_code(), grpc::StatusCode::INVALID_ARGUMENT) << seconds;
  }
}

TEST_F(EndlessPlanTest, AnEventDeletedMeanwhileGetsNoPlan) {
  const auto context = with(served_->token);
  const auto stream = stub_->MakePlan(context.get(), planning());
  v1::MakePlanResponse message;
  ASSERT_TRUE(stream->Read(&message));
  v1::DeleteEventRequest asked;
  asked.set_household_id(served_->household);
  asked.set_event_id("supper");
  asked.set_request_id(freshRequest());
  v1::DeleteEventResponse answer;
  const auto second = with(served_->token);
  ASSERT_TRUE(v1::EventService::NewStub(served_->channel())->DeleteEvent(second.get(), asked, &answer).ok());
  EXPECT_TRUE(stop());
  while (stream->Read(&message)) {
  }
  EXPECT_EQ(stream->Finish().error_code(), grpc::StatusCode::NOT_FOUND);
  v1::Plan plan;
  EXPECT_EQ(getPlan(&plan), grpc::StatusCode::NOT_FOUND);
}

TEST(PlanningPoolTest, HouseholdsTakeTurns) {
  std::string order;
  std::mutex mutex;
  {
    std::promise<void> released;
    PlanningPool pool(1);
    pool.post("first", [&] { released.get_future().wait(); });
    for (const char* household : {"a", "a", "a", "b", "c", "b"})
      pool.post(household, [&, household] {
        const std::lock_guard lock(mutex);
        order += household;
      });
    released.set_value();
  }
  EXPECT_EQ(order, "abcaba");
}

}  // namespace
}  // namespace suppertide::service
