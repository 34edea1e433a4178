#include "suppertide/v1/household_service.grpc.pb.h"

#include <google/protobuf/util/message_differencer.h>

#include <algorithm>
#include <iterator>

#include "server/service/document_calls.h"
#include "server/service/joining.h"
#include "server/service/receive_bundle.h"
#include "server/service/send_bundle.h"
#include "server/service/services.h"
#include "server/service/version.h"

namespace suppertide::service {
namespace {

// Fills in id and a host where they are missing; the member that the device is.
Failure prepare(const v1::CreateHouseholdRequest& asked, v1::Household& household, std::string& memberId) {
  household = asked.household();
  household.clear_meta();
  if (household.id().empty()) household.set_id(newId());
  if (household.members().empty()) {
    v1::Member& host = *household.add_members();
    host.set_id("host");
    host.set_display_name("Host");
    host.set_role(v1::ROLE_HOST);
  }
  if (const auto wrong = compose::validate(household); !wrong.empty()) return invalid(wrong);
  memberId = asked.member_id();
  for (const v1::Member& member : household.members())
    if (memberId.empty() && member.role() == v1::ROLE_HOST) memberId = member.id();
  const v1::Member* member = memberOf(household, memberId);
  if (member == nullptr || member->role() != v1::ROLE_HOST)
    return invalidField("memberId", memberId,
                        "must be a member with the role of host: the first device is a host's");
  return {};
}

Failure staysHost(const Caller& caller, const v1::Household& household) {
  const v1::Member* self = memberOf(household, caller.memberId);
  if (self != nullptr && self->role() == v1::ROLE_HOST) return {};
  return invalidField("members", caller.memberId, "must keep you as a host: let another host take you off");
}

// The household without its stamp and without what a cook may change of themselves.
v1::Household besidesOwnTimes(v1::Household household, const std::string& memberId) {
  household.clear_meta();
  for (v1::Member& member : *household.mutable_members()) {
    if (member.id() != memberId) continue;
    member.clear_awake();
    member.clear_social();
    member.clear_quiet();
    member.clear_soon_duration();
  }
  return household;
}

// What is compared with what is stored must not change before it is written, hence the etag.
Failure changesOwnTimesOnly(Backend& backend, const Caller& caller, const v1::Household& household) {
  if (household.meta().etag().empty())
    return invalidField("household.meta.etag", "", "must be given by a cook, or an updateMask");
  const auto stored = backend.store().get(caller.householdId, {kindOf(household), household.id()});
  if (!stored.ok()) return fromStorage(stored.status());
  using google::protobuf::util::MessageDifferencer;
  if (MessageDifferencer::Equals(besidesOwnTimes(read<v1::Household>(*stored), caller.memberId),
                                 besidesOwnTimes(household, caller.memberId)))
    return {};
  return failure(
      absl::PermissionDeniedError(
          "a cook may change only their own hours and when they are reminded; ask a host for more"),
      "ROLE_TOO_SMALL");
}

class HouseholdServiceCalls final : public v1::HouseholdService::CallbackService {
 public:
  explicit HouseholdServiceCalls(Backend& backend)
      : backend_(backend),
        calls_(backend, "HouseholdService", kAnyNumber,
               [&backend](const Caller& caller, const v1::Household& household) {
                 return caller.role == v1::ROLE_HOST ? staysHost(caller, household)
                                                     : changesOwnTimesOnly(backend, caller, household);
               }) {}

  grpc::ServerUnaryReactor* CreateHousehold(grpc::CallbackServerContext* context,
                                            const v1::CreateHouseholdRequest* request,
                                            v1::CreateHouseholdResponse* answer) override {
    const std::string peer = peerOf(*context);
    return serve(backend_, context, request, "HouseholdService/CreateHousehold", "",
                 [this, answer, peer](const Caller&, const v1::CreateHouseholdRequest& asked,
                                      const Finish& finish) { create(asked, peer, answer, finish); });
  }

  grpc::ServerUnaryReactor* GetHousehold(grpc::CallbackServerContext* context,
                                         const v1::GetHouseholdRequest* request,
                                         v1::Household* answer) override {
    return calls_.get(context, request, request->household_id(), "GetHousehold", answer);
  }

  grpc::ServerUnaryReactor* UpdateHousehold(grpc::CallbackServerContext* context,
                                            const v1::UpdateHouseholdRequest* request,
                                            v1::WriteHouseholdResponse* answer) override {
    return calls_.update(context, request, request->household().id(), request->household(), "UpdateHousehold",
                         answer, answer->mutable_household());
  }

  grpc::ServerUnaryReactor* WhoAmI(grpc::CallbackServerContext* context, const v1::WhoAmIRequest* request,
                                   v1::WhoAmIResponse* answer) override {
    return serve(backend_, context, request, "HouseholdService/WhoAmI", "",
                 [answer](const Caller& caller, const v1::WhoAmIRequest&, const Finish& finish) {
                   answer->set_household_id(caller.householdId);
                   answer->set_member_id(caller.memberId);
                   answer->set_device_id(caller.deviceId);
                   answer->set_role(caller.role);
                   answer->set_server_version(kVersion);
                   finish({});
                 });
  }

  grpc::ServerReadReactor<v1::ImportBundleRequest>* ImportBundle(grpc::CallbackServerContext* context,
                                                                 v1::ImportBundleResponse* answer) override {
    return receiveBundle(backend_, *context, *answer);
  }

  grpc::ServerWriteReactor<v1::Bundle>* ExportBundle(grpc::CallbackServerContext* context,
                                                     const v1::ExportBundleRequest* request) override {
    return sendBundle(backend_, *context, *request);
  }

  grpc::ServerUnaryReactor* CreateInvitation(grpc::CallbackServerContext* context,
                                             const v1::CreateInvitationRequest* request,
                                             v1::CreateInvitationResponse* answer) override {
    return serve(backend_, context, request, "HouseholdService/CreateInvitation", request->household_id(),
                 [this, answer](const Caller& caller, const v1::CreateInvitationRequest& asked,
                                const Finish& finish) { finish(invite(backend_, caller, asked, *answer)); });
  }

  grpc::ServerUnaryReactor* JoinHousehold(grpc::CallbackServerContext* context,
                                          const v1::JoinHouseholdRequest* request,
                                          v1::JoinHouseholdResponse* answer) override {
    const std::string peer = peerOf(*context);
    return serve(backend_, context, request, "HouseholdService/JoinHousehold", "",
                 [this, answer, peer](const Caller&, const v1::JoinHouseholdRequest& asked,
                                      const Finish& finish) { join(backend_, asked, peer, answer, finish); });
  }

  grpc::ServerUnaryReactor* ListDevices(grpc::CallbackServerContext* context,
                                        const v1::ListDevicesRequest* request,
                                        v1::ListDevicesResponse* answer) override {
    return serve(backend_, context, request, "HouseholdService/ListDevices", request->household_id(),
                 [this, answer](const Caller& caller, const v1::ListDevicesRequest& asked,
                                const Finish& finish) { finish(listDevices(caller, asked, *answer)); });
  }

  grpc::ServerUnaryReactor* RevokeDevice(grpc::CallbackServerContext* context,
                                         const v1::RevokeDeviceRequest* request,
                                         v1::RevokeDeviceResponse*) override {
    return serve(backend_, context, request, "HouseholdService/RevokeDevice", request->household_id(),
                 [this](const Caller& caller, const v1::RevokeDeviceRequest& asked, const Finish& finish) {
                   finish(revoke(caller, asked));
                 });
  }

 private:
  Failure revoke(const Caller& caller, const v1::RevokeDeviceRequest& asked) {
    if (asked.validate_only()) {
      const auto devices = backend_.store().listDevices(caller.householdId);
      if (!devices.ok()) return fromStorage(devices.status());
      const bool known = std::any_of(devices->begin(), devices->end(),
                                     [&](const auto& device) { return device.id == asked.device_id(); });
      return known ? Failure() : fromStorage(absl::NotFoundError("there is no such device"));
    }
    const auto status = backend_.store().revokeDevice(caller.householdId, asked.device_id());
    if (status.ok()) backend_.streams().endDevice(asked.device_id());
    return fromStorage(status);
  }

  Failure listDevices(const Caller& caller, const v1::ListDevicesRequest& asked,
                      v1::ListDevicesResponse& answer) {
    if (asked.page_size() < 0)
      return invalidField("pageSize", absl::StrCat(asked.page_size()), "must be 0 or more");
    const auto devices = backend_.store().listDevices(caller.householdId);
    if (!devices.ok()) return fromStorage(devices.status());
    auto next = devices->begin();
    if (!asked.page_token().empty()) {
      next = std::find_if(next, devices->end(), [&](const auto& d) { return d.id == asked.page_token(); });
      if (next == devices->end())
        return invalidField("pageToken", asked.page_token().substr(0, 40),
                            "must be one of an earlier answer");
      ++next;
    }
    for (int left = pageSize(asked.page_size()); left > 0 && next != devices->end(); --left, ++next) {
      v1::Device& told = *answer.add_devices();
      told.set_id(next->id);
      told.set_member_id(next->memberId);
      told.set_display_name(next->displayName);
      told.mutable_create_time()->set_seconds(next->createTime.time_since_epoch().count());
      told.mutable_last_seen_time()->set_seconds(next->lastSeenTime.time_since_epoch().count());
      told.set_revoked(next->revoked);
    }
    if (next != devices->end()) answer.set_next_page_token(std::prev(next)->id);
    return {};
  }

  // What creating would answer, but for device and token.
  Failure wouldCreate(const v1::CreateHouseholdRequest& asked, const std::string& peer,
                      const v1::Household& household, const std::string& memberId,
                      v1::CreateHouseholdResponse& answer) {
    const auto code = backend_.store().findCode(hashOfCode(asked.host_code()));
    if (!code.ok() && code.status().code() != absl::StatusCode::kNotFound) return fromStorage(code.status());
    if (!code.ok() || code->purpose != storage::Code::Purpose::kHost) {
      backend_.codeTries().failed(peer);
      return wrongCode();
    }
    *answer.mutable_household() = household;
    answer.set_member_id(memberId);
    return {};
  }

  void create(const v1::CreateHouseholdRequest& asked, const std::string& peer,
              v1::CreateHouseholdResponse* answer, const Finish& finish) {
    if (const Failure wrong = mayTryCode(backend_, peer); wrong.failed()) return finish(wrong);
    if (const Failure wrong = checkRequestId(asked.request_id()); wrong.failed()) return finish(wrong);
    if (const Failure wrong = checkDeviceName(asked.device_name()); wrong.failed()) return finish(wrong);
    v1::Household household;
    std::string memberId;
    if (const Failure wrong = prepare(asked, household, memberId); wrong.failed()) return finish(wrong);
    if (asked.validate_only()) return finish(wouldCreate(asked, peer, household, memberId, *answer));
    const std::string token = newToken();
    storage::NewHousehold fresh;
    fresh.householdId = household.id();
    fresh.codeHash = hashOfCode(asked.host_code());
    fresh.bytes = putOf(household).bytes;
    fresh.memberId = memberId;
    fresh.device = newDevice(backend_, household.id(), memberId, asked.device_name());
    fresh.tokenHash = hashOfToken(token);
    fresh.requestId = asked.request_id();
    fresh.fingerprint = fingerprintOf("HouseholdService/CreateHousehold", asked);
    const auto made = backend_.store().createHousehold(fresh);
    if (made.status().code() == absl::StatusCode::kNotFound) {
      backend_.codeTries().failed(peer);
      return finish(wrongCode());
    }
    if (!made.ok()) return finish(fromStorage(made.status()));
    *answer->mutable_household() = read<v1::Household>(made->documents.front());
    answer->set_device_token(token);
    const auto device = backend_.store().findDevice(fresh.tokenHash);
    answer->set_device_id(device.ok() ? device->id : fresh.device.id);
    answer->set_member_id(device.ok() ? device->memberId : memberId);
    answer->set_revision(made->revision);
    finish({});
  }

  Backend& backend_;
  DocumentCalls<v1::Household> calls_;
};

}  // namespace

std::unique_ptr<grpc::Service> makeHouseholdService(Backend& backend) {
  return std::make_unique<HouseholdServiceCalls>(backend);
}

}  // namespace suppertide::service
