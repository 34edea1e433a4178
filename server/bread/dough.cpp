#include "server/bread/dough.h"

#include <algorithm>
#include <cmath>

#include "absl/status/status.h"
#include "absl/strings/str_cat.h"
#include "server/bread/temperature_response.h"

namespace suppertide::bread {
namespace {

// Volume of a gas at `celsius` over that at 25 degrees, to which CO2 amounts refer.
double expansion(double celsius) {
  return (celsius + 273.15) / 298.15;
}

bool isShare(double value) {
  return value >= 0 && value <= 1;
}

DoughState withGasKept(const DoughKind& kind, DoughState state, double keptGas) {
  const double freeGas = splitGas(kind.waterShare, state.gas, state.celsius).freeGas;
  state.gas -= (1 - keptGas) * freeGas / expansion(state.celsius);
  return state;
}

}  // namespace

DoughKind withComposition(DoughKind kind, double wholeGrainShare, double saltPercent, double sugarPercent) {
  // Salt and sugar slow by osmosis, bran feeds: directions from Marek and Bushuk 1967
  // and practice, the sizes are assumed.
  constexpr double kLeastFactor = 0.3;
  const double sugar = 1 - 0.02 * std::max(0.0, sugarPercent - 5);
  kind.gasFactor = std::max(kLeastFactor, (1 + 0.3 * wholeGrainShare) * (1 - 0.05 * saltPercent) * sugar);
  kind.growthFactor = std::max(kLeastFactor, (1 + 0.1 * wholeGrainShare) * (1 - 0.03 * saltPercent) * sugar);
  return kind;
}

bool isEnriched(const Formula& formula) {
  double eggPercent = 0;
  for (const Ingredient& ingredient : formula.ingredients()) {
    if (ingredient.role == Role::kEgg) eggPercent += ingredient.percent;
  }
  return formula.fatPercent() + formula.sugarPercent() + eggPercent >= kEnrichedFromPercent;
}

DoughKind doughKindOf(const Formula& formula) {
  DoughKind kind = withComposition(isEnriched(formula) ? kEnrichedKind : kLeanKind, formula.wholeGrainShare(),
                                   formula.saltPercent(), formula.sugarPercent());
  kind.yeastPercent = formula.compressedYeastPercent();
  return kind;
}

DoughKind prefermentKind(double hydration, double wholeGrainShare, double yeastPercent, double saltPercent) {
  constexpr double kWetFrom = 0.85;
  DoughKind kind = kLevainKind;
  const bool wet = hydration >= kWetFrom;
  if (!wet) {
    kind = kLeanKind;
    kind.sugarVolumes = kLevainKind.sugarVolumes;
    // Water over gas-free volume, flour being about 1.4 times as dense.
    kind.waterShare = hydration / (hydration + 1 / 1.4) * 0.75;
  }
  kind = withComposition(kind, wholeGrainShare, saltPercent, 0);
  kind.yeastPercent = yeastPercent;
  kind.yeastGrowth = wet ? kWetYeastGrowth : kStiffYeastGrowth;
  if (wet) kind.gasFactor *= kWetGasFactor;
  return kind;
}

absl::StatusOr<DoughState> mix(const DoughKind& kind, const Culture& culture, const Mixing& mixing) {
  if (!isShare(mixing.inoculation) || !isShare(mixing.cultureShare) || !isShare(culture.ripeness)) {
    return absl::InvalidArgumentError(
        absl::StrCat("mix dough: inoculation, culture share and ripeness must be between 0 and 1, but are ",
                     mixing.inoculation, ", ", mixing.cultureShare, ", ", culture.ripeness));
  }
  if (!(std::isfinite(culture.lag) && culture.lag >= 0 && std::isfinite(culture.vigour) &&
        culture.vigour > 0)) {
    return absl::InvalidArgumentError(
        absl::StrCat("mix dough: culture has lag ", culture.lag, " and vigour ", culture.vigour));
  }
  if (!(std::isfinite(mixing.yeastFactor) && mixing.yeastFactor > 0)) {
    return absl::InvalidArgumentError(
        absl::StrCat("mix dough: yeast factor ", mixing.yeastFactor, " is not above 0"));
  }
  if (!(std::isfinite(mixing.celsius) && std::isfinite(mixing.kilograms) && mixing.kilograms > 0)) {
    return absl::InvalidArgumentError(
        absl::StrCat("mix dough: piece of ", mixing.kilograms, " kg at ", mixing.celsius, " degrees"));
  }
  if (!(culture.ripeness * mixing.inoculation > 0 || kind.yeastPercent > 0)) {
    return absl::InvalidArgumentError("mix dough: there is neither culture nor yeast");
  }
  DoughState state;
  state.celsius = mixing.celsius;
  state.ripeness = culture.ripeness * mixing.inoculation;
  state.activeShare = std::exp(-culture.lag);
  // The culture's water comes saturated with CO2, the rest without.
  state.gas =
      mixing.cultureShare * kind.waterShare * carbonDioxideHeld(mixing.celsius) / expansion(mixing.celsius);
  state.sugar = kind.sugarVolumes;
  state.vigour = culture.vigour;
  state.kilograms = mixing.kilograms;
  state.yeastFactor = mixing.yeastFactor;
  state.volumeAtStart = splitGas(kind.waterShare, state.gas, state.celsius).volume;
  return state;
}

absl::StatusOr<DoughState> mixLevain(const DoughKind& kind, const Culture& starter, const LevainRatio& ratio,
                                     double celsius, double kilograms, double starterHydration) {
  if (!(ratio.starter > 0 && ratio.flour >= 0 && ratio.water >= 0 && starterHydration > 0)) {
    return absl::InvalidArgumentError(absl::StrCat("mix levain: ratio ", ratio.starter, ":", ratio.flour, ":",
                                                   ratio.water, " of a starter with hydration ",
                                                   starterHydration, " has no starter or is negative"));
  }
  return mix(kind, starter, {ratio.inoculation(starterHydration), ratio.starterShare(), celsius, kilograms});
}

Culture cultureOf(const DoughState& levain, double lag) {
  return {levain.ripeness, lag, levain.vigour};
}

DoughState shape(const DoughKind& kind, DoughState state, double pieceKilograms, double keptGas) {
  state = withGasKept(kind, state, keptGas);
  state.kilograms = pieceKilograms;
  state.volumeAtStart = splitGas(kind.waterShare, state.gas, state.celsius).volume;
  return state;
}

DoughState fold(const DoughKind& kind, DoughState state, double keptGas) {
  return withGasKept(kind, state, keptGas);
}

GasSplit splitGas(double waterShare, double gas, double celsius) {
  const double warmth = expansion(celsius);
  const double air = kAirShare * warmth;
  const double surplus = gas * warmth - air - waterShare * carbonDioxideHeld(celsius);
  const double freeGas = (surplus + std::sqrt(surplus * surplus + 4 * gas * warmth * air)) / 2;
  return {freeGas, (1 + air + freeGas) / (1 + air)};
}

double riseOf(const DoughKind& kind, const DoughState& state) {
  return splitGas(kind.waterShare, state.gas, state.celsius).volume / state.volumeAtStart;
}

}  // namespace suppertide::bread
