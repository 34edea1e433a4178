#include "tests/service/served.h"

#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>

#include "server/base/ids.h"
#include "tests/compose/small_dinner.h"

namespace suppertide::service {

TemporaryFolder::TemporaryFolder()
    : path_((std::filesystem::temp_directory_path() / "suppertide-test-XXXXXX").string()) {
  if (mkdtemp(path_.data()) == nullptr) ADD_FAILURE() << "no temporary folder";
}

TemporaryFolder::~TemporaryFolder() {
  std::error_code ignored;
  std::filesystem::remove_all(path_, ignored);
}

Served::Served(Backend::Options options, const std::string& dataFile, const std::string& calendar) {
  Server::Options server;
  server.dataFile = dataFile;
  server.listen = "unix:" + folder_.path() + "/s";
  server.backend = std::move(options);
  server.fullSync = false;
  server.calendar = calendar;
  auto started = Server::start(server, clock_);
  EXPECT_TRUE(started.ok()) << started.status();
  server_ = *std::move(started);
  channel_ = grpc::CreateChannel(server_->target(), grpc::InsecureChannelCredentials());
}

void Served::found() {
  v1::CreateHouseholdRequest asked;
  asked.set_host_code(server_->hostCode());
  asked.set_request_id(freshRequest());
  asked.mutable_household()->set_display_name("Harbour Lane");
  asked.mutable_household()->set_time_zone("Europe/Lisbon");
  v1::Member& ana = *asked.mutable_household()->add_members();
  ana.set_id("ana");
  ana.set_display_name("Ana");
  ana.set_role(v1::ROLE_HOST);
  v1::CreateHouseholdResponse answer;
  const auto context = with("");
  const grpc::Status status =
      v1::HouseholdService::NewStub(channel_)->CreateHousehold(context.get(), asked, &answer);
  ASSERT_TRUE(status.ok()) << status.error_message();
  household = answer.household().id();
  token = answer.device_token();
}

std::string Served::invite(v1::Role role) {
  const auto stub = v1::HouseholdService::NewStub(channel_);
  v1::CreateInvitationRequest asked;
  asked.set_household_id(household);
  asked.set_role(role);
  asked.set_request_id(freshRequest());
  v1::CreateInvitationResponse invitation;
  const auto first = with(token);
  EXPECT_TRUE(stub->CreateInvitation(first.get(), asked, &invitation).ok());
  v1::JoinHouseholdRequest join;
  join.set_code(invitation.code());
  join.set_display_name("Joiner");
  join.set_request_id(freshRequest());
  v1::JoinHouseholdResponse joined;
  const auto second = with("");
  const grpc::Status status = stub->JoinHousehold(second.get(), join, &joined);
  EXPECT_TRUE(status.ok()) << status.error_message();
  return joined.device_token();
}

void Served::importDinner() {
  const grpc::Status status = import(compose::smallDinner());
  ASSERT_TRUE(status.ok()) << status.error_message();
}

grpc::Status Served::import(const v1::Bundle& bundle, v1::ImportBundleResponse* answer, bool validateOnly) {
  v1::ImportBundleRequest asked;
  asked.set_household_id(household);
  *asked.mutable_bundle() = bundle;
  asked.set_request_id(freshRequest());
  asked.set_validate_only(validateOnly);
  v1::ImportBundleResponse unheard;
  return importBundle(*v1::HouseholdService::NewStub(channel_), *with(token), asked,
                      answer != nullptr ? answer : &unheard);
}

v1::Bundle Served::exported() {
  v1::ExportBundleRequest asked;
  asked.set_household_id(household);
  const auto context = with(token);
  const auto stream = v1::HouseholdService::NewStub(channel_)->ExportBundle(context.get(), asked);
  v1::Bundle bundle;
  v1::Bundle part;
  while (stream->Read(&part)) bundle.MergeFrom(part);
  const grpc::Status status = stream->Finish();
  EXPECT_TRUE(status.ok()) << status.error_message();
  return bundle;
}

std::vector<const google::protobuf::MethodDescriptor*> everyCall() {
  std::vector<const google::protobuf::MethodDescriptor*> calls;
  for (const auto& entry : std::filesystem::directory_iterator(SUPPERTIDE_PROTO_FOLDER "/suppertide/v1")) {
    const auto* file = google::protobuf::DescriptorPool::generated_pool()->FindFileByName(
        "suppertide/v1/" + entry.path().filename().string());
    for (int s = 0; file != nullptr && s < file->service_count(); ++s)
      for (int m = 0; m < file->service(s)->method_count(); ++m) calls.push_back(file->service(s)->method(m));
  }
  return calls;
}

BusyWorkers::BusyWorkers(Workers& workers, int threads) : busy_(static_cast<std::size_t>(threads)) {
  const std::shared_future<void> free = released_.get_future().share();
  for (std::promise<void>& busy : busy_) {
    std::future<void> begun = busy.get_future();
    workers.post([free, &busy] {
      busy.set_value();
      free.wait();
    });
    begun.wait();
  }
}

grpc::Status importBundle(v1::HouseholdService::Stub& stub, grpc::ClientContext& context,
                          const v1::ImportBundleRequest& asked, v1::ImportBundleResponse* answer) {
  const auto stream = stub.ImportBundle(&context, answer);
  stream->Write(asked);
  stream->WritesDone();
  return stream->Finish();
}

std::unique_ptr<grpc::ClientContext> with(const std::string& token) {
  auto context = std::make_unique<grpc::ClientContext>();
  if (!token.empty()) context->AddMetadata("authorization", "Bearer " + token);
  context->set_deadline(std::chrono::system_clock::now() + std::chrono::seconds(30));
  return context;
}

std::string freshRequest() {
  return newId();
}

}  // namespace suppertide::service
