#include "client/link/session.h"

#include <gtest/gtest.h>

#include <set>

#include "client/link/channel.h"
#include "client/link/error_detail.h"
#include "client/link/request_id.h"
#include "suppertide/v1/event_service.grpc.pb.h"
#include "suppertide/v1/plan_service.grpc.pb.h"
#include "tests/link/in_process_server.h"
#include "tests/link/scripted_sync.h"

namespace suppertide::link {
namespace {

using namespace testing;

class PagedEvents : public v1::EventService::Service {
 public:
  grpc::Status ListEvents(grpc::ServerContext*, const v1::ListEventsRequest* request,
                          v1::ListEventsResponse* response) override {
    const int page = request->page_token().empty() ? 0 : std::stoi(request->page_token());
    response->add_events()->set_id("e" + std::to_string(page));
    if (page < 2) response->set_next_page_token(std::to_string(page + 1));
    return grpc::Status::OK;
  }
};

TEST(SessionTest, ReadsEveryPage) {
  PagedEvents service;
  const InProcessServer server(service);
  Session session({.target = server.target(), .deviceToken = "t", .certificatePem = ""});
  const auto events = session.events("h1");
  ASSERT_TRUE(events.ok()) << events.status();
  ASSERT_EQ(events->size(), 3U);
  EXPECT_EQ(events->back().id(), "e2");
}

class RefusingPlans : public v1::PlanService::Service {
 public:
  grpc::Status GetPlan(grpc::ServerContext* context, const v1::GetPlanRequest*, v1::Plan*) override {
    v1::ErrorDetail detail;
    detail.set_reason("FIELD_INVALID");
    v1::FieldViolation* violation = detail.add_violations();
    violation->set_field_path("eventId");
    violation->set_description("1 to 64 characters");
    context->AddTrailingMetadata("suppertide-error-bin", detail.SerializeAsString());
    return {grpc::StatusCode::INVALID_ARGUMENT, "the event id is not valid"};
  }
  grpc::Status MakePlan(grpc::ServerContext*, const v1::MakePlanRequest*,
                        grpc::ServerWriter<v1::MakePlanResponse>* writer) override {
    v1::MakePlanResponse message;
    message.mutable_quality()->set_proven_tier_count(1);
    writer->Write(message);
    message.set_final(endsProperly);
    message.mutable_plan()->set_id("e1");
    writer->Write(message);
    return grpc::Status::OK;
  }
  bool endsProperly = true;
};

TEST(SessionTest, KeepsTheServersDetailInTheStatus) {
  RefusingPlans service;
  const InProcessServer server(service);
  Session session({.target = server.target(), .deviceToken = "t", .certificatePem = ""});
  const auto plan = session.plan({});
  ASSERT_EQ(plan.status().code(), absl::StatusCode::kInvalidArgument);
  EXPECT_EQ(std::string(plan.status().message()), "the event id is not valid");
  const auto detail = errorDetail(plan.status());
  ASSERT_TRUE(detail);
  ASSERT_EQ(detail->violations_size(), 1);
  EXPECT_EQ(detail->violations(0).field_path(), "eventId");
}

TEST(SessionTest, AStatusWithoutDetailHasNone) {
  EXPECT_FALSE(errorDetail(absl::UnavailableError("nobody there")));
}

TEST(SessionTest, TellsTheProgressOfPlanningAndReturnsTheLast) {
  RefusingPlans service;
  const InProcessServer server(service);
  Session session({.target = server.target(), .deviceToken = "t", .certificatePem = ""});
  int told = 0;
  const auto last = session.makePlan({}, [&](const v1::MakePlanResponse&) { ++told; });
  ASSERT_TRUE(last.ok()) << last.status();
  EXPECT_EQ(told, 2);
  EXPECT_EQ(last->plan().id(), "e1");
}

TEST(SessionTest, PlanningThatEndsWithoutAPlanIsAnError) {
  RefusingPlans service;
  service.endsProperly = false;
  const InProcessServer server(service);
  Session session({.target = server.target(), .deviceToken = "t", .certificatePem = ""});
  EXPECT_EQ(session.makePlan({}, nullptr).status().code(), absl::StatusCode::kInternal);
}

TEST(SessionTest, NobodyListeningIsUnavailable) {
  PagedEvents service;
  InProcessServer server(service);
  const std::string target = server.target();
  server.stop();
  Session session({.target = target, .deviceToken = "t", .certificatePem = ""});
  EXPECT_EQ(session.whoAmI().status().code(), absl::StatusCode::kUnavailable);
}

TEST(ChannelTest, KnowsWhatStaysOnThisMachine) {
  EXPECT_TRUE(isLocalTarget("unix:/run/suppertide.sock"));
  EXPECT_TRUE(isLocalTarget("127.0.0.1:7443"));
  EXPECT_TRUE(isLocalTarget("[::1]:7443"));
  EXPECT_FALSE(isLocalTarget("192.168.1.4:7443"));
  EXPECT_FALSE(isLocalTarget("127.evil.example:7443"));
}

TEST(RequestIdTest, IsAFreshUuidEachTime) {
  std::set<std::string> ids;
  for (int i = 0; i < 100; ++i) {
    const std::string id = newRequestId();
    EXPECT_EQ(id.size(), 36U);
    EXPECT_EQ(id[14], '4');
    ids.insert(id);
  }
  EXPECT_EQ(ids.size(), 100U);
}

}  // namespace
}  // namespace suppertide::link
