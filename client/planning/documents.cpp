#include "client/planning/documents.h"

#include <QtCore/qcoreapplication.h>

#include <algorithm>
#include <set>

#include "client/link/request_id.h"

namespace suppertide {
namespace {

template <class Map>
auto* find(const Map& map, const std::string& id) {
  const auto found = map.find(id);
  return found == map.end() ? nullptr : &found->second;
}

v1::Bundle bundleOf(const link::Replica& household, const std::string& eventId) {
  v1::Bundle bundle;
  *bundle.mutable_household() = household.household;
  const v1::Event& event = household.events.at(eventId);
  *bundle.add_events() = event;
  if (const auto* kitchen = find(household.kitchens, event.kitchen_id())) *bundle.add_kitchens() = *kitchen;
  std::set<std::string> recipes;
  for (const v1::Dish& dish : event.dishes()) recipes.insert(dish.recipe_id());
  std::set<std::string> starters;
  for (const std::string& id : recipes) {
    const auto* recipe = find(household.recipes, id);
    if (recipe == nullptr) continue;
    *bundle.add_recipes() = *recipe;
    starters.insert(recipe->formula().levain().starter_id());
  }
  for (const std::string& id : starters)
    if (const auto* starter = find(household.starters, id)) *bundle.add_starters() = *starter;
  if (const auto* plan = find(household.plans, eventId)) *bundle.add_plans() = *plan;
  return bundle;
}

template <class Document>
bool changed(const v1::Plan& plan, const std::string& kind, const Document& document) {
  const auto etag = plan.input_etags().find(kind + "/" + document.id());
  if (etag == plan.input_etags().end()) return true;
  const v1::DocumentMeta& meta = document.meta();
  // What was written together with the plan is what it was made of.
  return etag->second != meta.etag() && meta.revision() > plan.input_revision() &&
         meta.revision() != plan.meta().revision();
}

}  // namespace

Household withPlan(const link::Replica& household, v1::Plan plan) {
  auto copy = std::make_shared<link::Replica>(household);
  const std::string id = plan.id();
  copy->plans[id] = std::move(plan);
  return copy;
}

Household withRemedy(const link::Replica& household, const v1::FindRemediesResponse& found) {
  auto copy = std::make_shared<link::Replica>(household);
  const std::string& id = found.event().id();
  copy->events[id] = found.event();
  copy->plans[id] = found.plan();
  if (found.has_kitchen()) copy->kitchens[found.kitchen().id()] = found.kitchen();
  for (const v1::Recipe& recipe : found.recipes()) copy->recipes[recipe.id()] = recipe;
  if (found.has_household()) copy->household = found.household();
  return copy;
}

Household takenBack(const link::Replica& now, const link::Replica& before, const link::Replica& after,
                    const std::string& eventId) {
  auto copy = std::make_shared<link::Replica>(now);
  const auto restore = [](auto& documents, const auto& old, const auto& changed) {
    for (const auto& [id, document] : old) {
      const auto* other = find(changed, id);
      if (other == nullptr || other->SerializeAsString() != document.SerializeAsString())
        documents[id] = document;
    }
  };
  restore(copy->kitchens, before.kitchens, after.kitchens);
  restore(copy->recipes, before.recipes, after.recipes);
  if (before.household.SerializeAsString() != after.household.SerializeAsString())
    copy->household = before.household;
  if (const auto* event = find(before.events, eventId)) copy->events[eventId] = *event;
  if (const auto* plan = find(before.plans, eventId)) copy->plans[eventId] = *plan;
  return copy;
}

absl::StatusOr<std::int64_t> store(const link::Replica& household, const std::string& eventId,
                                   link::Session& server) {
  v1::ImportBundleRequest request;
  request.set_household_id(household.household.id());
  request.set_request_id(link::newRequestId());
  *request.mutable_bundle() = bundleOf(household, eventId);
  const auto answer = server.importBundle(request);
  if (!answer.ok()) return answer.status();
  return answer->revision();
}

UndoStack::Documents differing(const link::Replica& before, const link::Replica& after,
                               const std::string& eventId) {
  UndoStack::Documents keys = {{"event", eventId}, {"plan", eventId}};
  const auto compare = [&](const char* kind, const auto& old, const auto& changed) {
    for (const auto& [id, document] : old) {
      const auto* other = find(changed, id);
      if (other == nullptr || other->SerializeAsString() != document.SerializeAsString())
        keys.emplace_back(kind, id);
    }
  };
  compare("kitchen", before.kitchens, after.kitchens);
  compare("recipe", before.recipes, after.recipes);
  if (before.household.SerializeAsString() != after.household.SerializeAsString())
    keys.emplace_back("household", before.household.id());
  return keys;
}

QString needsServer() {
  return QCoreApplication::translate(
      "suppertide::Planning",
      "Planning needs the household's server, which is away just now. Try again when it is back.");
}

std::vector<std::string> changedSincePlanned(const link::Replica& household, const std::string& eventId) {
  std::vector<std::string> names;
  const auto* plan = find(household.plans, eventId);
  const auto* event = find(household.events, eventId);
  // A plan that names no inputs came from elsewhere.
  if (plan == nullptr || event == nullptr || plan->input_etags().empty()) return names;
  if (changed(*plan, "event", *event)) names.push_back(event->display_name());
  const auto* kitchen = find(household.kitchens, event->kitchen_id());
  if (kitchen != nullptr && changed(*plan, "kitchen", *kitchen)) names.push_back(kitchen->display_name());
  std::set<std::string> told;
  for (const v1::Dish& dish : event->dishes()) {
    const auto* recipe = find(household.recipes, dish.recipe_id());
    if (recipe == nullptr || !told.insert(recipe->id()).second) continue;
    if (changed(*plan, "recipe", *recipe)) names.push_back(recipe->display_name());
  }
  return names;
}

bool sameInputs(const link::Replica& a, const link::Replica& b, const std::string& eventId) {
  const auto* first = find(a.events, eventId);
  const auto* second = find(b.events, eventId);
  if (first == nullptr || second == nullptr) return first == second;
  const auto same = [](const auto* x, const auto* y) {
    return x == y || (x != nullptr && y != nullptr && x->meta().etag() == y->meta().etag());
  };
  if (!same(first, second)) return false;
  if (!same(find(a.kitchens, first->kitchen_id()), find(b.kitchens, first->kitchen_id()))) return false;
  return std::all_of(first->dishes().begin(), first->dishes().end(), [&](const v1::Dish& dish) {
    return same(find(a.recipes, dish.recipe_id()), find(b.recipes, dish.recipe_id()));
  });
}

}  // namespace suppertide
