#include <algorithm>
#include <tuple>

#include "absl/strings/str_cat.h"
#include "server/compose/validate/documents.h"
#include "server/compose/validate/shopping.h"

namespace suppertide::compose {
namespace {

// As many as a household may have.
constexpr int kMostKitchens = 10;
constexpr int kMostStarters = 20;
constexpr int kMostRecipes = 1000;
constexpr int kMostEvents = 200;

// Checks every document of one kind, and that no id is there twice.
template <typename List, typename Check>
bool checkAll(const Checker& here, std::string_view field, const List& list, int most, Check check) {
  if (!here.at(field).count(list.size(), 0, most, field)) return false;
  Once ids;
  for (int i = 0; i < list.size(); ++i) {
    check(here.at(field, i), list[i]);
    ids.add(here.at(field, i).at("id"), list[i].id());
  }
  return true;
}

void checkStarters(const Checker& here, const v1::Bundle& bundle) {
  for (int i = 0; i < bundle.recipes_size(); ++i) {
    if (!bundle.recipes(i).formula().has_levain()) continue;
    const std::string& id = bundle.recipes(i).formula().levain().starter_id();
    const bool known = std::any_of(bundle.starters().begin(), bundle.starters().end(),
                                   [&](const v1::Starter& s) { return s.id() == id; });
    if (!known && !id.empty())
      here.at("recipes", i)
          .at("formula")
          .at("levain")
          .at("starterId")
          .wrong(id, "must be one of the starters given along");
  }
}

// Plans, progress and shopping carry the id of their event; what is in the first two is checked by planning.
template <typename List>
void checkEventIds(const Checker& here, std::string_view field, const List& list, const v1::Bundle& bundle) {
  checkAll(here, field, list, kMostEvents, [&](const Checker& place, const auto& document) {
    const bool known = std::any_of(bundle.events().begin(), bundle.events().end(),
                                   [&](const v1::Event& e) { return e.id() == document.id(); });
    if (!known) place.at("id").wrong(document.id(), "must be the id of one of the events given along");
  });
}

// One mistake is told once, though two events may run into it.
Violations withoutRepeats(const Violations& violations) {
  Violations kept;
  std::set<std::tuple<std::string, std::string, std::string>> seen;
  for (const v1::FieldViolation& violation : violations)
    if (seen.emplace(violation.field_path(), violation.value(), violation.description()).second)
      kept.push_back(violation);
  return kept;
}

}  // namespace

Violations validate(const v1::Bundle& bundle, bool toPlan) {
  Violations violations;
  const Checker here(violations);
  if (bundle.has_household())
    checkHousehold(here.at("household"), bundle.household());
  else
    here.at("household").wrong("", "there must be a household");
  if (toPlan && bundle.events_size() != 1)
    here.at("events").wrong(absl::StrCat(bundle.events_size()), "there must be exactly one event to plan");
  bool sized = checkAll(here, "kitchens", bundle.kitchens(), kMostKitchens, checkKitchen);
  sized = checkAll(here, "starters", bundle.starters(), kMostStarters, checkStarter) && sized;
  sized = checkAll(here, "recipes", bundle.recipes(), kMostRecipes, checkRecipe) && sized;
  sized = checkAll(here, "events", bundle.events(), kMostEvents, checkEvent) && sized;
  if (!sized) return violations;
  checkStarters(here, bundle);
  checkEventReferences(here, bundle);
  checkEventIds(here, "plans", bundle.plans(), bundle);
  checkEventIds(here, "progresses", bundle.progresses(), bundle);
  checkEventIds(here, "reviews", bundle.reviews(), bundle);
  checkEventIds(here, "shoppings", bundle.shoppings(), bundle);
  for (int i = 0; i < bundle.shoppings_size(); ++i)
    checkShopping(here.at("shoppings", i), bundle.shoppings(i));
  return withoutRepeats(violations);
}

}  // namespace suppertide::compose
