// Nobody takes more than their part: turns, places, rates; and what is counted of it.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <future>
#include <thread>

#include "server/service/in_flight.h"
#include "server/service/metrics.h"
#include "server/service/workers.h"
#include "suppertide/v1/bread_service.grpc.pb.h"
#include "tests/service/served.h"
#include "tests/support/raw_call.h"

namespace suppertide::service {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;

TEST(WorkersTest, TakesKeysInTurns) {
  std::vector<std::string> order;
  {
    Workers workers(1);
    std::promise<void> gate;
    workers.post([&] { gate.get_future().wait(); });
    for (int i = 1; i <= 3; ++i)
      workers.offer("many", [&, i] { order.push_back("many " + std::to_string(i)); });
    workers.offer("few", [&] { order.push_back("few 1"); });
    gate.set_value();
  }
  EXPECT_THAT(order, ElementsAre("many 1", "few 1", "many 2", "many 3"));
}

TEST(WorkersTest, RefusesAFloodOfOneKeyAlone) {
  Workers workers(1, 2);
  std::promise<void> gate;
  std::promise<void> begun;
  workers.post([&] {
    begun.set_value();
    gate.get_future().wait();
  });
  begun.get_future().wait();
  EXPECT_TRUE(workers.offer("many", [] {}));
  EXPECT_TRUE(workers.offer("many", [] {}));
  EXPECT_FALSE(workers.offer("many", [] {}));
  EXPECT_TRUE(workers.offer("few", [] {}));
  EXPECT_EQ(workers.waiting(), 3u);
  gate.set_value();
}

TEST(InFlightTest, GivesSoManyPlacesToEachAndTakesThemBack) {
  InFlight places(2);
  const auto first = places.enter("a");
  auto second = places.enter("a");
  EXPECT_NE(second, nullptr);
  EXPECT_EQ(places.enter("a"), nullptr);
  EXPECT_NE(places.enter("b"), nullptr);
  second.reset();
  EXPECT_NE(places.enter("a"), nullptr);
}

TEST(LimitsTest, AHouseholdMayOpenSoManyWatches) {
  Served served;
  served.found();
  const auto stub = v1::SyncService::NewStub(served.channel());
  v1::WatchRequest asked;
  asked.set_household_id(served.household);
  std::vector<std::unique_ptr<grpc::ClientContext>> contexts;
  std::vector<std::unique_ptr<grpc::ClientReader<v1::WatchResponse>>> watches;
  grpc::StatusCode refused = grpc::StatusCode::OK;
  for (int i = 0; i < 1100 && refused == grpc::StatusCode::OK; ++i) {
    contexts.push_back(with(served.token));
    watches.push_back(stub->Watch(contexts.back().get(), asked));
    v1::WatchResponse message;
    if (!watches.back()->Read(&message)) refused = watches.back()->Finish().error_code();
  }
  EXPECT_EQ(refused, grpc::StatusCode::RESOURCE_EXHAUSTED);
  EXPECT_EQ(watches.size(), 1025u);
  contexts.front()->TryCancel();
  v1::WatchResponse message;
  while (watches.front()->Read(&message)) {
  }
  EXPECT_EQ(watches.front()->Finish().error_code(), grpc::StatusCode::CANCELLED);
  for (std::size_t i = 1; i + 1 < watches.size(); ++i) {
    contexts[i]->TryCancel();
    while (watches[i]->Read(&message)) {
    }
    watches[i]->Finish();
  }
}

TEST(LimitsTest, GuessingTokensIsSlowedDownForTheGuesserAlone) {
  Served served;
  served.found();
  const auto stub = v1::HouseholdService::NewStub(served.channel());
  const auto ask = [&](const std::string& token) {
    v1::WhoAmIResponse who;
    const auto context = with(token);
    return stub->WhoAmI(context.get(), {}, &who).error_code();
  };
  for (int guess = 0; guess < 120; ++guess)
    ASSERT_EQ(ask("guess " + std::to_string(guess)), grpc::StatusCode::UNAUTHENTICATED);
  EXPECT_EQ(ask("one more"), grpc::StatusCode::RESOURCE_EXHAUSTED);
  EXPECT_EQ(ask(served.token), grpc::StatusCode::OK);
  served.clock().advance(std::chrono::seconds(61));
  EXPECT_EQ(ask("one more"), grpc::StatusCode::UNAUTHENTICATED);
}

TEST(CalculatingTest, ADoughWaitsForNoPlanning) {
  Backend::Options options;
  std::promise<void> begun;
  options.planner = [&](const compose::Documents&, const compose::PlanOptions&,
                        compose::PlanMonitor* monitor) -> absl::StatusOr<v1::Plan> {
    begun.set_value();
    while (!monitor->stop()) std::this_thread::yield();
    return absl::CancelledError("stopped");
  };
  Served served(options);
  served.found();
  served.importDinner();
  v1::MakePlanRequest planning;
  planning.set_household_id(served.household);
  planning.set_event_id("supper");
  planning.set_request_id(freshRequest());
  const auto first = with(served.token);
  const auto stream = v1::PlanService::NewStub(served.channel())->MakePlan(first.get(), planning);
  begun.get_future().wait();
  v1::CheckModelResponse checks;
  const auto second = with(served.token);
  EXPECT_TRUE(v1::BreadService::NewStub(served.channel())->CheckModel(second.get(), {}, &checks).ok());
  EXPECT_GT(checks.checks_size(), 0);
  first->TryCancel();
  v1::MakePlanResponse message;
  while (stream->Read(&message)) {
  }
  stream->Finish();
}

TEST(CalculatingTest, NobodyCalculatesForAClientThatLeft) {
  Served served;
  served.found();
  Backend& backend = served.server().backend();
  const std::string method = "BreadService/ForecastDough";
  const auto roundTrip = [&] {
    rawCall(served.channel(), *with(served.token), "/suppertide.v1.HouseholdService/WhoAmI", "");
    const BusyWorkers readers(backend.readers(), Backend::kReaders);
  };
  {
    const BusyWorkers busy(backend.calculators(), Backend::kCalculators);
    const auto context = with(served.token);
    const v1::ForecastDoughRequest empty;
    v1::ForecastDoughResponse answer;
    std::promise<grpc::StatusCode> ended;
    const auto stub = v1::BreadService::NewStub(served.channel());
    stub->async()->ForecastDough(context.get(), &empty, &answer,
                                 [&](const grpc::Status& status) { ended.set_value(status.error_code()); });
    roundTrip();  // the server has it
    context->TryCancel();
    EXPECT_EQ(ended.get_future().get(), grpc::StatusCode::CANCELLED);
    roundTrip();  // and knows that it is off
  }
  { const BusyWorkers all(backend.calculators(), Backend::kCalculators); }
  // An empty request would be refused with 3 if anybody looked at it.
  EXPECT_THAT(backend.metrics().text(),
              HasSubstr("suppertide_calls_total{code=\"1\",method=\"" + method + "\"} 1"));
}

TEST(MetricsTest, CountsCallsByMethodAndOutcome) {
  Metrics metrics;
  metrics.called("SyncService/Watch", 0, std::chrono::milliseconds(3));
  metrics.called("SyncService/Watch", 14, std::chrono::milliseconds(3));
  metrics.watch("suppertide_open_streams", "How many.", [] { return 7.0; });
  const std::string text = metrics.text();
  EXPECT_THAT(text, HasSubstr("suppertide_calls_total{code=\"14\",method=\"SyncService/Watch\"} 1"));
  EXPECT_THAT(text, HasSubstr("suppertide_call_seconds_count{method=\"SyncService/Watch\"} 2"));
  EXPECT_THAT(text, HasSubstr("suppertide_open_streams 7"));
}

TEST(MetricsTest, AreServedOnLoopbackAlone) {
  Metrics metrics;
  EXPECT_EQ(metrics.serve("0.0.0.0:0").code(), absl::StatusCode::kInvalidArgument);
  EXPECT_EQ(metrics.serve("unix:/tmp/x").code(), absl::StatusCode::kInvalidArgument);
  ASSERT_TRUE(metrics.serve("127.0.0.1:0").ok());
  EXPECT_GT(metrics.port(), 0);
  Metrics second;
  EXPECT_EQ(second.serve("127.0.0.1:" + std::to_string(metrics.port())).code(),
            absl::StatusCode::kUnavailable);
}

TEST(MetricsTest, CountTheServersOwnCalls) {
  Served served;
  served.found();
  EXPECT_THAT(served.server().backend().metrics().text(),
              HasSubstr("suppertide_calls_total{code=\"0\",method=\"HouseholdService/CreateHousehold\"} 1"));
}

}  // namespace
}  // namespace suppertide::service
