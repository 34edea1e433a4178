#include <algorithm>

#include "absl/strings/str_cat.h"
#include "server/compose/remedies/catalogue.h"

namespace suppertide::compose {
namespace {

constexpr int kMinutesMore[] = {15, 30, 60, 120};

}  // namespace

std::vector<Change> keepLonger(const Situation& situation) {
  std::vector<Change> changes;
  for (const int dish : situation.dishes()) {
    if (!situation.isOver(planning::WishKind::kFresh, dish)) continue;
    const DishInfo& info = situation.composition.dishes[static_cast<std::size_t>(dish)];
    const int now = situation.composition.problem.dishes[static_cast<std::size_t>(dish)].holdLimit;
    const std::string dishId = info.dish->id();
    for (const int more : kMinutesMore) {
      Change change;
      change.what.set_kind(v1::REMEDY_KIND_BAKE_EARLIER);
      change.what.set_dish_id(dishId);
      *change.what.mutable_duration() = durationOf(now + more);
      change.what.set_size(change_size::kKeepLonger + more / 15);
      change.group = absl::StrCat("keep ", dishId);
      change.biggerAllowsMore = true;
      change.apply = [dishId, longest = now + more](Documents& documents) {
        if (v1::Recipe* recipe = ownRecipe(documents, dishId))
          *recipe->mutable_holding()->mutable_longest() = durationOf(longest);
      };
      changes.push_back(std::move(change));
    }
  }
  return changes;
}

}  // namespace suppertide::compose
