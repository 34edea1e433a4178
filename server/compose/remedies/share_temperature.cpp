#include "absl/strings/str_cat.h"
#include "server/compose/remedies/catalogue.h"

namespace suppertide::compose {
namespace {

// A recipe's own range may be narrower than what its food class tolerates.
bool isNarrowed(const v1::OvenNeed& need) {
  return need.later_phases().empty() && (need.has_min_setpoint_celsius() || need.has_max_setpoint_celsius());
}

}  // namespace

std::vector<Change> shareTemperature(const Situation& situation) {
  std::vector<Change> changes;
  for (const int step : situation.steps()) {
    const StepInfo& info = situation.composition.steps[static_cast<std::size_t>(step)];
    if (!info.step->has_oven() || !isNarrowed(info.step->oven())) continue;
    Change change;
    const std::string dishId = situation.composition.dishes[static_cast<std::size_t>(info.dish)].dish->id();
    const std::string stepId = info.step->id();
    change.what.set_kind(v1::REMEDY_KIND_SHARE_TEMPERATURE);
    change.what.set_dish_id(dishId);
    change.what.set_step_id(absl::StrCat(dishId, "/", stepId));
    change.what.set_size(change_size::kTemperature);
    change.group = absl::StrCat("temperature ", change.what.step_id());
    change.apply = [dishId, stepId](Documents& documents) {
      v1::Recipe* recipe = ownRecipe(documents, dishId);
      v1::Step* own = recipe != nullptr ? stepIn(*recipe, stepId) : nullptr;
      if (own == nullptr) return;
      own->mutable_oven()->clear_min_setpoint_celsius();
      own->mutable_oven()->clear_max_setpoint_celsius();
    };
    changes.push_back(std::move(change));
  }
  return changes;
}

}  // namespace suppertide::compose
