#include <algorithm>

#include "absl/strings/str_cat.h"
#include "server/compose/remedies/catalogue.h"

namespace suppertide::compose {

std::vector<Change> dropDish(const Situation& situation) {
  std::vector<Change> changes;
  if (situation.documents.event.dishes_size() < 2) return changes;
  for (const int dish : situation.dishes()) {
    const std::string id = situation.composition.dishes[static_cast<std::size_t>(dish)].dish->id();
    Change change;
    change.what.set_kind(v1::REMEDY_KIND_DROP_DISH);
    change.what.set_dish_id(id);
    change.what.set_size(change_size::kDropDish);
    change.group = absl::StrCat("drop ", id);
    change.apply = [id](Documents& documents) {
      auto* dishes = documents.event.mutable_dishes();
      dishes->erase(
          std::remove_if(dishes->begin(), dishes->end(), [&](const v1::Dish& own) { return own.id() == id; }),
          dishes->end());
      auto* pins = documents.event.mutable_pins();
      pins->erase(std::remove_if(pins->begin(), pins->end(),
                                 [&](const v1::StepPin& pin) { return pin.dish_id() == id; }),
                  pins->end());
    };
    changes.push_back(std::move(change));
  }
  return changes;
}

}  // namespace suppertide::compose
