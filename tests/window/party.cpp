#include "tests/window/party.h"

#include "client/link/request_id.h"
#include "tests/window/must.h"

namespace suppertide::testing {
namespace {

link::SessionOptions stranger(const std::string& target) {
  return {.target = target, .deviceToken = "", .certificatePem = ""};
}

}  // namespace

Party::Party(const v1::Bundle& bundle, std::chrono::sys_seconds begin)
    : clock_(begin), eventId_(bundle.events(0).id()) {
  service::Server::Options options;
  options.listen = "unix:" + folder_.file("s.sock");
  options.fullSync = false;
  server_ = must(service::Server::start(options, clock_), "start the server");
  v1::CreateHouseholdRequest found;
  found.set_host_code(server_->hostCode());
  *found.mutable_household() = bundle.household();
  found.mutable_household()->clear_id();
  for (const v1::Member& member : bundle.household().members())
    if (member.role() == v1::ROLE_HOST && found.member_id().empty()) found.set_member_id(member.id());
  found.set_device_name("laptop");
  found.set_request_id(link::newRequestId());
  const auto made = must(link::Session(stranger(server_->target())).createHousehold(found), "found");
  id_ = made.household().id();
  tokens_[made.member_id()] = made.device_token();
  host_ = std::make_unique<link::Session>(link::SessionOptions{
      .target = server_->target(), .deviceToken = made.device_token(), .certificatePem = ""});
  v1::ImportBundleRequest import;
  import.set_household_id(id_);
  *import.mutable_bundle() = bundle;
  import.set_request_id(link::newRequestId());
  must(host_->importBundle(import), "import the dinner");
  for (const v1::EventCook& cook : bundle.events(0).cooks())
    if (tokens_.count(cook.member_id()) == 0) join(cook.member_id());
}

void Party::join(const std::string& memberId) {
  v1::CreateInvitationRequest invite;
  invite.set_household_id(id_);
  invite.set_member_id(memberId);
  invite.set_role(v1::ROLE_COOK);
  invite.set_request_id(link::newRequestId());
  v1::JoinHouseholdRequest request;
  request.set_code(must(host_->createInvitation(invite), "invite").code());
  request.set_device_name("phone");
  request.set_request_id(link::newRequestId());
  tokens_[memberId] =
      must(link::Session(stranger(server_->target())).joinHousehold(request), "join").device_token();
}

link::LinkOptions Party::deviceOf(const std::string& memberId) const {
  link::LinkOptions options;
  options.target = server_->target();
  options.householdId = id_;
  options.deviceToken = tokens_.at(memberId);
  options.firstRetry = std::chrono::milliseconds(5);
  options.lastRetry = std::chrono::milliseconds(50);
  return options;
}

void Party::plan(std::int64_t workLimit) {
  v1::MakePlanRequest request;
  request.set_household_id(id_);
  request.set_event_id(eventId_);
  request.set_work_limit(workLimit);
  request.set_request_id(link::newRequestId());
  must(host_->makePlan(request, nullptr), "plan the dinner");
}

}  // namespace suppertide::testing
