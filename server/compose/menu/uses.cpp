#include "server/compose/menu/uses.h"

#include <cmath>

#include "server/compose/menu/servings.h"

namespace suppertide::compose {
namespace {

kitchen::Amount scaled(const v1::Ingredient& from, double scale) {
  using kitchen::AmountKind;
  switch (from.amount_case()) {
    case v1::Ingredient::kMassG:
      return {AmountKind::kGrams, from.mass_g() * scale};
    case v1::Ingredient::kVolumeMl:
      return {AmountKind::kMillilitres, from.volume_ml() * scale};
    case v1::Ingredient::kCount:
      return {AmountKind::kPieces, from.count() * scale};
    case v1::Ingredient::AMOUNT_NOT_SET:
      break;
  }
  return {};
}

template <typename Part>
DishIngredient partOf(const v1::Dish& dish, const Part& from, kitchen::Amount amount) {
  return {&dish,
          from.name(),
          amount,
          from.kept_in(),
          {from.contains().begin(), from.contains().end()},
          from.known_contents()};
}

void addFormula(const v1::Dish& dish, const v1::BreadFormula& formula, double scale,
                std::vector<DishIngredient>& to) {
  double all = 0;
  for (const v1::FormulaLine& line : formula.lines()) all += line.percent();
  if (all <= 0) return;
  const double pieces = std::ceil(formula.piece_count() * scale - 1e-9);
  const double dough = pieces * formula.piece_mass_g() / (1 - formula.handling_loss_percent() / 100);
  for (const v1::FormulaLine& line : formula.lines()) {
    to.push_back(partOf(dish, line, {kitchen::AmountKind::kGrams, dough * line.percent() / all}));
    to.back().inFormula = true;
  }
}

}  // namespace

std::vector<DishIngredient> ingredientsOf(const Menu& menu) {
  std::vector<DishIngredient> all;
  for (const v1::Dish& dish : menu.event->dishes()) {
    const auto found = menu.recipes.find(dish.recipe_id());
    if (found == menu.recipes.end()) continue;
    const double scale = scaleOf(*menu.event, dish, *found->second);
    for (const v1::Ingredient& one : found->second->ingredients())
      all.push_back(partOf(dish, one, scaled(one, scale)));
    addFormula(dish, found->second->formula(), scale, all);
  }
  return all;
}

absl::TimeZone zoneOf(const Menu& menu) {
  const std::string& name =
      menu.event->time_zone().empty() ? menu.household->time_zone() : menu.event->time_zone();
  absl::TimeZone zone = absl::UTCTimeZone();
  absl::LoadTimeZone(name, &zone);
  return zone;
}

std::optional<google::protobuf::Timestamp> beginOf(const Menu& menu, const std::string& dishId) {
  std::optional<google::protobuf::Timestamp> begin;
  if (menu.plan == nullptr) return begin;
  for (const v1::PlannedStep& step : menu.plan->steps())
    if (step.dish_id() == dishId && step.kind() != v1::STEP_KIND_THAW &&
        (!begin || step.start_time().seconds() < begin->seconds()))
      begin = step.start_time();
  return begin;
}

}  // namespace suppertide::compose
