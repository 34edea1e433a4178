#include "client/link/assembler.h"

namespace suppertide::link {
namespace {

void erase(const v1::DeletedDocument& deleted, Replica& replica) {
  if (deleted.kind() == "kitchen") replica.kitchens.erase(deleted.id());
  if (deleted.kind() == "starter") replica.starters.erase(deleted.id());
  if (deleted.kind() == "recipe") replica.recipes.erase(deleted.id());
  if (deleted.kind() == "event") replica.events.erase(deleted.id());
  if (deleted.kind() == "plan") replica.plans.erase(deleted.id());
  if (deleted.kind() == "progress") replica.progresses.erase(deleted.id());
  if (deleted.kind() == "plan_proposal") replica.proposals.erase(deleted.id());
  if (deleted.kind() == "reminder_log") replica.reminderLogs.erase(deleted.id());
  if (deleted.kind() == "review") replica.reviews.erase(deleted.id());
  if (deleted.kind() == "calendar_address") replica.calendarAddresses.erase(deleted.id());
  if (deleted.kind() == "shopping") replica.shoppings.erase(deleted.id());
}

void apply(const v1::Change& change, Replica& replica) {
  switch (change.what_case()) {
    case v1::Change::kHousehold:
      replica.household = change.household();
      break;
    case v1::Change::kKitchen:
      replica.kitchens[change.kitchen().id()] = change.kitchen();
      break;
    case v1::Change::kStarter:
      replica.starters[change.starter().id()] = change.starter();
      break;
    case v1::Change::kRecipe:
      replica.recipes[change.recipe().id()] = change.recipe();
      break;
    case v1::Change::kEvent:
      replica.events[change.event().id()] = change.event();
      break;
    case v1::Change::kPlan:
      replica.plans[change.plan().id()] = change.plan();
      break;
    case v1::Change::kProgress:
      replica.progresses[change.progress().id()] = change.progress();
      break;
    case v1::Change::kPlanProposal:
      replica.proposals[change.plan_proposal().id()] = change.plan_proposal();
      break;
    case v1::Change::kReminderLog:
      replica.reminderLogs[change.reminder_log().id()] = change.reminder_log();
      break;
    case v1::Change::kReview:
      replica.reviews[change.review().id()] = change.review();
      break;
    case v1::Change::kCalendarAddress:
      replica.calendarAddresses[change.calendar_address().id()] = change.calendar_address();
      break;
    case v1::Change::kShopping:
      replica.shoppings[change.shopping().id()] = change.shopping();
      break;
    case v1::Change::kDeleted:
      erase(change.deleted(), replica);
      break;
    case v1::Change::WHAT_NOT_SET:
      break;  // a kind that a newer server knows
  }
}

}  // namespace

Assembler::Assembler() : replica_(std::make_shared<const Replica>()) {}

void Assembler::restart() {
  snapshot_.reset();
  pending_.reset();
}

Assembler::Outcome Assembler::take(const v1::WatchResponse& message) {
  switch (message.kind_case()) {
    case v1::WatchResponse::kChanges:
      return takeChanges(message.changes());
    case v1::WatchResponse::kBookmark:
      return takeBookmark(message.bookmark());
    case v1::WatchResponse::kReset:
      pending_.reset();
      snapshot_ = std::make_unique<Replica>();
      return {};
    case v1::WatchResponse::kSnapshot:
      if (snapshot_ == nullptr) snapshot_ = std::make_unique<Replica>();
      for (const v1::Change& document : message.snapshot().documents()) apply(document, *snapshot_);
      return {};
    case v1::WatchResponse::KIND_NOT_SET:
      return {};
  }
  return {};
}

Assembler::Outcome Assembler::takeChanges(const v1::ChangeSet& changes) {
  // During a snapshot only its bookmark gives it a revision; nothing else can be built on it.
  if (snapshot_ != nullptr || changes.revision() <= resumeAt_) return {};
  if (pending_ == nullptr) pending_ = std::make_unique<Replica>(*replica_);
  for (const v1::Change& change : changes.changes()) apply(change, *pending_);
  if (changes.partial()) return {};
  pending_->revision = changes.revision();
  resumeAt_ = changes.revision();
  replica_ = std::move(pending_);
  return {.published = Published{replica_, changes.member_id()}};
}

Assembler::Outcome Assembler::takeBookmark(const v1::Bookmark& bookmark) {
  Outcome outcome{.published = std::nullopt, .caughtUp = true};
  if (snapshot_ != nullptr) {
    snapshot_->revision = bookmark.revision();
    replica_ = std::move(snapshot_);
    outcome.published = Published{replica_, ""};
  }
  resumeAt_ = bookmark.revision();
  return outcome;
}

}  // namespace suppertide::link
