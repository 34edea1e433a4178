#include "server/bread/dough.h"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/bread/builders.h"

namespace suppertide::bread {
namespace {

TEST(DoughTest, StartsWithTheCulturesPopulationAndRiseOne) {
  const DoughState levain = fed(2, 22);
  EXPECT_NEAR(levain.ripeness, 0.2, 1e-12);
  EXPECT_NEAR(levain.activeShare, std::exp(-kMatureStarterLag), 1e-12);
  EXPECT_NEAR(riseOf(halfWholeLevain(), levain), 1, 1e-12);
  EXPECT_EQ(levain.sugar, kLevainKind.sugarVolumes);
}

TEST(DoughTest, FreeGasSolvesItsEquilibrium) {
  // Air and CO2 share the bubbles; the water holds CO2 in proportion to its part of the pressure.
  const double gas = 1.3, celsius = 24, water = 0.45;
  const auto [freeGas, volume] = splitGas(water, gas, celsius);
  const double warmth = (celsius + 273.15) / 298.15, air = kAirShare * warmth;
  const double held = water * 0.8444 * freeGas / (air + freeGas);
  EXPECT_NEAR(freeGas + held, gas * warmth, 2e-3);
  EXPECT_NEAR(volume, (1 + air + freeGas) / (1 + air), 1e-12);
}

TEST(DoughTest, ShapingKeepsAQuarterOfTheFreeGasAndRestartsTheRise) {
  const DoughKind kind = enriched();
  DoughState state = enrichedMixed(28);
  state.gas = 1;
  const double before = splitGas(kind.waterShare, state.gas, 28).freeGas;
  const DoughState shaped = shape(kind, state, 0.06);
  const double warmth = (28 + 273.15) / 298.15;
  EXPECT_NEAR((state.gas - shaped.gas) * warmth, 0.75 * before, 1e-12);
  EXPECT_EQ(shaped.kilograms, 0.06);
  EXPECT_NEAR(riseOf(kind, shaped), 1, 1e-12);
  EXPECT_LT(riseOf(kind, fold(kind, state)), riseOf(kind, state));
}

TEST(DoughTest, ALevainHandsOnItsPopulationAndVigour) {
  DoughState levain = fed(1, 22, {.vigour = 1.3});
  levain.ripeness = 0.58;
  const Culture culture = cultureOf(levain);
  EXPECT_EQ(culture.ripeness, 0.58);
  EXPECT_EQ(culture.vigour, 1.3);
  EXPECT_EQ(culture.lag, kPeakLevainLag);
}

TEST(DoughTest, SaltAndSugarSlowAndWholeGrainSpeeds) {
  const DoughKind plain = withComposition(kLeanKind, 0, 0, 0);
  EXPECT_EQ(plain.gasFactor, 1);
  EXPECT_LT(withComposition(kLeanKind, 0, 2, 0).gasFactor, 1);
  EXPECT_EQ(withComposition(kLeanKind, 0, 0, 5).gasFactor, 1);
  EXPECT_LT(withComposition(kLeanKind, 0, 0, 12).gasFactor, 1);
  EXPECT_GT(withComposition(kLeanKind, 1, 0, 0).gasFactor, 1);
  EXPECT_EQ(withComposition(kLeanKind, 0, 30, 60).growthFactor, 0.3);
}

TEST(DoughTest, AFormulaDecidesTheKind) {
  const Formula lean =
      *Formula::fromPercents({usual("flour", Role::kFlour, 100), usual("water", Role::kLiquid, 65),
                              usual("salt", Role::kSalt, 2), usual("yeast", Role::kYeast, 1)});
  EXPECT_FALSE(isEnriched(lean));
  EXPECT_EQ(doughKindOf(lean).waterShare, kLeanKind.waterShare);
  EXPECT_EQ(doughKindOf(lean).yeastPercent, 1);
  EXPECT_NEAR(doughKindOf(lean).gasFactor, 0.9, 1e-12);
  const Formula rich = *Formula::fromPercents(
      {usual("flour", Role::kFlour, 100), usual("butter", Role::kFat, 10), usual("sugar", Role::kSugar, 5)});
  EXPECT_TRUE(isEnriched(rich));
}

TEST(DoughTest, RefusesWhatCannotFerment) {
  EXPECT_FALSE(mix(kLeanKind, {}, {}).ok()) << "neither culture nor yeast";
  EXPECT_FALSE(mix(kLeanKind, {.ripeness = 1.2}, {.inoculation = 0.2}).ok());
  EXPECT_FALSE(mix(kLeanKind, {.lag = -1}, {.inoculation = 0.2}).ok());
  EXPECT_FALSE(mix(kLeanKind, {.vigour = 0}, {.inoculation = 0.2}).ok());
  EXPECT_FALSE(mix(kLeanKind, {}, {.inoculation = 0.2, .celsius = std::nan("")}).ok());
  EXPECT_FALSE(mix(kLeanKind, {}, {.inoculation = 0.2, .kilograms = 0}).ok());
  EXPECT_FALSE(mixLevain(kLevainKind, {}, {0, 1, 1}, 22, 0.2).ok());
}

}  // namespace
}  // namespace suppertide::bread
