#include <algorithm>
#include <set>

#include "absl/strings/str_cat.h"
#include "server/compose/remedies/catalogue.h"

namespace suppertide::compose {
namespace {

constexpr double kMoreRatios[] = {1, 2, 3, 5, 8, 10, 15, 20};

bool lacksFridge(const v1::Step& step) {
  const auto& kinds = step.place_kinds();
  return !kinds.empty() && std::find(kinds.begin(), kinds.end(), v1::PLACE_KIND_FRIDGE) == kinds.end();
}

bool canBeRetarded(const v1::Step& step) {
  const v1::FermentStage stage = step.ferment().stage();
  return (stage == v1::FERMENT_STAGE_BULK || stage == v1::FERMENT_STAGE_PROOF) && lacksFridge(step);
}

}  // namespace

std::vector<Change> retardOvernight(const Situation& situation) {
  std::vector<Change> changes;
  for (const int step : situation.steps()) {
    const StepInfo& info = situation.composition.steps[static_cast<std::size_t>(step)];
    if (!canBeRetarded(*info.step)) continue;
    const std::string dishId = situation.composition.dishes[static_cast<std::size_t>(info.dish)].dish->id();
    const std::string stepId = info.step->id();
    Change change;
    change.what.set_kind(v1::REMEDY_KIND_RETARD);
    change.what.set_dish_id(dishId);
    change.what.set_step_id(absl::StrCat(dishId, "/", stepId));
    change.what.set_size(change_size::kRetard);
    change.group = absl::StrCat("retard ", dishId);
    change.apply = [dishId, stepId](Documents& documents) {
      v1::Recipe* recipe = ownRecipe(documents, dishId);
      v1::Step* own = recipe != nullptr ? stepIn(*recipe, stepId) : nullptr;
      if (own != nullptr && lacksFridge(*own)) own->add_place_kinds(v1::PLACE_KIND_FRIDGE);
    };
    changes.push_back(std::move(change));
  }
  return changes;
}

std::vector<Change> otherLevainRatio(const Situation& situation) {
  std::vector<Change> changes;
  for (const int dish : situation.dishes()) {
    const DishInfo& info = situation.composition.dishes[static_cast<std::size_t>(dish)];
    if (!info.recipe->has_formula() || !info.recipe->formula().has_levain()) continue;
    const auto& now = info.recipe->formula().levain().flour_per_starter();
    const std::set<double> allowed =
        now.empty() ? std::set<double>{1, 2, 5, 10} : std::set<double>(now.begin(), now.end());
    Change change;
    std::set<double> wider = allowed;
    for (const double ratio : kMoreRatios) {
      if (allowed.contains(ratio)) continue;
      change.what.add_flour_per_starter(ratio);
      wider.insert(ratio);
    }
    if (change.what.flour_per_starter().empty()) continue;
    const std::string dishId = info.dish->id();
    change.what.set_kind(v1::REMEDY_KIND_LEVAIN_RATIO);
    change.what.set_dish_id(dishId);
    change.what.set_size(change_size::kLevainRatio);
    change.group = absl::StrCat("ratio ", dishId);
    change.apply = [dishId, wider](Documents& documents) {
      v1::Recipe* recipe = ownRecipe(documents, dishId);
      if (recipe == nullptr) return;
      auto* ratios = recipe->mutable_formula()->mutable_levain()->mutable_flour_per_starter();
      ratios->Clear();
      for (const double ratio : wider) ratios->Add(ratio);
    };
    changes.push_back(std::move(change));
  }
  return changes;
}

}  // namespace suppertide::compose
