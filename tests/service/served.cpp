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
  v1::ImportBundleRequest asked;
  asked.set_household_id(household);
  *asked.mutable_bundle() = compose::smallDinner();
  asked.set_request_id(freshRequest());
  v1::ImportBundleResponse answer;
  const auto context = with(token);
  const grpc::Status status =
      v1::HouseholdService::NewStub(channel_)->ImportBundle(context.get(), asked, &answer);
  ASSERT_TRUE(status.ok()) << status.error_message();
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
