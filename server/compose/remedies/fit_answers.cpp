#include "server/compose/remedies/fit_answers.h"

#include <utility>

#include "absl/strings/str_cat.h"

namespace suppertide::compose {

std::unique_ptr<Trial> FitAnswers::compose(Documents documents) {
  std::lock_guard lock(composing_);
  return Trial::of(std::move(documents), tables_, running_);
}

FitAnswer FitAnswers::of(const Documents& documents, std::int64_t conflicts,
                         const std::function<bool()>& stop) {
  Question* question = nullptr;
  {
    std::lock_guard lock(mutex_);
    question = &questions_[planningKey(documents)];
  }
  std::lock_guard asking(question->asking);
  if (question->answer) return *question->answer;
  FitAnswer answer;
  if (const auto trial = compose(documents)) {
    Trial::Fit fit = trial->fit(conflicts, stop);
    if (!fit.fits && stop && stop()) return answer;
    answer = {fit.fits, std::move(fit.schedule), dishIdsOf(trial->composition(), fit.clashing)};
  }
  question->answer = answer;
  return answer;
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
