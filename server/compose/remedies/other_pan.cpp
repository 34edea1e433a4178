#include <algorithm>
#include <cmath>
#include <functional>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "absl/strings/str_cat.h"
#include "server/base/index.h"
#include "server/compose/loads.h"
#include "server/compose/remedies/catalogue.h"
#include "server/kitchen/scaling.h"

namespace suppertide::compose {
namespace {

// How many times as deep a food may stand in another pan; 0: the pan follows the food, not the food the pan.
// Common practice, no source: vegetables heaped up steam, and a high sponge stays raw inside.
double mostDeeper(v1::FoodClass food) {
  switch (food) {
    case v1::FOOD_CLASS_CASSEROLE:
    case v1::FOOD_CLASS_CUSTARD:
      return 1.5;
    case v1::FOOD_CLASS_VEGETABLE:
    case v1::FOOD_CLASS_SPONGE:
      return 1.25;
    default:
      return 0;
  }
}

struct Bake {
  int step = -1;
  int dish = -1;
  kitchen::Pan pan;  // of its first load in the oven asked about
};

// The bakes of these dishes that may stand in the oven, one for all loads of a bake.
std::vector<Bake> bakesIn(const Composition& composition, int oven, const std::vector<int>& dishes) {
  std::vector<Bake> bakes;
  for (const int dish : dishes)
    for (const int step : composition.dishes[at(dish)].steps) {
      if (loadNumber(composition.steps[at(step)].step->id()) > 1) continue;
      for (const planning::Mode& mode : composition.problem.steps[at(step)].modes) {
        if (!mode.oven || mode.oven->oven != oven) continue;
        bakes.push_back({step, dish, panOf(mode.oven->load)});
        break;
      }
    }
  return bakes;
}

// Food that is baked twice keeps its pan, and so does a shaped dough.
bool mayMove(const Composition& composition, const Bake& bake) {
  const DishInfo& dish = composition.dishes[at(bake.dish)];
  const v1::OvenNeed& need = composition.steps[at(bake.step)].step->oven();
  const auto bakes = std::count_if(dish.steps.begin(), dish.steps.end(), [&](int step) {
    const v1::Step& own = *composition.steps[at(step)].step;
    return own.has_oven() && loadNumber(own.id()) == 1;
  });
  return bakes == 1 && !dish.bread && !dish.recipe->has_formula() && mostDeeper(need.food_class()) > 0 &&
         need.has_pan() && need.later_phases().empty();
}

// Where the bake does not stand with all of `others`: the largest pan with which it does.
std::optional<kitchen::Pan> panBeside(const Composition& composition, int oven, const Bake& bake,
                                      const std::vector<Bake>& others) {
  const kitchen::Oven& in = composition.ovens[at(oven)];
  std::vector<kitchen::Pan> pans;
  for (const Bake& other : others) pans.push_back(other.pan);
  if (!kitchen::fitsRacks(in, pans)) return std::nullopt;
  pans.push_back(bake.pan);
  if (kitchen::fitsRacks(in, pans)) return std::nullopt;
  const v1::OvenNeed& need = composition.steps[at(bake.step)].step->oven();
  return kitchen::deeperPanThatWould(in, pans, static_cast<int>(others.size()),
                                     mostDeeper(need.food_class()));
}

// For one other bake alone, and for all others together; by width, each once, the largest first.
std::map<int, kitchen::Pan, std::greater<>> pansFor(const Composition& composition, int oven,
                                                    const Bake& bake, const std::vector<Bake>& bakes) {
  std::vector<Bake> others;
  for (const Bake& other : bakes)
    if (other.dish != bake.dish) others.push_back(other);
  std::map<int, kitchen::Pan, std::greater<>> pans;
  for (const Bake& other : others)
    if (const auto pan = panBeside(composition, oven, bake, {other})) pans.emplace(pan->widthMm, *pan);
  if (others.size() > 1)
    if (const auto pan = panBeside(composition, oven, bake, others)) pans.emplace(pan->widthMm, *pan);
  return pans;
}

double minutesOf(const google::protobuf::Duration& length) {
  return static_cast<double>(length.seconds()) / 60;
}

void setSizes(const kitchen::Pan& from, v1::Pan& pan) {
  pan.set_width_mm(from.widthMm);
  pan.set_depth_mm(from.depthMm);
  pan.set_height_mm(from.heightMm);
}

// As much food, deeper: its time grows from as much as its depth to as much as the square of it.
void bakeIn(v1::OvenNeed& need, const kitchen::Pan& pan, double deeper) {
  setSizes(pan, *need.mutable_pan());
  if (need.thickness_mm() > 0) need.set_thickness_mm(need.thickness_mm() * deeper);
  v1::Spread& time = *need.mutable_duration();
  const double likely = minutesOf(time.likely());
  const double least = time.has_least() ? minutesOf(time.least()) : likely;
  const double most = time.has_most() ? minutesOf(time.most()) : likely;
  const kitchen::BakeMinutes middle = kitchen::minutesAtDepth(likely, deeper);
  *time.mutable_least() = durationOf(std::lround(kitchen::minutesAtDepth(least, deeper).least));
  *time.mutable_likely() = durationOf(std::lround((middle.least + middle.most) / 2));
  *time.mutable_most() = durationOf(std::lround(kitchen::minutesAtDepth(most, deeper).most));
}

Change changeOf(const Composition& composition, int oven, const Bake& bake, const kitchen::Pan& pan) {
  const std::string dishId = composition.dishes[at(bake.dish)].dish->id();
  const v1::Step& step = *composition.steps[at(bake.step)].step;
  const std::string stepId = step.id();
  const double deeper = 1 / kitchen::areaFactor(bake.pan, pan);
  Change change;
  change.what.set_kind(v1::REMEDY_KIND_OTHER_PAN);
  change.what.set_dish_id(dishId);
  change.what.set_step_id(absl::StrCat(dishId, "/", stepId));
  change.what.set_thing_id(composition.problem.ovens[at(oven)].id);
  *change.what.mutable_pan() = step.oven().pan();
  setSizes(pan, *change.what.mutable_pan());
  change.what.set_size(change_size::kOtherPan + static_cast<int>(std::floor((deeper - 1) * 10)));
  change.group = absl::StrCat("pan ", change.what.step_id());
  change.apply = [dishId, stepId, pan, deeper](Documents& documents) {
    v1::Recipe* recipe = ownRecipe(documents, dishId);
    v1::Step* own = recipe != nullptr ? stepIn(*recipe, stepId) : nullptr;
    if (own != nullptr) bakeIn(*own->mutable_oven(), pan, deeper);
  };
  return change;
}

std::vector<int> dishesOver(const planning::WishClash& clash, int oven) {
  const planning::Wish over{planning::WishKind::kOven, oven};
  if (std::find(clash.wishes.begin(), clash.wishes.end(), over) == clash.wishes.end()) return {};
  std::vector<int> dishes;
  for (const planning::Wish& wish : clash.wishes)
    if (wish.kind == planning::WishKind::kServed) dishes.push_back(wish.index);
  return dishes;
}

}  // namespace

std::vector<Change> otherPan(const Situation& situation) {
  const Composition& composition = situation.composition;
  std::vector<Change> changes;
  for (const planning::WishClash& clash : situation.clashes)
    for (int oven = 0; oven < static_cast<int>(composition.ovens.size()); ++oven) {
      const std::vector<Bake> bakes = bakesIn(composition, oven, dishesOver(clash, oven));
      for (const Bake& bake : bakes) {
        if (situation.isBegun(bake.step) || !mayMove(composition, bake)) continue;
        for (const auto& [width, pan] : pansFor(composition, oven, bake, bakes))
          changes.push_back(changeOf(composition, oven, bake, pan));
      }
    }
  return changes;
}

}  // namespace suppertide::compose
