#include "server/service/backend.h"

#include "absl/strings/str_cat.h"
#include "server/service/access.h"
#include "server/service/reminder_board.h"

namespace suppertide::service {
namespace {

constexpr int kCodeFailuresPerMinute = 10;
constexpr int kTokenFailuresPerMinute = 120;
// More than a family with a dozen devices comes to.
constexpr int kMostCallsOfAHousehold = 64;
constexpr int kMostWatchesOfAHousehold = 1024;
constexpr int kMostStreamsOfAHousehold = 16;
constexpr int kMostLargeImportsOfAHousehold = 1;
// A device holds one of each for as long as it is on.
constexpr char kWatch[] = "SyncService/Watch";
constexpr char kReminders[] = "ReminderService/WatchReminders";

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
      calls_(kMostCallsOfAHousehold),
      watches_(kMostWatchesOfAHousehold),
      otherStreams_(kMostStreamsOfAHousehold),
      largeImports_(kMostLargeImportsOfAHousehold),
      store_(std::move(store)),
      people_(*store_, clock),
      codeTries_(clock, kCodeFailuresPerMinute),
      tokenTries_(clock, kTokenFailuresPerMinute),
      corrections_(*this),
      queue_(std::make_unique<storage::WriteQueue>(
          *store_,
          [this](const std::string& household, std::shared_ptr<const storage::Change> change) {
            hub_.committed(household, std::move(change));
          })),
      readers_(kReaders),
      calculators_(kCalculators),
      planning_(options_.planningThreads) {
  planning_.setEnded([this](const std::string& household, const std::string& event) {
    corrections_.planningEnded(household, event);
  });
  reminders_ = std::make_unique<ReminderBoard>(*this);
}

Backend::~Backend() {
  corrections_.stop();
}

Failure Backend::admit(const grpc::CallbackServerContext& context, const std::string& method,
                       const std::string& householdId, Caller& caller) {
  const v1::Role least = leastRole(method);
  if (least == v1::ROLE_UNSPECIFIED) return {};
  const std::string token = tokenOf(context);
  if (token.empty()) return unauthenticated();
  auto known = people_.find(token);
  if (known.status().code() == absl::StatusCode::kNotFound) {
    // A known device is never kept waiting for what others at its address guess.
    if (!tokenTries_.mayTry(peerOf(context)))
      return failure(absl::ResourceExhaustedError("too many unknown tokens: wait a minute"),
                     "TOO_MANY_TRIES");
    tokenTries_.failed(peerOf(context));
  }
  if (!known.ok()) return unknownDevice(known.status());
  if (!householdId.empty() && householdId != known->householdId)
    return failure(absl::PermissionDeniedError("this device belongs to another household"), "NOT_A_MEMBER");
  if (known->role == v1::ROLE_UNSPECIFIED)
    return failure(absl::PermissionDeniedError("this device's member is no longer in the household"),
                   "NOT_A_MEMBER");
  caller = *std::move(known);
  if (caller.role >= least) return {};
  const char* who = least == v1::ROLE_HOST ? "only a host may do this" : "only a cook or a host may do this";
  return failure(absl::PermissionDeniedError(who), "ROLE_TOO_SMALL");
}

Failure Backend::admitAgain(const Caller& caller) {
  const auto device = store_->findDevice(caller.tokenHash);
  return device.ok() ? Failure() : unknownDevice(device.status());
}

Failure Backend::enter(const Caller& caller, const std::string& method, bool stream,
                       std::shared_ptr<void>& place) {
  if (caller.householdId.empty()) return {};  // founding and joining have limits of their own
  InFlight& places = !stream ? calls_ : method == kWatch || method == kReminders ? watches_ : otherStreams_;
  place = places.enter(caller.householdId);
  return place != nullptr ? Failure() : tooManyCalls();
}

std::shared_ptr<void> Backend::enterLargeImport(const Caller& caller) {
  return largeImports_.enter(caller.householdId);
}

std::string turnOf(const grpc::CallbackServerContext& context) {
  const std::string token = tokenOf(context);
  return token.empty() ? peerOf(context) : token;
}

std::string peerOf(const grpc::CallbackServerContext& context) {
  const std::string peer = context.peer();
  return peer.substr(0, peer.rfind(':'));
}

Failure nobodyWaits() {
  return failure(absl::CancelledError("nobody waits for this answer"), "CANCELLED");
}

Failure tooManyCalls() {
  return failure(absl::ResourceExhaustedError(
                     "this household has too many calls going on: wait until some are answered"),
                 "TOO_MANY_CALLS");
}

}  // namespace suppertide::service
