// A server that answers as the test tells it to, inside this program.
#pragma once

#include <grpcpp/security/server_credentials.h>
#include <grpcpp/server.h>
#include <grpcpp/server_builder.h>

#include <chrono>
#include <memory>
#include <string>
#include <thread>
#include <vector>

#include "server/embedded.h"
#include "suppertide/v1/event_service.grpc.pb.h"
#include "suppertide/v1/household_service.grpc.pb.h"
#include "suppertide/v1/kitchen_service.grpc.pb.h"
#include "suppertide/v1/plan_service.grpc.pb.h"
#include "suppertide/v1/sync_service.grpc.pb.h"

namespace suppertide::terminal::testing {

// What the server has and says; set by the test before the call.
struct Answers {
  v1::Bundle bundle;                           // what ExportBundle gives
  v1::Plan plan;                               // what planning gives
  std::vector<v1::Breach> breaches;            // what the auditor finds
  std::vector<v1::FieldViolation> violations;  // what ImportBundle finds
  std::vector<v1::WatchResponse> stream;       // what Watch tells
  grpc::Status status = grpc::Status::OK;      // of every call, when not OK
  // What was asked.
  v1::ImportBundleRequest imported;
  bool wasImported = false;  // not only checked
  v1::MakePlanRequest planned;
  v1::ReplanRequest replanned;
  bool nothingMoves = false;  // what Replan says, with `plan`
  v1::ExplainStepRequest explained;
  v1::ExplainStepResponse explanation;  // what ExplainStep gives
  v1::CreateHouseholdRequest created;
  v1::JoinHouseholdRequest joined;
  v1::CreateInvitationRequest invited;
  std::vector<v1::FindRemediesResponse> remedies;  // what FindRemedies tells
  v1::FitOvenRequest fitted;
  v1::FitOvenResponse fit;  // what FitOven gives
};

// Refuses the call with the fields at fault.
inline grpc::Status refusal(grpc::ServerContext* context, const std::vector<v1::FieldViolation>& violations,
                            const char* words) {
  v1::ErrorDetail detail;
  detail.set_reason("FIELD_INVALID");
  for (const v1::FieldViolation& violation : violations) *detail.add_violations() = violation;
  context->AddTrailingMetadata("suppertide-error-bin", detail.SerializeAsString());
  return {grpc::StatusCode::INVALID_ARGUMENT, words};
}

class FakeHouseholds : public v1::HouseholdService::Service {
 public:
  explicit FakeHouseholds(Answers& answers) : answers_(answers) {}
  grpc::Status CreateHousehold(grpc::ServerContext*, const v1::CreateHouseholdRequest* request,
                               v1::CreateHouseholdResponse* response) override {
    answers_.created = *request;
    if (request->host_code() != "HOST-CODE")
      return {grpc::StatusCode::PERMISSION_DENIED, "that code is not right"};
    response->mutable_household()->set_id("h1");
    response->set_member_id("ana");
    response->set_device_token("token");
    return grpc::Status::OK;
  }
  grpc::Status JoinHousehold(grpc::ServerContext*, const v1::JoinHouseholdRequest* request,
                             v1::JoinHouseholdResponse* response) override {
    answers_.joined = *request;
    response->set_household_id("h1");
    response->set_member_id("ben");
    response->set_device_token("token");
    return answers_.status;
  }
  grpc::Status GetHousehold(grpc::ServerContext*, const v1::GetHouseholdRequest*,
                            v1::Household* household) override {
    *household = answers_.bundle.household();
    return answers_.status;
  }
  grpc::Status WhoAmI(grpc::ServerContext*, const v1::WhoAmIRequest*, v1::WhoAmIResponse*) override {
    return answers_.status;
  }
  grpc::Status ImportBundle(grpc::ServerContext* context, grpc::ServerReader<v1::ImportBundleRequest>* reader,
                            v1::ImportBundleResponse* response) override {
    answers_.imported.Clear();
    v1::ImportBundleRequest part;
    while (reader->Read(&part)) answers_.imported.MergeFrom(part);
    if (!answers_.violations.empty()) return refusal(context, answers_.violations, "the bundle has mistakes");
    if (!answers_.imported.validate_only()) answers_.wasImported = true;
    const v1::Bundle& bundle = answers_.imported.bundle();
    (*response->mutable_written_counts())["recipe"] = bundle.recipes_size();
    (*response->mutable_written_counts())["event"] = bundle.events_size();
    return answers_.status;
  }
  grpc::Status ExportBundle(grpc::ServerContext*, const v1::ExportBundleRequest*,
                            grpc::ServerWriter<v1::Bundle>* writer) override {
    writer->Write(answers_.bundle);
    return answers_.status;
  }
  grpc::Status CreateInvitation(grpc::ServerContext*, const v1::CreateInvitationRequest* request,
                                v1::CreateInvitationResponse* response) override {
    answers_.invited = *request;
    response->set_code("ABCD-EFGH");
    response->mutable_expire_time()->set_seconds(1781978400);
    return answers_.status;
  }

 private:
  Answers& answers_;
};

class FakePlans : public v1::PlanService::Service {
 public:
  explicit FakePlans(Answers& answers) : answers_(answers) {}
  grpc::Status MakePlan(grpc::ServerContext*, const v1::MakePlanRequest* request,
                        grpc::ServerWriter<v1::MakePlanResponse>* writer) override {
    answers_.planned = *request;
    v1::MakePlanResponse message;
    message.mutable_time_used()->set_seconds(3);
    message.mutable_quality()->set_proven_tier_count(1);
    writer->Write(message);
    message.set_final(true);
    *message.mutable_plan() = answers_.plan;
    writer->Write(message);
    return answers_.status;
  }
  grpc::Status FindRemedies(grpc::ServerContext*, const v1::FindRemediesRequest*,
                            grpc::ServerWriter<v1::FindRemediesResponse>* writer) override {
    for (const v1::FindRemediesResponse& message : answers_.remedies) writer->Write(message);
    return answers_.status;
  }
  grpc::Status Replan(grpc::ServerContext*, const v1::ReplanRequest* request,
                      grpc::ServerWriter<v1::MakePlanResponse>* writer) override {
    answers_.replanned = *request;
    v1::MakePlanResponse message;
    message.set_final(true);
    message.set_nothing_moves(answers_.nothingMoves);
    *message.mutable_plan() = answers_.plan;
    writer->Write(message);
    return answers_.status;
  }
  grpc::Status ExplainStep(grpc::ServerContext*, const v1::ExplainStepRequest* request,
                           v1::ExplainStepResponse* response) override {
    answers_.explained = *request;
    *response = answers_.explanation;
    return answers_.status;
  }
  grpc::Status AuditPlan(grpc::ServerContext*, const v1::AuditPlanRequest*,
                         v1::AuditPlanResponse* response) override {
    for (const v1::Breach& breach : answers_.breaches) *response->add_breaches() = breach;
    return answers_.status;
  }

 private:
  Answers& answers_;
};

class FakeKitchens : public v1::KitchenService::Service {
 public:
  explicit FakeKitchens(Answers& answers) : answers_(answers) {}
  grpc::Status FitOven(grpc::ServerContext* context, const v1::FitOvenRequest* request,
                       v1::FitOvenResponse* response) override {
    answers_.fitted = *request;
    if (!answers_.violations.empty()) return refusal(context, answers_.violations, "the readings are wrong");
    *response = answers_.fit;
    return answers_.status;
  }

 private:
  Answers& answers_;
};

class FakeEvents : public v1::EventService::Service {
 public:
  explicit FakeEvents(Answers& answers) : answers_(answers) {}
  grpc::Status ListEvents(grpc::ServerContext*, const v1::ListEventsRequest*,
                          v1::ListEventsResponse* response) override {
    for (const v1::Event& event : answers_.bundle.events()) *response->add_events() = event;
    return answers_.status;
  }

 private:
  Answers& answers_;
};

class FakeSync : public v1::SyncService::Service {
 public:
  explicit FakeSync(Answers& answers) : answers_(answers) {}
  grpc::Status Watch(grpc::ServerContext* context, const v1::WatchRequest*,
                     grpc::ServerWriter<v1::WatchResponse>* writer) override {
    for (const v1::WatchResponse& message : answers_.stream) writer->Write(message);
    while (!context->IsCancelled()) std::this_thread::yield();
    return grpc::Status::CANCELLED;
  }

 private:
  Answers& answers_;
};

class FakeServer : public EmbeddedServer {
 public:
  explicit FakeServer(Answers& answers)
      : households_(answers), kitchens_(answers), plans_(answers), events_(answers), sync_(answers) {
    grpc::ServerBuilder builder;
    builder.AddListeningPort("127.0.0.1:0", grpc::InsecureServerCredentials(), &port_);
    for (grpc::Service* service :
         std::initializer_list<grpc::Service*>{&households_, &kitchens_, &plans_, &events_, &sync_}) {
      builder.RegisterService(service);
    }
    server_ = builder.BuildAndStart();
  }
  ~FakeServer() override { stop(); }
  void stop() {
    if (server_ != nullptr) server_->Shutdown(std::chrono::system_clock::now());
    server_.reset();
  }
  std::string target() const override { return "127.0.0.1:" + std::to_string(port_); }
  int networkPort() const override { return 0; }
  std::string hostCode() const override { return "HOST-CODE"; }

 private:
  FakeHouseholds households_;
  FakeKitchens kitchens_;
  FakePlans plans_;
  FakeEvents events_;
  FakeSync sync_;
  int port_ = 0;
  std::unique_ptr<grpc::Server> server_;
};

}  // namespace suppertide::terminal::testing
