#include "absl/strings/str_cat.h"
#include "server/compose/remedies/catalogue.h"

namespace suppertide::compose {
namespace {

// A cooled bread is as good as new for a while after some minutes in a moderate
// oven. Common practice, no source.
constexpr int kLongestWait = 10 * 60;
constexpr int kRefreshMinutes = 8;
constexpr int kRefreshCelsius = 180;
constexpr int kRefreshLeastCelsius = 150;
constexpr int kRefreshMostCelsius = 220;
constexpr int kServedWithin = 30;
constexpr char kWaitStep[] = "keep-until-refreshed";
constexpr char kRefreshStep[] = "refresh";

// The pans that the bread was baked in.
const v1::Pan* panOfBake(const v1::Recipe& recipe) {
  const v1::Pan* pan = nullptr;
  for (const v1::Step& step : recipe.steps())
    if (step.has_oven()) pan = &step.oven().pan();
  return pan;
}

void bakeAhead(v1::Recipe& recipe) {
  const v1::Pan* baked = panOfBake(recipe);
  if (baked == nullptr || stepIn(recipe, kRefreshStep) != nullptr) return;
  const v1::Pan pan = *baked;
  v1::Step* wait = recipe.add_steps();
  wait->set_id(kWaitStep);
  wait->set_title("Keep the bread");
  wait->set_kind(v1::STEP_KIND_WAIT);
  *wait->mutable_duration()->mutable_likely() = durationOf(0);
  *wait->mutable_longest_duration() = durationOf(kLongestWait);
  v1::Step* refresh = recipe.add_steps();
  refresh->set_id(kRefreshStep);
  refresh->set_title("Warm the bread through");
  refresh->set_kind(v1::STEP_KIND_OVEN);
  v1::After* after = refresh->add_after();
  after->set_step_id(kWaitStep);
  *after->mutable_most_gap() = durationOf(5);
  v1::OvenNeed* oven = refresh->mutable_oven();
  oven->set_setpoint_celsius(kRefreshCelsius);
  oven->set_min_setpoint_celsius(kRefreshLeastCelsius);
  oven->set_max_setpoint_celsius(kRefreshMostCelsius);
  *oven->mutable_duration()->mutable_likely() = durationOf(kRefreshMinutes);
  oven->set_food_class(v1::FOOD_CLASS_BREAD);
  oven->set_start_core_celsius(20);
  oven->set_end_core_celsius(60);
  *oven->mutable_pan() = pan;
  v1::Holding* holding = recipe.mutable_holding();
  holding->set_kind(v1::HOLDING_KIND_WARM);
  *holding->mutable_longest() = durationOf(kServedWithin);
  holding->clear_best_from();
  holding->clear_best_until();
}

}  // namespace

std::vector<Change> bakeEarlier(const Situation& situation) {
  std::vector<Change> changes;
  for (const int dish : situation.dishes()) {
    const DishInfo& info = situation.composition.dishes[static_cast<std::size_t>(dish)];
    if (!info.recipe->has_formula() || panOfBake(*info.recipe) == nullptr) continue;
    const std::string dishId = info.dish->id();
    Change change;
    change.what.set_kind(v1::REMEDY_KIND_BAKE_EARLIER);
    change.what.set_dish_id(dishId);
    change.what.set_step_id(absl::StrCat(dishId, "/", kRefreshStep));
    *change.what.mutable_duration() = durationOf(kLongestWait);
    change.what.set_size(change_size::kBakeEarlier);
    change.group = absl::StrCat("ahead ", dishId);
    change.apply = [dishId](Documents& documents) {
      if (v1::Recipe* recipe = ownRecipe(documents, dishId)) bakeAhead(*recipe);
    };
    changes.push_back(std::move(change));
  }
  return changes;
}

}  // namespace suppertide::compose
