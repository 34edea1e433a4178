// Streams that end at awkward moments. AddressSanitizer sees what is used too late.
#include <gtest/gtest.h>

#include <future>
#include <thread>

#include "tests/compose/small_dinner.h"
#include "tests/service/served.h"
#include "tests/support/raw_call.h"

namespace suppertide::service {
namespace {

// Returns once the server has read all that was sent on the channel before.
void roundTrip(const std::shared_ptr<grpc::Channel>& channel) {
  grpc::ClientContext context;
  rawCall(channel, context, "/grpc.health.v1.Health/Check", "");
}

// What was posted to the readers has been done.
void settle(Backend& backend) {
  for (int round = 0; round < 2; ++round) const BusyWorkers all(backend.readers(), Backend::kReaders);
}

v1::WatchRequest watchOf(const Served& served) {
  v1::WatchRequest asked;
  asked.set_household_id(served.household);
  return asked;
}

v1::MakePlanRequest planOf(const Served& served) {
  v1::MakePlanRequest asked;
  asked.set_household_id(served.household);
  asked.set_event_id("supper");
  asked.set_request_id(freshRequest());
  return asked;
}

template <typename Message, typename Stream>
grpc::Status readToEnd(Stream& stream) {
  Message message;
  while (stream.Read(&message)) {
  }
  return stream.Finish();
}

TEST(StreamEndTest, AWatchCancelledBeforeItIsOpenTouchesNothing) {
  Served served;
  served.found();
  const auto stub = v1::SyncService::NewStub(served.channel());
  for (int round = 0; round < 5; ++round) {
    const auto context = with(served.token);
    {
      const BusyWorkers busy(served.server().backend().readers(), Backend::kReaders);
      const auto stream = stub->Watch(context.get(), watchOf(served));
      roundTrip(served.channel());
      context->TryCancel();
      EXPECT_EQ(readToEnd<v1::WatchResponse>(*stream).error_code(), grpc::StatusCode::CANCELLED);
      roundTrip(served.channel());
    }
    settle(served.server().backend());
  }
}

TEST(StreamEndTest, APlanningCancelledBeforeItIsOpenStoresNothing) {
  Backend::Options options;
  // The server may hear of the end only when the search has begun, but then it does.
  options.planner = [](const compose::Documents& documents, const compose::PlanOptions&,
                       compose::PlanMonitor* monitor) {
    while (!monitor->stop()) std::this_thread::yield();
    v1::Plan plan;
    plan.set_id(documents.event.id());
    return absl::StatusOr<v1::Plan>(plan);
  };
  Served served(options);
  served.found();
  served.importDinner();
  const auto stub = v1::PlanService::NewStub(served.channel());
  for (int round = 0; round < 5; ++round) {
    const auto context = with(served.token);
    {
      const BusyWorkers busy(served.server().backend().readers(), Backend::kReaders);
      const auto stream = stub->MakePlan(context.get(), planOf(served));
      roundTrip(served.channel());
      context->TryCancel();
      EXPECT_EQ(readToEnd<v1::MakePlanResponse>(*stream).error_code(), grpc::StatusCode::CANCELLED);
      roundTrip(served.channel());
    }
    settle(served.server().backend());
  }
  v1::GetPlanRequest asked;
  asked.set_household_id(served.household);
  asked.set_event_id("supper");
  v1::Plan plan;
  const auto context = with(served.token);
  EXPECT_EQ(stub->GetPlan(context.get(), asked, &plan).error_code(), grpc::StatusCode::NOT_FOUND);
}

TEST(StreamEndTest, AServerThatStopsEndsAWatchThatIsOnlyOpening) {
  Served served;
  served.found();
  const auto context = with(served.token);
  const auto stub = v1::SyncService::NewStub(served.channel());
  std::unique_ptr<grpc::ClientReader<v1::WatchResponse>> stream;
  {
    const BusyWorkers busy(served.server().backend().readers(), Backend::kReaders);
    stream = stub->Watch(context.get(), watchOf(served));
    roundTrip(served.channel());
    served.server().backend().streams().close();
  }
  EXPECT_EQ(readToEnd<v1::WatchResponse>(*stream).error_code(), grpc::StatusCode::UNAVAILABLE);
}

TEST(StreamEndTest, ADeviceRevokedWhileItsWatchOpensIsLetOutAgain) {
  Served served;
  served.found();
  const std::string cook = served.invite(v1::ROLE_COOK);
  Backend& backend = served.server().backend();
  v1::WhoAmIResponse who;
  const auto first = with(cook);
  ASSERT_TRUE(v1::HouseholdService::NewStub(served.channel())->WhoAmI(first.get(), {}, &who).ok());
  const auto context = with(cook);
  std::unique_ptr<grpc::ClientReader<v1::WatchResponse>> stream;
  {
    const BusyWorkers busy(backend.readers(), Backend::kReaders);
    stream = v1::SyncService::NewStub(served.channel())->Watch(context.get(), watchOf(served));
    roundTrip(served.channel());
    ASSERT_TRUE(backend.store().revokeDevice(served.household, who.device_id()).ok());
  }
  EXPECT_EQ(readToEnd<v1::WatchResponse>(*stream).error_code(), grpc::StatusCode::UNAUTHENTICATED);
}

TEST(StreamEndTest, AMemberTakenOffTheHouseholdWatchesNoMore) {
  Served served;
  served.found();
  const std::string cook = served.invite(v1::ROLE_COOK);
  const auto context = with(cook);
  const auto stream = v1::SyncService::NewStub(served.channel())->Watch(context.get(), watchOf(served));
  v1::WatchResponse message;
  while (stream->Read(&message) && !message.has_bookmark()) {
  }
  v1::UpdateHouseholdRequest asked;
  asked.mutable_household()->set_id(served.household);
  v1::Member& ana = *asked.mutable_household()->add_members();
  ana.set_id("ana");
  ana.set_display_name("Ana");
  ana.set_role(v1::ROLE_HOST);
  asked.mutable_update_mask()->add_paths("members");
  asked.set_request_id(freshRequest());
  v1::WriteHouseholdResponse answer;
  const auto second = with(served.token);
  const auto households = v1::HouseholdService::NewStub(served.channel());
  ASSERT_TRUE(households->UpdateHousehold(second.get(), asked, &answer).ok());
  EXPECT_EQ(readToEnd<v1::WatchResponse>(*stream).error_code(), grpc::StatusCode::PERMISSION_DENIED);
}

TEST(StreamEndTest, ManyStreamsCancelledAtAnyMomentLeaveAServerThatStops) {
  Served served;
  served.found();
  served.importDinner();
  std::vector<std::thread> clients;
  for (int client = 0; client < 4; ++client)
    clients.emplace_back([&served, client] {
      const auto sync = v1::SyncService::NewStub(served.channel());
      const auto plans = v1::PlanService::NewStub(served.channel());
      for (int round = 0; round < 50; ++round) {
        const auto context = with(served.token);
        if (client == 0) {
          const auto stream = plans->MakePlan(context.get(), planOf(served));
          if (round % 2 == 0) roundTrip(served.channel());
          context->TryCancel();
          readToEnd<v1::MakePlanResponse>(*stream);
        } else {
          const auto stream = sync->Watch(context.get(), watchOf(served));
          v1::WatchResponse message;
          for (int read = 0; read < round % 4; ++read) stream->Read(&message);
          context->TryCancel();
          readToEnd<v1::WatchResponse>(*stream);
        }
      }
    });
  for (std::thread& client : clients) client.join();
  served.server().drain();
}

}  // namespace
}  // namespace suppertide::service
