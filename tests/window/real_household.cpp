#include "tests/window/real_household.h"

#include "client/link/request_id.h"
#include "tests/compose/small_dinner.h"
#include "tests/window/must.h"

namespace suppertide::testing {

RealHousehold::RealHousehold() {
  start();
  const v1::Bundle bundle = compose::smallDinner();
  link::Session stranger({.target = target(), .deviceToken = "", .certificatePem = ""});
  v1::CreateHouseholdRequest request;
  request.set_host_code(server_->hostCode());
  *request.mutable_household() = bundle.household();
  request.mutable_household()->clear_id();
  request.set_member_id("ana");
  request.set_device_name("laptop");
  request.set_request_id(link::newRequestId());
  const auto founded = must(stranger.createHousehold(request), "found the household");
  id_ = founded.household().id();
  hostToken_ = founded.device_token();
  calls_ = std::make_unique<link::Session>(
      link::SessionOptions{.target = target(), .deviceToken = hostToken_, .certificatePem = ""});
  v1::ImportBundleRequest import;
  import.set_household_id(id_);
  *import.mutable_bundle() = bundle;
  import.set_request_id(link::newRequestId());
  must(calls_->importBundle(import), "import the dinner");
}

void RealHousehold::start() {
  server_ = must(EmbeddedServer::start({.dataFile = folder_.file("household.sqlite"), .listen = target()}),
                 "start the server");
}

void RealHousehold::plan() {
  v1::MakePlanRequest request;
  request.set_household_id(id_);
  request.set_event_id("supper");
  request.mutable_time_limit()->set_seconds(2);
  request.set_request_id(link::newRequestId());
  must(calls_->makePlan(request, nullptr), "plan the supper");
}

link::LinkOptions RealHousehold::options(const std::string& token) const {
  link::LinkOptions options;
  options.target = target();
  options.householdId = id_;
  options.deviceToken = token;
  options.firstRetry = std::chrono::milliseconds(5);
  options.lastRetry = std::chrono::milliseconds(50);
  return options;
}

link::LinkOptions RealHousehold::deviceOf(const std::string& memberId) {
  v1::CreateInvitationRequest invite;
  invite.set_household_id(id_);
  invite.set_member_id(memberId);
  invite.set_role(v1::ROLE_COOK);
  invite.set_request_id(link::newRequestId());
  const auto invitation = must(calls_->createInvitation(invite), "invite");
  v1::JoinHouseholdRequest join;
  join.set_code(invitation.code());
  join.set_device_name("phone");
  join.set_request_id(link::newRequestId());
  link::Session stranger({.target = target(), .deviceToken = "", .certificatePem = ""});
  return options(must(stranger.joinHousehold(join), "join").device_token());
}

}  // namespace suppertide::testing
