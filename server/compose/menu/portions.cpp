// How much a menu makes against what its guests eat, as documents.
#include <algorithm>
#include <cmath>

#include "absl/time/civil_time.h"
#include "server/compose/menu/amounts.h"
#include "server/compose/menu/contents.h"
#include "server/compose/menu/servings.h"
#include "server/compose/menu/uses.h"
#include "server/compose/safety_view.h"
#include "server/kitchen/menu/portions.h"

namespace suppertide::compose {
namespace {

int piecesOf(const v1::Event& event, const v1::Dish& dish, const v1::Recipe& recipe) {
  if (!recipe.has_formula()) return 0;
  return static_cast<int>(std::ceil(recipe.formula().piece_count() * scaleOf(event, dish, recipe) - 1e-9));
}

double madeServings(const v1::Event& event, const v1::Dish& dish, const v1::Recipe& recipe) {
  const int pieces = piecesOf(event, dish, recipe);
  if (pieces > 0)
    return static_cast<double>(pieces) / recipe.formula().piece_count() * recipe.serving_count();
  return wantedServings(event, dish);
}

// The day that the food was cooked on, by the plan; else that it is served on.
absl::CivilDay cookedOn(const Menu& menu, const v1::Dish& dish) {
  std::int64_t seconds = 0;
  if (menu.plan != nullptr)
    for (const v1::PlannedStep& step : menu.plan->steps())
      if (step.dish_id() == dish.id() &&
          (step.kind() == v1::STEP_KIND_OVEN || step.kind() == v1::STEP_KIND_BURNER))
        seconds = std::max(seconds, step.end_time().seconds());
  for (const v1::Course& course : menu.event->courses())
    if (course.id() == dish.course_id() && seconds == 0) seconds = course.serving_time().seconds();
  return absl::ToCivilDay(absl::FromUnixSeconds(seconds), zoneOf(menu));
}

void setUseBy(const Menu& menu, const v1::Dish& dish, const v1::Recipe& recipe, v1::DishPortion& portion) {
  const auto food = foodOf(recipe, recipe.steps(recipe.steps_size() - 1));
  if (!food) return;
  const kitchen::FridgeLife& life = kitchen::fridgeLife(*food, /*cooked=*/true, rulesOf(*menu.household));
  portion.set_use_by_date(
      absl::FormatCivilTime(cookedOn(menu, dish) + static_cast<absl::civil_diff_t>(life.days)));
  portion.set_source(std::string(life.source.title));
}

v1::PortionGuide guideOf(const kitchen::GuidedAmount& from, double portions) {
  const double guests = from.guide.inAll ? 1 : portions;
  const auto inAll = [&](double each) {
    const double all = each * guests;
    return kitchen::Amount{from.guide.kind,
                           from.guide.kind == kitchen::AmountKind::kPieces ? std::ceil(all) : all};
  };
  v1::PortionGuide guide;
  guide.set_name(std::string(from.guide.name));
  *guide.mutable_amount() = amountOf(from.amount);
  *guide.mutable_least() = amountOf(inAll(from.guide.least));
  *guide.mutable_most() = amountOf(inAll(from.guide.most));
  guide.set_source(std::string(from.guide.source.title));
  return guide;
}

void warn(const kitchen::GuidedAmount& from, double portions, const std::string& dishId,
          std::vector<v1::MenuWarning>& warnings) {
  const kitchen::Enough enough = kitchen::judgeAmount(from, portions);
  if (enough == kitchen::Enough::kYes) return;
  v1::MenuWarning& warning = warnings.emplace_back();
  warning.set_kind(enough == kitchen::Enough::kFarTooLittle ? v1::MENU_WARNING_KIND_TOO_LITTLE
                                                            : v1::MENU_WARNING_KIND_TOO_MUCH);
  warning.set_dish_id(dishId);
  *warning.mutable_portion() = guideOf(from, portions);
}

}  // namespace

std::vector<v1::DishPortion> portionsOf(const Menu& menu, std::vector<v1::MenuWarning>& warnings) {
  const auto ingredients = ingredientsOf(menu);
  std::vector<v1::DishPortion> portions;
  std::vector<kitchen::PortionDish> dishes;
  for (const v1::Dish& dish : menu.event->dishes()) {
    const auto found = menu.recipes.find(dish.recipe_id());
    if (found == menu.recipes.end()) continue;
    const v1::Recipe& recipe = *found->second;
    kitchen::PortionDish eaten{dish.display_name().empty() ? recipe.display_name() : dish.display_name(), {}};
    for (const DishIngredient& one : ingredients)
      if (one.dish == &dish) eaten.parts.push_back({one.name, one.amount, one.contains});
    eaten.pieces = piecesOf(*menu.event, dish, recipe);
    eaten.pieceGrams = recipe.formula().piece_mass_g();
    v1::DishPortion& portion = portions.emplace_back();
    portion.set_dish_id(dish.id());
    portion.set_made_servings(madeServings(*menu.event, dish, recipe));
    portion.set_eaten_servings(eatenServings(*menu.event, dish));
    for (const kitchen::GuidedAmount& guided : kitchen::guidesOf(eaten)) {
      *portion.add_guides() = guideOf(guided, portion.eaten_servings());
      warn(guided, portion.made_servings(), dish.id(), warnings);
    }
    setUseBy(menu, dish, recipe, portion);
    dishes.push_back(std::move(eaten));
  }
  v1::Dish everyone;
  const double all = eatenServings(*menu.event, everyone);
  for (const kitchen::GuidedAmount& guided : kitchen::guidesOfMenu(dishes)) warn(guided, all, "", warnings);
  return portions;
}

}  // namespace suppertide::compose
