#include "server/compose/remedies/known_clashes.h"

#include <algorithm>

#include "absl/strings/str_cat.h"
#include "server/compose/remedies/catalogue.h"

namespace suppertide::compose {
namespace {

constexpr std::size_t kFewDishes = 5;

bool isPartOf(const DishIds& few, const DishIds& many) {
  return few.size() < many.size() && std::includes(many.begin(), many.end(), few.begin(), few.end());
}

// What might help the dishes, whichever of their wishes matter.
std::vector<Change> changesFor(const Documents& asItIs, const DishIds& dishes, BreadTables& tables) {
  const auto trial = Trial::of(onlyDishes(asItIs, dishes), tables);
  if (trial == nullptr) return {};
  const planning::Problem& problem = trial->composition().problem;
  std::vector<int> all;
  for (std::size_t d = 0; d < problem.dishes.size(); ++d) all.push_back(static_cast<int>(d));
  return proposals(
      {trial->documents(), trial->composition(), {{planning::wishesOf(problem, all), {}, false}}});
}

}  // namespace

void KnownClashes::add(const DishIds& dishes, const Documents& documents) {
  answers_[planningKey(onlyDishes(documents, dishes))] = false;
  const auto [known, isNew] = clashes_.try_emplace({dishes.size(), dishes});
  if (isNew) known->second = {dishes, changesFor(asItIs_, dishes, tables_)};
}

const KnownClash* KnownClashes::openIn(const Documents& documents) {
  for (const auto& [key, clash] : clashes_)
    if (isOpen(documents, clash.dishes)) return &clash;
  return nullptr;
}

bool KnownClashes::isOpen(const Documents& documents, const DishIds& dishes) {
  if (dishes.size() <= kFewDishes) return !fit(documents, dishes);
  const auto known = answers_.find(planningKey(onlyDishes(documents, dishes)));
  return known != answers_.end() && !known->second;
}

bool KnownClashes::fit(const Documents& documents, const DishIds& dishes) {
  Documents few = onlyDishes(documents, dishes);
  const std::string key = planningKey(few);
  if (const auto known = answers_.find(key); known != answers_.end()) return known->second;
  return answers_[key] = ask(documents, dishes, std::move(few));
}

bool KnownClashes::ask(const Documents& documents, const DishIds& dishes, Documents few) {
  for (const auto& [key, clash] : clashes_)
    if (isPartOf(clash.dishes, dishes) && isOpen(documents, clash.dishes)) return false;
  const auto trial = Trial::of(std::move(few), tables_);
  if (trial == nullptr) return false;
  std::vector<planning::Schedule>& plans = plans_[dishes];
  if (std::any_of(plans.begin(), plans.end(), [&](const auto& plan) { return trial->serves(plan); }))
    return true;
  Trial::Fit answer = trial->fit(conflicts_, stop_);
  if (answer.fits) plans.push_back(std::move(answer.schedule));
  if (!answer.fits && !answer.clashing.empty())
    add(dishIdsOf(trial->composition(), answer.clashing), documents);
  return answer.fits;
}

std::string planningKey(const Documents& documents) {
  DishIds used;
  for (const v1::Dish& dish : documents.event.dishes()) used.insert(dish.recipe_id());
  std::string key;
  const auto add = [&](const auto& document) {
    const std::string bytes = document.SerializeAsString();
    absl::StrAppend(&key, bytes.size(), ":", bytes);
  };
  add(documents.event);
  add(documents.kitchen);
  add(documents.household);
  for (const v1::Recipe& recipe : documents.recipes)
    if (used.contains(recipe.id())) add(recipe);
  return key;  // no remedy changes a starter
}

DishIds dishIdsOf(const Composition& composition, const std::vector<int>& dishes) {
  DishIds ids;
  for (const int dish : dishes) ids.insert(composition.dishes[static_cast<std::size_t>(dish)].dish->id());
  return ids;
}

}  // namespace suppertide::compose
