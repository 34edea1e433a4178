#include "server/service/backend.h"

#include <algorithm>

#include "absl/strings/str_cat.h"
#include "server/service/access.h"

namespace suppertide::service {
namespace {

constexpr int kCodeFailuresPerMinute = 10;

std::string tokenOf(const grpc::CallbackServerContext& context) {
  constexpr std::string_view kScheme = "Bearer ";
  const auto found = context.client_metadata().find("authorization");
  if (found == context.client_metadata().end()) return "";
  const std::string value(found->second.data(), found->second.size());
  return value.rfind(kScheme, 0) == 0 ? value.substr(kScheme.size()) : "";
}

Failure unauthenticated() {
  return failure(absl::UnauthenticatedError("this device is not known here: join the household first"),
                 "NO_VALID_TOKEN");
}

Failure unknownDevice(const absl::Status& status) {
  return status.code() == absl::StatusCode::kNotFound ? unauthenticated() : fromStorage(status);
}

}  // namespace

Backend::Backend(std::unique_ptr<storage::Store> store, const Clock& clock, Options options)
    : clock_(clock),
      options_(std::move(options)),
      store_(std::move(store)),
      codeTries_(clock, kCodeFailuresPerMinute),
      queue_(std::make_unique<storage::WriteQueue>(
          *store_,
          [this](const std::string& household, std::shared_ptr<const storage::Change> change) {
            hub_.committed(household, std::move(change));
          })),
      readers_(kReaders),
      auditors_(1),
      planning_(options_.planningThreads) {}

Failure Backend::admit(const grpc::CallbackServerContext& context, const std::string& method,
                       const std::string& householdId, Caller& caller) {
  const v1::Role least = leastRole(method);
  if (least == v1::ROLE_UNSPECIFIED) return {};
  const std::string token = tokenOf(context);
  if (token.empty()) return unauthenticated();
  const std::string hash = hashOfToken(token);
  const auto device = store_->findDevice(hash);
  if (!device.ok()) return unknownDevice(device.status());
  if (!householdId.empty() && householdId != device->householdId)
    return failure(absl::PermissionDeniedError("this device belongs to another household"), "NOT_A_MEMBER");
  const auto document = store_->get(device->householdId, {"household", device->householdId});
  if (!document.ok()) return fromStorage(document.status());
  const auto household = read<v1::Household>(*document);
  const auto member = std::find_if(household.members().begin(), household.members().end(),
                                   [&](const v1::Member& m) { return m.id() == device->memberId; });
  if (member == household.members().end())
    return failure(absl::PermissionDeniedError("this device's member is no longer in the household"),
                   "NOT_A_MEMBER");
  caller = {device->householdId, device->memberId, device->id, hash, member->role()};
  if (member->role() >= least) return {};
  const char* who = least == v1::ROLE_HOST ? "only a host may do this" : "only a cook or a host may do this";
  return failure(absl::PermissionDeniedError(who), "ROLE_TOO_SMALL");
}

Failure Backend::admitAgain(const Caller& caller) {
  const auto device = store_->findDevice(caller.tokenHash);
  return device.ok() ? Failure() : unknownDevice(device.status());
}

}  // namespace suppertide::service
