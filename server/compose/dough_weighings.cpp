// What to weigh at each step of a bread.
#include <algorithm>
#include <cmath>

#include "server/bread/formula_edit.h"
#include "server/bread/levain_build.h"
#include "server/compose/bread_model.h"

namespace suppertide::compose {
namespace {

void weigh(const std::string& name, double grams, v1::PlannedStep& out) {
  constexpr double kLeastGrams = 0.05;
  if (grams < kLeastGrams) return;
  v1::Weighing& weighing = *out.add_weighings();
  weighing.set_name(name);
  weighing.set_mass_g(bread::shownGrams(grams));
}

void weighLevain(const BreadRecipe& recipe, double flourPerStarter, v1::PlannedStep& out) {
  const bread::LevainRatio ratio = recipe.ratio(flourPerStarter);
  const double part = recipe.levainBuildGrams() / (ratio.starter + ratio.flour + ratio.water);
  weigh("starter", part * ratio.starter, out);
  weigh("flour", part * ratio.flour, out);
  weigh("water", part * ratio.water, out);
}

void weighPart(const BreadRecipe& recipe, std::size_t part, v1::PlannedStep& out) {
  for (const bread::Ingredient& line : recipe.parts()[part].lines)
    weigh(line.name, recipe.flourGrams() * line.percent / 100, out);
}

std::string nameInMix(const bread::Ingredient& ingredient) {
  if (ingredient.role == bread::Role::kLevain) return "ripe levain";
  return ingredient.role == bread::Role::kPreferment ? "ripe " + ingredient.name : ingredient.name;
}

void weighDough(const BreadModel& model, v1::PlannedStep& out) {
  const auto grams = model.recipe().mix().gramsForDough(model.recipe().doughGrams());
  if (!grams.ok()) return;
  for (const bread::Weighed& part : *grams) weigh(nameInMix(part.ingredient), part.grams, out);
  out.set_water_celsius(std::round(model.water().balance.waterCelsius));
}

}  // namespace

void addWeighings(const BreadInfo& bread, const BreadModel& model, int step, double flourPerStarter,
                  v1::PlannedStep& out) {
  const int before = out.weighings_size();
  const v1::BreadFormula& formula = model.recipe().from();
  if (step == bread.feedStep && flourPerStarter > 0) weighLevain(model.recipe(), flourPerStarter, out);
  for (std::size_t p = 0; p < bread.preferments.size(); ++p)
    if (bread.preferments[p].mixStep == step) weighPart(model.recipe(), p, out);
  for (int s = 0; s < formula.soakers_size(); ++s)
    if (formula.soakers(s).id() == model.soakerOf(step))
      weighPart(model.recipe(), bread.preferments.size() + static_cast<std::size_t>(s), out);
  if (step == bread.mixStep) weighDough(model, out);
  if (out.weighings_size() == before) return;
  const auto& told = out.cautions();
  if (std::find(told.begin(), told.end(), v1::CAUTION_RAW_FLOUR) == told.end())
    out.add_cautions(v1::CAUTION_RAW_FLOUR);
}

}  // namespace suppertide::compose
