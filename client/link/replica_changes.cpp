#include "client/link/replica_changes.h"

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

template <class Documents, class Field>
void addAll(const Documents& documents, Field field, std::vector<v1::Change>& changes) {
  for (const auto& [id, document] : documents) *(changes.emplace_back().*field)() = document;
}

}  // namespace

void applyChange(const v1::Change& change, Replica& replica) {
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

std::vector<v1::Change> changesOf(const Replica& replica) {
  std::vector<v1::Change> changes;
  if (!replica.household.id().empty()) *changes.emplace_back().mutable_household() = replica.household;
  addAll(replica.kitchens, &v1::Change::mutable_kitchen, changes);
  addAll(replica.starters, &v1::Change::mutable_starter, changes);
  addAll(replica.recipes, &v1::Change::mutable_recipe, changes);
  addAll(replica.events, &v1::Change::mutable_event, changes);
  addAll(replica.plans, &v1::Change::mutable_plan, changes);
  addAll(replica.progresses, &v1::Change::mutable_progress, changes);
  addAll(replica.proposals, &v1::Change::mutable_plan_proposal, changes);
  addAll(replica.reminderLogs, &v1::Change::mutable_reminder_log, changes);
  addAll(replica.reviews, &v1::Change::mutable_review, changes);
  addAll(replica.calendarAddresses, &v1::Change::mutable_calendar_address, changes);
  addAll(replica.shoppings, &v1::Change::mutable_shopping, changes);
  return changes;
}

}  // namespace suppertide::link
