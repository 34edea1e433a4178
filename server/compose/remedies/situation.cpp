#include "server/compose/remedies/situation.h"

#include <algorithm>

#include "absl/strings/str_cat.h"

namespace suppertide::compose {
namespace {

constexpr std::size_t kLongestId = 64;

template <typename List>
auto* withId(List& list, const std::string& id) {
  const auto found = std::find_if(list.begin(), list.end(), [&](const auto& one) { return one.id() == id; });
  return found == list.end() ? nullptr : &*found;
}

}  // namespace

bool Situation::isOver(planning::WishKind kind, int index) const {
  const planning::Wish wish{kind, index};
  return std::any_of(clashes.begin(), clashes.end(), [&](const planning::WishClash& clash) {
    return std::find(clash.wishes.begin(), clash.wishes.end(), wish) != clash.wishes.end();
  });
}

std::set<int> Situation::dishes() const {
  std::set<int> all;
  for (const planning::WishClash& clash : clashes)
    for (const planning::Wish& wish : clash.wishes)
      if (wish.kind == planning::WishKind::kServed) all.insert(wish.index);
  return all;
}

std::vector<int> Situation::steps() const {
  std::vector<int> all;
  for (const int dish : dishes()) {
    const auto& steps = composition.dishes[static_cast<std::size_t>(dish)].steps;
    all.insert(all.end(), steps.begin(), steps.end());
  }
  return all;
}

v1::Recipe* ownRecipe(Documents& documents, const std::string& dishId) {
  v1::Dish* dish = withId(*documents.event.mutable_dishes(), dishId);
  if (dish == nullptr) return nullptr;
  const v1::Recipe* from = withId(documents.recipes, dish->recipe_id());
  if (from == nullptr) return nullptr;
  const std::string ending = absl::StrCat("-", documents.event.id());
  const std::string& id = from->id();
  if (id.size() > ending.size() && id.compare(id.size() - ending.size(), ending.size(), ending) == 0)
    return withId(documents.recipes, id);
  v1::Recipe copy = *from;
  copy.set_id(absl::StrCat(id.substr(0, kLongestId - std::min(kLongestId, ending.size())), ending));
  copy.clear_meta();
  dish->set_recipe_id(copy.id());
  if (v1::Recipe* known = withId(documents.recipes, copy.id())) return known;
  documents.recipes.push_back(std::move(copy));
  return &documents.recipes.back();
}

v1::Step* stepIn(v1::Recipe& recipe, const std::string& stepId) {
  return withId(*recipe.mutable_steps(), stepId);
}

}  // namespace suppertide::compose
