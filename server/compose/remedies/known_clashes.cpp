#include "server/compose/remedies/known_clashes.h"

#include <algorithm>

#include "server/compose/remedies/catalogue.h"

namespace suppertide::compose {
namespace {

constexpr std::size_t kFewDishes = 5;

bool isPartOf(const DishIds& few, const DishIds& many) {
  return few.size() < many.size() && std::includes(many.begin(), many.end(), few.begin(), few.end());
}

// What might help the dishes, whichever of their wishes matter.
std::vector<Change> changesFor(const Looking& looking, const DishIds& dishes) {
  const auto trial = looking.answers.compose(onlyDishes(looking.asItIs, dishes));
  if (trial == nullptr) return {};
  const planning::Problem& problem = trial->composition().problem;
  std::vector<int> all;
  for (std::size_t d = 0; d < problem.dishes.size(); ++d) all.push_back(static_cast<int>(d));
  return proposals({trial->documents(),
                    trial->composition(),
                    {{planning::wishesOf(problem, all, trial->begun()), {}, false}},
                    trial->begun()});
}

}  // namespace

void KnownClashes::add(const DishIds& dishes, const Documents& documents) {
  known_[planningKey(onlyDishes(documents, dishes))] = false;
  const auto [known, isNew] = clashes_.try_emplace({dishes.size(), dishes});
  if (isNew) known->second = {dishes, changesFor(*looking_, dishes)};
}

const KnownClash* KnownClashes::openIn(const Documents& documents) {
  for (const auto& [key, clash] : clashes_)
    if (isOpen(documents, clash.dishes)) return &clash;
  return nullptr;
}

bool KnownClashes::isOpen(const Documents& documents, const DishIds& dishes) {
  if (dishes.size() <= kFewDishes) return !fit(documents, dishes);
  const auto known = known_.find(planningKey(onlyDishes(documents, dishes)));
  return known != known_.end() && !known->second;
}

bool KnownClashes::fit(const Documents& documents, const DishIds& dishes) {
  const Documents few = onlyDishes(documents, dishes);
  const std::string key = planningKey(few);
  if (const auto known = known_.find(key); known != known_.end()) return known->second;
  const bool fits = ask(documents, dishes, few);
  known_[key] = fits;
  return fits;
}

bool KnownClashes::ask(const Documents& documents, const DishIds& dishes, const Documents& few) {
  for (const auto& [key, clash] : clashes_)
    if (isPartOf(clash.dishes, dishes) && isOpen(documents, clash.dishes)) return false;
  const FitAnswer answer = looking_->answers.of(few, looking_->conflicts, looking_->stop);
  if (!answer.fits && !answer.clashing.empty()) add(answer.clashing, documents);
  return answer.fits;
}

}  // namespace suppertide::compose
