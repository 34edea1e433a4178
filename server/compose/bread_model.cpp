#include "server/compose/bread_model.h"

#include <algorithm>
#include <cmath>

#include "absl/strings/str_cat.h"
#include "server/bread/fermentation.h"
#include "server/bread/water_temperature.h"
#include "server/compose/parts.h"

namespace suppertide::compose {
namespace {

constexpr double kJarMm = 120;
constexpr double kLitresPerKilogram = 2.2;  // risen dough with its bowl
constexpr double kStandMixerRiseK = 4;      // actual rise by mixing; a third of the rule's sum term
constexpr double kLeastFedCelsius = 22;     // a levain is fed with warm water in a cold room; assumed

bread::Role roleOf(v1::FormulaRole role) {
  switch (role) {
    case v1::FORMULA_ROLE_FLOUR:
      return bread::Role::kFlour;
    case v1::FORMULA_ROLE_WATER:
    case v1::FORMULA_ROLE_MILK:
      return bread::Role::kLiquid;
    case v1::FORMULA_ROLE_EGG:
      return bread::Role::kEgg;
    case v1::FORMULA_ROLE_FAT:
      return bread::Role::kFat;
    case v1::FORMULA_ROLE_SUGAR:
      return bread::Role::kSugar;
    case v1::FORMULA_ROLE_SALT:
      return bread::Role::kSalt;
    case v1::FORMULA_ROLE_FRESH_YEAST:
    case v1::FORMULA_ROLE_DRY_YEAST:
    case v1::FORMULA_ROLE_INSTANT_YEAST:
      return bread::Role::kYeast;
    default:
      return bread::Role::kOther;
  }
}

bread::Ingredient ingredientOf(const v1::FormulaLine& line) {
  bread::Ingredient ingredient = bread::usual(line.name(), roleOf(line.role()), line.percent());
  if (line.role() == v1::FORMULA_ROLE_MILK) ingredient.waterShare = bread::kMilkWaterShare;
  if (line.role() == v1::FORMULA_ROLE_DRY_YEAST) ingredient.yeastForm = bread::YeastForm::kActiveDry;
  if (line.role() == v1::FORMULA_ROLE_INSTANT_YEAST) ingredient.yeastForm = bread::YeastForm::kInstant;
  ingredient.wholeGrainShare = line.whole_grain_percent() / 100;
  return ingredient;
}

// The hands-on step listed last before `step` that it comes after.
int workBefore(const Composition& composition, const DishInfo& dish, int step) {
  int found = -1;
  for (const planning::Gap& gap : composition.problem.gaps) {
    if (gap.to != step || gap.toEdge != planning::Edge::kStart || gap.fromEdge != planning::Edge::kEnd)
      continue;
    if (composition.steps[static_cast<std::size_t>(gap.from)].dish !=
        composition.steps[static_cast<std::size_t>(dish.steps[0])].dish)
      continue;
    if (composition.steps[static_cast<std::size_t>(gap.from)].step->kind() == v1::STEP_KIND_HANDS_ON)
      found = std::max(found, gap.from);
  }
  return found;
}

}  // namespace

absl::StatusOr<bread::Formula> formulaOf(const v1::BreadFormula& from) {
  std::vector<bread::Ingredient> lines;
  for (const v1::FormulaLine& line : from.lines()) lines.push_back(ingredientOf(line));
  if (!from.has_levain()) return bread::Formula::fromPercents(std::move(lines));
  bread::Ingredient levain = bread::usual("levain", bread::Role::kLevain, 0);
  levain.hydration = from.levain().hydration_percent() > 0 ? from.levain().hydration_percent() / 100 : 1;
  levain.wholeGrainShare = from.levain().whole_grain_percent() / 100;
  return bread::splitLevain(std::move(lines), levain, from.levain().dough_share_percent() / 100);
}

absl::StatusOr<BreadInfo> breadInfoOf(const Composition& composition, const DishInfo& dish) {
  const v1::BreadFormula& from = dish.recipe->formula();
  BreadInfo bread;
  auto formula = formulaOf(from);
  if (!formula.ok())
    return absl::InvalidArgumentError(
        absl::StrCat("recipe ", dish.recipe->display_name(), ": ", std::string(formula.status().message())));
  bread.formula = *std::move(formula);
  bread.kind = bread::doughKindOf(*bread.formula);
  bread.pieces = static_cast<int>(std::ceil(from.piece_count() * dish.scale - 1e-9));
  bread.pieceGrams = from.piece_mass_g();
  bread.doughGrams = bread.pieces * bread.pieceGrams / (1 - from.handling_loss_percent() / 100);
  bread.levainGrams = bread.doughGrams * bread.formula->levainShare();
  bread.levainHydration = from.levain().hydration_percent() > 0 ? from.levain().hydration_percent() / 100 : 1;
  for (const v1::Starter& starter : composition.documents.starters)
    if (from.has_levain() && starter.id() == from.levain().starter_id()) bread.starter = &starter;
  if (from.has_levain() && bread.starter == nullptr)
    return absl::InvalidArgumentError(
        absl::StrCat("recipe ", dish.recipe->display_name(), ": its starter is missing"));
  for (const int step : dish.steps) {
    const v1::Step& told = *composition.steps[static_cast<std::size_t>(step)].step;
    if (!told.has_ferment()) continue;
    if (told.ferment().stage() == v1::FERMENT_STAGE_LEVAIN)
      bread.levainStep = step;
    else
      bread.doughSteps.push_back(step);
  }
  if (bread.levainStep >= 0) bread.feedStep = workBefore(composition, dish, bread.levainStep);
  if (!bread.doughSteps.empty()) bread.mixStep = workBefore(composition, dish, bread.doughSteps.front());
  return bread;
}

std::vector<double> BreadModel::ratios() const {
  const auto& given = dish_.recipe->formula().levain().flour_per_starter();
  if (given.empty()) return {1, 2, 5, 10};
  return {given.begin(), given.end()};
}

double BreadModel::starterHydration() const {
  return bread_.starter->hydration_percent() > 0 ? bread_.starter->hydration_percent() / 100 : 1;
}

bread::LevainRatio BreadModel::ratio(double flourPerStarter) const {
  const double starter =
      bread_.starter->hydration_percent() > 0 ? bread_.starter->hydration_percent() / 100 : 1;
  const double flourInStarter = 1 / (1 + starter);
  const double water = bread_.levainHydration * (flourInStarter + flourPerStarter) - starter * flourInStarter;
  return {1, flourPerStarter, std::max(0.0, water)};
}

std::string BreadModel::ratioText(double flourPerStarter) const {
  const bread::LevainRatio parts = ratio(flourPerStarter);
  const auto rounded = [](double value) { return absl::StrCat(std::round(value * 10) / 10); };
  return absl::StrCat("1:", rounded(parts.flour), ":", rounded(parts.water));
}

bread::DoughKind BreadModel::levainKind() const {
  return bread::withComposition(bread::kLevainKind,
                                dish_.recipe->formula().levain().whole_grain_percent() / 100, 0, 0);
}

double BreadModel::levainBuildGrams() const {
  return bread_.levainGrams / (1 - bread::kJarLossShare);
}

absl::StatusOr<bread::DoughState> BreadModel::fedLevain(double flourPerStarter) const {
  bread::Culture starter;
  starter.vigour = bread_.starter->vigour() > 0 ? bread_.starter->vigour() : 1;
  if (bread_.starter->condition() == v1::STARTER_CONDITION_AT_PEAK) starter.lag = bread::kPeakLevainLag;
  if (bread_.starter->condition() == v1::STARTER_CONDITION_FROM_FRIDGE)
    starter.lag = bread::kFridgeStarterLag;
  const double mixed = std::max(roomCelsius(), kLeastFedCelsius);
  return bread::mixLevain(levainKind(), starter, ratio(flourPerStarter), mixed, levainBuildGrams() / 1000,
                          starterHydration());
}

absl::StatusOr<bread::DoughState> BreadModel::mixedDough(const bread::Culture& levain) const {
  bread::Mixing mixing;
  mixing.inoculation = bread_.formula->prefermentedFlourShare();
  mixing.cultureShare = bread_.formula->levainShare();
  mixing.celsius = dish_.recipe->formula().dough_celsius() > 0 ? dish_.recipe->formula().dough_celsius() : 25;
  mixing.kilograms = bread_.doughGrams / 1000;
  return bread::mix(bread_.kind, levain, mixing);
}

double BreadModel::workHoursBefore(int step) const {
  const auto& all = bread_.doughSteps;
  const auto here = std::find(all.begin(), all.end(), step);
  if (here == all.end() || here == all.begin()) return 0;
  double minutes = 0;
  for (int k = *std::prev(here) + 1; k < step; ++k) {
    const v1::Step& between = *composition_.steps[static_cast<std::size_t>(k)].step;
    const bool during = std::any_of(between.after().begin(), between.after().end(),
                                    [](const v1::After& a) { return a.from_start(); });
    if (!during && !between.has_oven()) minutes += minutesOf(between.duration().likely());
  }
  return minutes / 60;
}

bread::DoughState BreadModel::handled(const bread::DoughState& state, int nextStep, double workHours) const {
  const v1::Step& next = *composition_.steps[static_cast<std::size_t>(nextStep)].step;
  bread::DoughState after = state;
  if (next.ferment().stage() == v1::FERMENT_STAGE_PROOF)
    after = bread::shape(bread_.kind, state, bread_.pieceGrams / 1000);
  if (workHours <= 0) return after;
  const std::vector<bread::Stay> room = {
      {workHours, bread::TemperatureByHour(roomCelsius()), bread::kStillAir}};
  return bread::ferment(bread_.kind, after, 0, room);
}

bread::Stage BreadModel::stage(int step, int place) const {
  const v1::FermentNeed& need = composition_.steps[static_cast<std::size_t>(step)].step->ferment();
  const bool enriched = dish_.recipe->formula().dough_class() == v1::DOUGH_CLASS_ENRICHED;
  bread::Stage stage = bread::kLevainStage;
  if (need.stage() == v1::FERMENT_STAGE_BULK) stage = enriched ? bread::kEnrichedBulk : bread::kLeanBulk;
  if (need.stage() == v1::FERMENT_STAGE_PROOF) stage = enriched ? bread::kEnrichedProof : bread::kLeanProof;
  if (need.low_rise() > 0) stage.lowRise = need.low_rise();
  if (need.wanted_rise() > 0) stage.wantedRise = need.wanted_rise();
  if (need.high_rise() > 0) stage.highRise = need.high_rise();
  if (!isRetard(place) || need.stage() == v1::FERMENT_STAGE_LEVAIN) return stage;
  bread::Stage retard = bread::kRetard;
  if (need.has_least_retard()) retard.leastHours = minutesOf(need.least_retard()) / 60.0;
  if (need.has_most_retard()) retard.mostHours = minutesOf(need.most_retard()) / 60.0;
  return retard;
}

std::vector<bread::Stay> BreadModel::stays(int place) const {
  return {{bread::kOpenEnded, airOf(composition_.documents.kitchen.places(place)), bread::kStillAir}};
}

double BreadModel::roomCelsius() const {
  const auto& places = composition_.documents.kitchen.places();
  for (int p = 0; p < places.size(); ++p)
    if (places[p].kind() == v1::PLACE_KIND_COUNTER) return composition_.placeCelsius(p);
  return 21;
}

bool BreadModel::isRetard(int place) const {
  return composition_.documents.kitchen.places(place).kind() == v1::PLACE_KIND_FRIDGE;
}

std::vector<int> BreadModel::places(int step) const {
  const v1::Step& told = *composition_.steps[static_cast<std::size_t>(step)].step;
  const auto& all = composition_.documents.kitchen.places();
  std::vector<int> places;
  for (int p = 0; p < all.size(); ++p) {
    const v1::PlaceKind kind = all[p].kind();
    const auto& kinds = told.place_kinds();
    const bool wanted = std::find(kinds.begin(), kinds.end(), kind) != kinds.end();
    const bool usual =
        kind != v1::PLACE_KIND_FREEZER && kind != v1::PLACE_KIND_WARMER && kind != v1::PLACE_KIND_FRIDGE;
    if (kinds.empty() ? usual : wanted) places.push_back(p);
  }
  return places;
}

double BreadModel::litres(int step) const {
  const v1::Step& told = *composition_.steps[static_cast<std::size_t>(step)].step;
  if (told.volume_l() > 0) return told.volume_l() * dish_.scale;
  const double grams =
      told.ferment().stage() == v1::FERMENT_STAGE_LEVAIN ? levainBuildGrams() : bread_.doughGrams;
  return grams / 1000 * kLitresPerKilogram;
}

planning::Load BreadModel::load(int step) const {
  const v1::Step& told = *composition_.steps[static_cast<std::size_t>(step)].step;
  planning::Load load;
  if (told.ferment().stage() == v1::FERMENT_STAGE_PROOF) {
    for (const int other : dish_.steps) {
      const v1::Step& bake = *composition_.steps[static_cast<std::size_t>(other)].step;
      if (!bake.has_oven()) continue;
      load.widthMm = bake.oven().pan().width_mm();
      load.depthMm = bake.oven().pan().depth_mm();
      load.heightMm = bake.oven().pan().height_mm();
      load.panCount = std::max(1, bake.oven().pan().count());
      return load;
    }
  }
  const double diameter = std::clamp(std::cbrt(litres(step)) * 150, kJarMm, 380.0);
  load.widthMm = load.depthMm = static_cast<int>(diameter);
  load.heightMm = static_cast<int>(diameter * 0.55);
  return load;
}

double BreadModel::waterCelsius() const {
  const auto weighed = bread_.formula->gramsForDough(bread_.doughGrams);
  if (!weighed.ok()) return roomCelsius();
  std::vector<bread::MixPart> others;
  double water = 0;
  for (const bread::Weighed& part : *weighed) {
    const auto& ingredient = part.ingredient;
    if (ingredient.role == bread::Role::kLiquid && ingredient.waterShare >= 0.8) {
      water += part.grams;
      continue;
    }
    const double share = ingredient.role == bread::Role::kLevain
                             ? ingredient.hydration / (1 + ingredient.hydration)
                             : ingredient.waterShare;
    if (part.grams > 0) others.push_back({ingredient.name, part.grams, roomCelsius(), share});
  }
  const double wanted =
      dish_.recipe->formula().dough_celsius() > 0 ? dish_.recipe->formula().dough_celsius() : 25;
  const double rise =
      dish_.recipe->formula().has_friction_k() ? dish_.recipe->formula().friction_k() / 3 : kStandMixerRiseK;
  const auto plan = water > 0 ? bread::waterByHeatBalance(others, water, wanted, rise, roomCelsius())
                              : absl::InvalidArgumentError("no water");
  return plan.ok() ? plan->waterCelsius : roomCelsius();
}

}  // namespace suppertide::compose
