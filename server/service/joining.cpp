#include "server/service/joining.h"

#include <memory>

#include "absl/strings/str_cat.h"
#include "server/base/ids.h"
#include "server/service/document_calls.h"
#include "server/service/text.h"

namespace suppertide::service {
namespace {

constexpr char kJoin[] = "HouseholdService/JoinHousehold";
constexpr std::int64_t kUsualSeconds = 24 * 3600;
constexpr std::int64_t kLeastSeconds = 60;
constexpr std::int64_t kMostSeconds = 14 * 24 * 3600;
constexpr int kMostNameCharacters = 60;

bool isRole(int role) {
  return role >= v1::ROLE_READER && role <= v1::ROLE_HOST;
}

// One JoinHousehold under way.
struct Joining {
  Backend& backend;
  v1::JoinHouseholdRequest asked;
  std::string peer;
  v1::JoinHouseholdResponse* answer;
  Finish finish;
  storage::Redemption redemption;
  std::string token;
  int triesLeft = kMostTries;
};

void prepareAndRedeem(const std::shared_ptr<Joining>& joining);

void redeem(const std::shared_ptr<Joining>& joining) {
  joining->backend.queue().redeem(joining->redemption, [joining](absl::StatusOr<storage::Redeemed> result) {
    const absl::StatusCode code = result.status().code();
    if (code == absl::StatusCode::kAborted && --joining->triesLeft > 0)
      return joining->backend.readers().post([joining] { prepareAndRedeem(joining); });
    if (code == absl::StatusCode::kNotFound) {
      joining->backend.codeTries().failed(joining->peer);
      return joining->finish(wrongCode());
    }
    if (!result.ok()) return joining->finish(fromStorage(result.status()));
    joining->answer->set_household_id(result->device.householdId);
    joining->answer->set_member_id(result->device.memberId);
    joining->answer->set_device_id(result->device.id);
    joining->answer->set_device_token(joining->token);
    joining->finish({});
  });
}

// The household with the one who joins, when the invitation names nobody.
Failure addMember(Joining& joining, const storage::Code& code) {
  const std::string& id = code.householdId;
  const auto stored = joining.backend.store().get(id, {"household", id});
  if (!stored.ok()) return fromStorage(stored.status());
  auto household = read<v1::Household>(*stored);
  std::string& memberId = joining.redemption.device.memberId;
  memberId = code.memberId.empty() ? memberIdOfCode(joining.asked.code()) : code.memberId;
  joining.redemption.household.reset();
  if (memberOf(household, memberId) != nullptr) return {};
  if (!code.memberId.empty())
    return failure(absl::FailedPreconditionError("whom this code is for is no longer in the household"),
                   "NOT_A_MEMBER");
  v1::Member& member = *household.add_members();
  member.set_id(memberId);
  member.set_display_name(joining.asked.display_name());
  member.set_role(static_cast<v1::Role>(code.role));
  if (!compose::validate(household).empty())
    return invalidField("displayName", joining.asked.display_name().substr(0, 60),
                        "must be 1 to 60 characters, and the household have room for one more");
  joining.redemption.household = putOf(household, storage::Expect::kPresent);
  return {};
}

// What joining would answer, but for the token.
void tellWouldJoin(const Joining& joining, bool known) {
  const storage::Device& device = joining.redemption.device;
  if (!known || device.householdId.empty()) {
    joining.backend.codeTries().failed(joining.peer);
    return joining.finish(wrongCode());
  }
  joining.answer->set_household_id(device.householdId);
  joining.answer->set_member_id(device.memberId);
  joining.finish({});
}

// Again from here when someone else wrote the household in between.
void prepareAndRedeem(const std::shared_ptr<Joining>& joining) {
  const auto code = joining->backend.store().findCode(joining->redemption.codeHash);
  if (!code.ok() && code.status().code() != absl::StatusCode::kNotFound)
    return joining->finish(fromStorage(code.status()));
  // Used up it may have been by this very request, whose answer was lost: storage knows.
  if (code.ok() && code->purpose == storage::Code::Purpose::kInvitation) {
    joining->redemption.device.householdId = code->householdId;
    if (const Failure wrong = addMember(*joining, *code); wrong.failed()) return joining->finish(wrong);
  }
  if (joining->asked.validate_only()) return tellWouldJoin(*joining, code.ok());
  redeem(joining);
}

}  // namespace

Failure checkDeviceName(const std::string& name) {
  if (charactersOf(name) <= kMostNameCharacters) return {};
  return invalidField("deviceName", absl::StrCat(charactersOf(name), " characters"),
                      "must be at most 60 characters");
}

Failure wrongCode() {
  return failure(absl::PermissionDeniedError("this code is wrong, used or no longer good"), "WRONG_CODE");
}

Failure mayTryCode(Backend& backend, const std::string& peer) {
  if (backend.codeTries().mayTry(peer)) return {};
  return failure(absl::ResourceExhaustedError("too many wrong codes: wait a minute and try again"),
                 "TOO_MANY_TRIES");
}

storage::Device newDevice(Backend& backend, const std::string& householdId, const std::string& memberId,
                          const std::string& name) {
  storage::Device device;
  device.id = newId();
  device.householdId = householdId;
  device.memberId = memberId;
  device.displayName = name.empty() ? "a device" : name;
  device.createTime = device.lastSeenTime = backend.clock().now();
  return device;
}

Failure invite(Backend& backend, const Caller& caller, const v1::CreateInvitationRequest& asked,
               v1::CreateInvitationResponse& answer) {
  if (const Failure wrong = checkRequestId(asked.request_id()); wrong.failed()) return wrong;
  const std::int64_t seconds = asked.lifetime().seconds() == 0 ? kUsualSeconds : asked.lifetime().seconds();
  if (seconds < kLeastSeconds || seconds > kMostSeconds)
    return invalidField("lifetime", absl::StrCat(seconds, " s"), "must be between a minute and 14 days");
  storage::Code code;
  code.householdId = caller.householdId;
  code.memberId = asked.member_id();
  code.role = asked.role();
  code.expireTime = backend.clock().now() + std::chrono::seconds(seconds);
  if (code.memberId.empty() && !isRole(code.role))
    return invalidField("role", absl::StrCat(code.role), "must be reader, cook or host");
  const auto stored = backend.store().get(caller.householdId, {"household", caller.householdId});
  if (!stored.ok()) return fromStorage(stored.status());
  if (!code.memberId.empty() && memberOf(read<v1::Household>(*stored), code.memberId) == nullptr)
    return invalidField("memberId", code.memberId.substr(0, 64), "must be a member of the household");
  answer.mutable_expire_time()->set_seconds(code.expireTime->time_since_epoch().count());
  answer.set_certificate_fingerprint(backend.options().certificateFingerprint);
  if (asked.validate_only()) return {};
  const std::string text = newCode();
  if (const auto status = backend.store().addCode(hashOfCode(text), code); !status.ok())
    return fromStorage(status);
  answer.set_code(text);
  return {};
}

void join(Backend& backend, const v1::JoinHouseholdRequest& asked, const std::string& peer,
          v1::JoinHouseholdResponse* answer, const Finish& finish) {
  if (const Failure wrong = mayTryCode(backend, peer); wrong.failed()) return finish(wrong);
  if (const Failure wrong = checkRequestId(asked.request_id()); wrong.failed()) return finish(wrong);
  if (const Failure wrong = checkDeviceName(asked.device_name()); wrong.failed()) return finish(wrong);
  auto joining = std::make_shared<Joining>(Joining{backend, asked, peer, answer, finish, {}, newToken()});
  joining->redemption.codeHash = hashOfCode(asked.code());
  joining->redemption.device = newDevice(backend, "", "", asked.device_name());
  joining->redemption.tokenHash = hashOfToken(joining->token);
  joining->redemption.requestId = asked.request_id();
  joining->redemption.fingerprint = fingerprintOf(kJoin, asked);
  prepareAndRedeem(joining);
}

}  // namespace suppertide::service
