#include "client/terminal/live_replica.h"

#include <utility>

#include "absl/strings/str_cat.h"

namespace suppertide::terminal {

link::LinkOptions linkOptionsOf(const link::KnownServer& server) {
  link::LinkOptions options;
  options.target = server.target;
  options.householdId = server.householdId;
  options.deviceToken = server.deviceToken;
  options.certificatePem = server.certificatePem;
  options.fingerprint = server.fingerprint;
  return options;
}

LiveReplica::LiveReplica(const link::KnownServer& server)
    : link_(std::make_unique<link::Link>(linkOptionsOf(server), *this)) {
  link_->start();
}

LiveReplica::~LiveReplica() {
  link_.reset();
}

void LiveReplica::linkStateChanged(link::LinkState state, const std::string& why) {
  const std::lock_guard lock(mutex_);
  state_ = state;
  why_ = why;
  changed_.notify_all();
}

void LiveReplica::replicaChanged(std::shared_ptr<const link::Replica> replica,
                                 const std::string& /*memberId*/) {
  const std::lock_guard lock(mutex_);
  replica_ = std::move(replica);
  changed_.notify_all();
}

absl::StatusOr<std::shared_ptr<const link::Replica>> LiveReplica::waitFor(const Wanted& wanted,
                                                                          std::chrono::milliseconds most) {
  std::unique_lock lock(mutex_);
  bool found = false;
  changed_.wait_for(lock, most, [&] {
    found = replica_ != nullptr && wanted(*replica_);
    return found || state_ == link::LinkState::kRefused;
  });
  if (found) return replica_;
  if (state_ == link::LinkState::kRefused) return absl::PermissionDeniedError(why_);
  return nullptr;
}

bool LiveReplica::isLive() const {
  const std::lock_guard lock(mutex_);
  return state_ == link::LinkState::kLive;
}

absl::StatusOr<std::string> plannedEvent(const link::Replica& replica, const std::string& eventId) {
  if (!eventId.empty()) {
    if (replica.events.count(eventId) == 0)
      return absl::InvalidArgumentError(
          absl::StrCat("there is no event ", eventId, ": see suppertide events"));
    if (replica.plans.count(eventId) == 0)
      return absl::InvalidArgumentError(
          absl::StrCat("the event ", eventId, " has no plan yet: suppertide plan --event ", eventId));
    return eventId;
  }
  if (replica.plans.size() == 1) return replica.plans.begin()->first;
  if (replica.plans.empty())
    return absl::InvalidArgumentError("no event has a plan yet: see suppertide plan --help");
  std::string ids;
  for (const auto& [id, plan] : replica.plans) absl::StrAppend(&ids, ids.empty() ? "" : ", ", id);
  return absl::InvalidArgumentError(absl::StrCat("say which event with --event; planned are: ", ids));
}

PlanView viewOf(const link::Replica& replica, const std::string& eventId, const Environment& environment) {
  v1::Bundle bundle;
  *bundle.mutable_household() = replica.household;
  for (const auto& [id, kitchen] : replica.kitchens) *bundle.add_kitchens() = kitchen;
  for (const auto& [id, recipe] : replica.recipes) *bundle.add_recipes() = recipe;
  return PlanView(bundle, replica.events.at(eventId), replica.plans.at(eventId), environment.width,
                  environment.colour);
}

}  // namespace suppertide::terminal
