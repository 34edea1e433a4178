#include "server/compose/bread_recipe.h"

#include <algorithm>
#include <cmath>

#include "absl/strings/str_cat.h"

namespace suppertide::compose {
namespace {

constexpr double kUsualDoughCelsius = 25;
constexpr double kLeastFedCelsius = 22;   // a levain is fed with warm water in a cold room; assumed
constexpr double kUsualFrictionSum = 12;  // three times the rise by a stand mixer; common practice
constexpr double kFridgeCelsius = 5;
constexpr double kPrefermentCelsius = 21;  // where nobody says where it stands

// Straight from the fridge. Fat is softened first, and liquid is warmed as the water is.
bool comesCold(const v1::BreadFormula& formula, const bread::Ingredient& part) {
  return part.role != bread::Role::kFat &&
         std::any_of(formula.lines().begin(), formula.lines().end(), [&](const v1::FormulaLine& line) {
           return line.name() == part.name && line.kept_in() == v1::PLACE_KIND_FRIDGE;
         });
}

double or1(double percent) {
  return percent > 0 ? percent / 100 : 1;
}

}  // namespace

bread::Culture cultureOf(const v1::Starter& starter) {
  bread::Culture culture;
  if (starter.vigour() > 0) culture.vigour = starter.vigour();
  if (starter.condition() == v1::STARTER_CONDITION_AT_PEAK) culture.lag = bread::kPeakLevainLag;
  if (starter.condition() == v1::STARTER_CONDITION_FROM_FRIDGE) culture.lag = bread::kFridgeStarterLag;
  if (starter.learned_vigour().value() > 0) culture.vigour *= starter.learned_vigour().value();
  if (starter.has_learned_waking()) culture.lag *= std::max(0.0, starter.learned_waking().value());
  return culture;
}

absl::StatusOr<BreadRecipe> BreadRecipe::of(const v1::BreadFormula& from, const v1::Starter* starter,
                                            double doughGrams) {
  auto split = bread::splitFormula(linesOf(from), partsOf(from));
  if (!split.ok()) return split.status();
  BreadRecipe recipe(from, starter, *std::move(split));
  recipe.kind_ = bread::doughKindOf(recipe.mix());
  if (from.learned_pace().value() > 0) recipe.kind_.gasFactor *= from.learned_pace().value();
  recipe.doughGrams_ =
      doughGrams > 0 ? doughGrams
                     : from.piece_count() * from.piece_mass_g() / (1 - from.handling_loss_percent() / 100);
  double yeast = recipe.mix().addedYeastPercent();
  for (int p = 0; p < recipe.prefermentCount(); ++p) {
    const auto mixed = recipe.mixedPreferment(p, kPrefermentCelsius);
    if (!mixed.ok()) return mixed.status();
    const bread::Stay steady{bread::kOpenEnded, bread::TemperatureByHour(kPrefermentCelsius)};
    const auto kind = recipe.prefermentKind(p);
    const auto found = bread::forecast(kind, *mixed, 0, {&steady, 1}, recipe.prefermentStage(p));
    const double hours = found.window ? found.window->best : found.peakHour;
    recipe.likelyGrowth_.push_back(bread::stateAfter(kind, *mixed, 0, {&steady, 1}, hours).yeastFactor);
    yeast += recipe.prefermentYeast(p) * recipe.likelyGrowth_.back();
  }
  recipe.kind_.yeastPercent = yeast;
  return recipe;
}

double BreadRecipe::doughCelsius() const {
  return from_->dough_celsius() > 0 ? from_->dough_celsius() : kUsualDoughCelsius;
}

double BreadRecipe::levainBuildGrams() const {
  return levainGrams() / (1 - bread::kJarLossShare);
}

double BreadRecipe::levainHydration() const {
  return or1(from_->levain().hydration_percent());
}

double BreadRecipe::starterHydration() const {
  return starter_ == nullptr ? 1 : or1(starter_->hydration_percent());
}

std::vector<double> BreadRecipe::flourPerStarter() const {
  const auto& given = from_->levain().flour_per_starter();
  return given.empty() ? std::vector<double>{1, 2, 5, 10} : std::vector<double>(given.begin(), given.end());
}

bread::LevainRatio BreadRecipe::ratio(double flourPerStarter) const {
  const double flourInStarter = 1 / (1 + starterHydration());
  const double water =
      levainHydration() * (flourInStarter + flourPerStarter) - starterHydration() * flourInStarter;
  return {1, flourPerStarter, std::max(0.0, water)};
}

std::string BreadRecipe::ratioText(double flourPerStarter) const {
  const bread::LevainRatio parts = ratio(flourPerStarter);
  const auto rounded = [](double value) { return absl::StrCat(std::round(value * 10) / 10); };
  return absl::StrCat("1:", rounded(parts.flour), ":", rounded(parts.water));
}

bread::DoughKind BreadRecipe::levainKind() const {
  return bread::withComposition(bread::kLevainKind, from_->levain().whole_grain_percent() / 100, 0, 0);
}

bread::Culture BreadRecipe::starterCulture() const {
  return starter_ == nullptr ? bread::Culture{} : cultureOf(*starter_);
}

double BreadRecipe::fedCelsius(double roomCelsius) {
  return std::max(roomCelsius, kLeastFedCelsius);
}

absl::StatusOr<bread::DoughState> BreadRecipe::fedLevain(double flourPerStarter, double mixedCelsius) const {
  return bread::mixLevain(levainKind(), starterCulture(), ratio(flourPerStarter), mixedCelsius,
                          levainBuildGrams() / 1000, starterHydration());
}

double BreadRecipe::prefermentGrams(int index) const {
  double percent = 0;
  for (const bread::Ingredient& line : parts()[static_cast<std::size_t>(index)].lines)
    percent += line.percent;
  return flourGrams() * percent / 100;
}

double BreadRecipe::prefermentYeast(int index) const {
  double percent = 0;
  for (const bread::Ingredient& line : parts()[static_cast<std::size_t>(index)].lines)
    if (line.role == bread::Role::kYeast) percent += line.percent * bread::yeastFactor(line.yeastForm);
  return percent;
}

bread::DoughKind BreadRecipe::prefermentKind(int index) const {
  const v1::Preferment& told = from_->preferments(index);
  const double onOwnFlour = prefermentYeast(index) / told.flour_percent() * 100;
  return bread::prefermentKind(hydrationOf(told), told.whole_grain_percent() / 100, onOwnFlour,
                               told.salt_percent());
}

bread::Stage BreadRecipe::prefermentStage(int index) const {
  switch (from_->preferments(index).kind()) {
    case v1::PREFERMENT_KIND_POOLISH:
      return bread::kPoolishStage;
    case v1::PREFERMENT_KIND_OLD_DOUGH:
      return bread::kOldDoughStage;
    case v1::PREFERMENT_KIND_BIGA:
      return bread::kBigaStage;
    default:
      return bread::kSpongeStage;
  }
}

absl::StatusOr<bread::DoughState> BreadRecipe::mixedPreferment(int index, double celsius) const {
  bread::Mixing mixing;
  mixing.celsius = celsius;
  mixing.kilograms = prefermentGrams(index) / 1000;
  return bread::mix(prefermentKind(index), bread::Culture{0, 0, 1}, mixing);
}

double BreadRecipe::yeastFactor(const std::vector<double>& grown) const {
  if (kind_.yeastPercent <= 0 || grown.empty()) return 1;
  double yeast = mix().addedYeastPercent();
  for (std::size_t p = 0; p < grown.size(); ++p) yeast += prefermentYeast(static_cast<int>(p)) * grown[p];
  return yeast / kind_.yeastPercent;
}

bread::Mixing BreadRecipe::mixing(double celsius) const {
  bread::Mixing mixing;
  mixing.inoculation = mix().levainFlourShare();
  mixing.cultureShare = mix().levainShare() + mix().prefermentShare();
  mixing.celsius = celsius;
  mixing.kilograms = doughGrams_ / 1000;
  return mixing;
}

absl::StatusOr<bread::DoughState> BreadRecipe::mixedDough(const bread::Culture& levain, double celsius,
                                                          double yeastFactor) const {
  bread::Mixing mixed = mixing(celsius);
  mixed.yeastFactor = yeastFactor;
  return bread::mix(kind_, levain, mixed);
}

bread::DoughState BreadRecipe::atBest(const bread::DoughKind& kind, const bread::DoughState& state,
                                      const bread::Stage& stage) const {
  const bread::Stay steady{bread::kOpenEnded, bread::TemperatureByHour(doughCelsius())};
  const bread::Forecast found = bread::forecast(kind, state, 0, {&steady, 1}, stage);
  return bread::stateAfter(kind, state, 0, {&steady, 1}, found.window ? found.window->best : found.peakHour);
}

absl::StatusOr<bread::DoughState> BreadRecipe::mixedAtBest(double celsius, double flourPerStarter) const {
  bread::Culture culture{0, bread::kPeakLevainLag, 1};
  if (!hasLevain()) return mixedDough(culture, celsius);
  const double parts = flourPerStarter > 0 ? flourPerStarter : this->flourPerStarter().front();
  const auto levain = fedLevain(parts, fedCelsius(doughCelsius()));
  if (!levain.ok()) return levain.status();
  return mixedDough(bread::cultureOf(atBest(levainKind(), *levain, bread::kLevainStage)), celsius);
}

absl::StatusOr<bread::DoughState> BreadRecipe::shapedAtBest(double celsius, double flourPerStarter) const {
  const auto mixed = mixedAtBest(celsius, flourPerStarter);
  if (!mixed.ok()) return mixed.status();
  return bread::shape(kind(), atBest(kind(), *mixed, bulk()), from_->piece_mass_g() / 1000);
}

bread::Uncertainty BreadRecipe::yeastUncertainty(const v1::LearnedEffect& warmth) {
  bread::Uncertainty unsure;
  if (warmth.spread() > 0) unsure.placeKelvin = warmth.spread();
  return unsure;
}

bread::Uncertainty BreadRecipe::uncertainty(const v1::LearnedEffect& warmth) const {
  bread::Uncertainty unsure = yeastUncertainty(warmth);
  if (starter_ == nullptr || !hasLevain()) return unsure;
  if (starter_->vigour_spread() > 0) unsure.logVigour = starter_->vigour_spread();
  const v1::LearnedEffect& vigour = starter_->learned_vigour();
  if (vigour.spread() > 0) unsure.logVigour = vigour.spread();
  if (starter_->learned_waking().spread() > 0) unsure.lag = starter_->learned_waking().spread();
  if (vigour.tied_kind() == v1::EFFECT_KIND_WAKING) unsure.vigourWithLag = vigour.correlation();
  if (vigour.tied_kind() == v1::EFFECT_KIND_WARMTH && warmth.spread() > 0)
    unsure.vigourWithPlace = vigour.correlation();
  return unsure;
}

std::vector<bread::MixPart> BreadRecipe::mixedIn(const bread::MixTemperatures& at, double& waterGrams) const {
  std::vector<bread::MixPart> others;
  waterGrams = 0;
  const auto weighed = mix().gramsForDough(doughGrams_);
  if (!weighed.ok()) return others;
  for (const bread::Weighed& part : *weighed) {
    const bread::Ingredient& line = part.ingredient;
    const bool poured = line.role == bread::Role::kLiquid && line.waterShare >= 0.8;
    if (poured) waterGrams += part.grams;
    if (poured || part.grams <= 0) continue;
    const bool culture = line.role == bread::Role::kLevain || line.role == bread::Role::kPreferment;
    double celsius = line.role == bread::Role::kFlour ? at.flour : culture ? at.preferment : at.room;
    if (comesCold(*from_, line)) celsius = std::min(celsius, kFridgeCelsius);
    const double water =
        line.role == bread::Role::kLevain ? line.hydration / (1 + line.hydration) : line.waterShare;
    others.push_back({line.name, part.grams, celsius, water});
  }
  return others;
}

double BreadRecipe::frictionSum() const {
  return from_->has_friction_k() ? from_->friction_k() : kUsualFrictionSum;
}

bread::MixCorrection BreadRecipe::mixCorrection() const {
  std::vector<double> misses;
  for (const v1::MixReading& reading : from_->mix_readings()) {
    const double preferment =
        reading.has_preferment_celsius() ? reading.preferment_celsius() : reading.room_celsius();
    const bread::MixTemperatures at{reading.room_celsius(), reading.flour_celsius(), reading.water_celsius(),
                                    preferment, reading.dough_celsius()};
    double water = 0;
    auto parts = mixedIn(at, water);
    if (water <= 0) continue;
    parts.push_back({"water", water, at.water, 1});
    misses.push_back(at.dough - bread::mixedCelsius(parts, frictionSum() / 3, at.room));
  }
  return bread::learnMixing(misses);
}

WaterWays BreadRecipe::water(const bread::MixTemperatures& at) const {
  WaterWays ways;
  ways.correction = mixCorrection();
  ways.rise = frictionSum() / 3;
  const bool culture = hasLevain() || prefermentCount() > 0;
  ways.factors = culture ? 4 : 3;
  // The trade uses one sum term for both rules; a kelvin of the dough is as many of it as there are factors.
  ways.friction = frictionSum() + ways.correction.kelvin * ways.factors;
  ways.rule = culture ? bread::waterByFourFactors(at.dough, at.room, at.flour, at.preferment, ways.friction)
                      : bread::waterByThreeFactors(at.dough, at.room, at.flour, ways.friction);
  double water = 0;
  const auto others = mixedIn(at, water);
  ways.balance.celsius = ways.balance.waterCelsius = at.room;
  if (water <= 0) return ways;
  const auto plan =
      bread::waterByHeatBalance(others, water, at.dough, ways.rise + ways.correction.kelvin, at.room);
  if (plan.ok()) ways.balance = *plan;
  return ways;
}

double BreadRecipe::doughWith(const bread::MixTemperatures& at) const {
  double water = 0;
  auto parts = mixedIn(at, water);
  if (water <= 0) return doughCelsius();
  parts.push_back({"water", water, at.water, 1});
  return bread::mixedCelsius(parts, frictionSum() / 3 + mixCorrection().kelvin, at.room);
}

}  // namespace suppertide::compose
