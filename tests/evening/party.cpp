#include "tests/evening/party.h"

#include <cstdio>
#include <cstdlib>

#include "client/link/request_id.h"
#include "server/base/ids.h"

namespace suppertide::evening {

Party::Party(const v1::Bundle& bundle, std::int64_t begin)
    : clock_(Instant(std::chrono::seconds(begin))),
      folder_(std::filesystem::temp_directory_path() / ("evening-" + newId())) {
  std::filesystem::create_directory(folder_);
  service::Server::Options options;
  options.listen = "unix:" + (folder_ / "s").string();
  options.fullSync = false;
  auto started = service::Server::start(options, clock_);
  if (!started.ok()) std::abort();
  server_ = *std::move(started);
  found(bundle);
}

Party::~Party() {
  cooks.clear();
  server_.reset();
  std::error_code ignored;
  std::filesystem::remove_all(folder_, ignored);
}

void Party::found(const v1::Bundle& bundle) {
  link::Session stranger({.target = server_->target(), .deviceToken = "", .certificatePem = ""});
  v1::CreateHouseholdRequest request;
  request.set_host_code(server_->hostCode());
  request.mutable_household()->set_display_name("Evening");
  request.mutable_household()->set_time_zone(bundle.household().time_zone());
  for (const v1::Member& member : bundle.household().members())
    if (member.role() == v1::ROLE_HOST && request.household().members().empty())
      *request.mutable_household()->add_members() = member;
  request.set_request_id(link::newRequestId());
  const auto created = stranger.createHousehold(request);
  if (!created.ok()) std::abort();
  household_ = created->household().id();
  add(created->member_id(), created->device_token());
  v1::ImportBundleRequest import;
  import.set_household_id(household_);
  *import.mutable_bundle() = bundle;
  import.set_request_id(link::newRequestId());
  if (const auto imported = host().session().importBundle(import); !imported.ok()) {
    std::fprintf(stderr, "%s\n", imported.status().ToString().c_str());
    std::abort();
  }
  for (const v1::EventCook& cook : bundle.events(0).cooks())
    if (cook.member_id() != created->member_id()) join(cook.member_id());
}

void Party::join(const std::string& memberId) {
  v1::CreateInvitationRequest invite;
  invite.set_household_id(household_);
  invite.set_role(v1::ROLE_COOK);
  invite.set_member_id(memberId);
  invite.set_request_id(link::newRequestId());
  const auto invitation = host().session().createInvitation(invite);
  if (!invitation.ok()) std::abort();
  link::Session stranger({.target = server_->target(), .deviceToken = "", .certificatePem = ""});
  v1::JoinHouseholdRequest request;
  request.set_code(invitation->code());
  request.set_request_id(link::newRequestId());
  const auto joined = stranger.joinHousehold(request);
  if (!joined.ok()) std::abort();
  add(memberId, joined->device_token());
}

void Party::add(const std::string& memberId, const std::string& token) {
  link::LinkOptions options;
  options.target = server_->target();
  options.householdId = household_;
  options.deviceToken = token;
  options.firstRetry = std::chrono::milliseconds(1);
  cooks.push_back(std::make_unique<CookClient>(memberId, options));
}

}  // namespace suppertide::evening
