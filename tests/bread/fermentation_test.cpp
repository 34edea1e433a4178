#include "server/bread/fermentation.h"

#include <gtest/gtest.h>

#include <random>

#include "tests/bread/builders.h"
#include "tests/bread/slow_fermentation.h"

namespace suppertide::bread {
namespace {

// The largest difference in rise over a day and a half to the same run in steps 64 times finer.
double worstRiseError(const DoughKind& kind, const DoughState& state, const Stay& stay) {
  Fermentation coarse(kind, state, 0, {&stay, 1});
  Fermentation fine(kind, state, 0, {&stay, 1});
  fine.refine(64);
  double worst = 0;
  while (coarse.hour() < 36) {
    coarse.step();
    while (fine.hour() < coarse.hour() - 1e-9) {
      fine.stepBy(std::min(fine.nextStep(), coarse.hour() - fine.hour()));
    }
    worst = std::max(worst, std::abs(coarse.rise() - fine.rise()));
  }
  return worst;
}

TEST(FermentationTest, ErrsLessThanItStatesForCultures) {
  double worst = 0;
  for (double celsius : {4.0, 12.0, 18.0, 22.0, 26.0, 28.0, 32.0, 35.0}) {
    for (double vigour : {0.5, 1.0, 2.5}) {
      for (double kilograms : {0.05, 1.0}) {
        const Stay stay = {kOpenEnded, swinging(celsius, 1.5), kMovedAir};
        DoughState levain = fed(1, 28, {.vigour = vigour});
        levain.kilograms = kilograms;
        DoughState dough = enrichedMixed(24, kilograms);
        dough.vigour = vigour;
        worst = std::max({worst, worstRiseError(halfWholeLevain(), levain, stay),
                          worstRiseError(enriched(), dough, stay)});
      }
    }
  }
  EXPECT_LT(worst, kRiseError);
  EXPECT_GT(worst, kRiseError / 10) << "the stated bound is far too wide";
}

TEST(FermentationTest, ErrsLessThanItStatesForYeastedDoughs) {
  double worst = 0;
  for (double celsius : {4.0, 20.0, 28.0, 35.0}) {
    for (double yeast : {0.3, 1.0, 3.0}) {
      for (double kilograms : {0.05, 1.0}) {
        DoughKind kind = kLeanKind;
        kind.yeastPercent = yeast;
        const DoughState state = *mix(kind, {}, {.inoculation = 0.1, .celsius = 24, .kilograms = kilograms});
        worst = std::max(worst, worstRiseError(kind, state, always(celsius)));
      }
    }
  }
  EXPECT_LT(worst, kRiseError);
}

TEST(FermentationTest, AgreesWithItsSlowTwinOnRandomDoughsAndPlaces) {
  for (std::uint64_t seed = 1; seed <= 30; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    std::mt19937_64 random(seed);
    const auto between = [&](double low, double high) {
      return std::uniform_real_distribution<double>(low, high)(random);
    };
    DoughKind kind = withComposition(seed % 3 == 0 ? kLevainKind : kEnrichedKind, between(0, 1),
                                     between(0, 2.2), between(0, 14));
    kind.yeastPercent = seed % 2 == 0 ? between(0.1, 2) : 0;
    const double vigour = between(0.6, 1.8);
    const DoughState start = *mix(kind, {between(0.4, 1), between(0, 2), vigour},
                                  {between(0.05, 0.4), between(0, 0.4), between(18, 28), between(0.05, 1.5)});
    const double hourOfDayAtZero = std::floor(between(0, 24)), startHour = std::floor(between(-30, 30));
    const std::vector<Stay> stays = {{3, swinging(between(18, 27), 3), kStillAir},
                                     {7, TemperatureByHour(4), kCoveredBowl},
                                     {5, swinging(between(20, 28), 2), kMovedAir}};
    SlowFermentation slow(kind, start);
    double hour = startHour;
    for (const Stay& stay : stays) {
      const double tau = Lump{.kilograms = start.kilograms}.timeConstantHours(stay.surfaceW);
      slow.run(stay.air, hour + hourOfDayAtZero, tau, stay.hours);
      hour += stay.hours;
    }
    const DoughState state = ferment(kind, start, startHour, stays, hourOfDayAtZero);
    EXPECT_NEAR(state.celsius, slow.celsius(), 1e-4);
    EXPECT_NEAR(state.ripeness, slow.ripeness(), 1e-4);
    EXPECT_NEAR(riseOf(kind, state), slow.rise(), 2e-4);
  }
}

TEST(FermentationTest, CutsAtAnyMomentChangeNothing) {
  const Stay whole[] = {always(26, 2.5), {8, swinging(20, 3), kStillAir}};
  const DoughState once = ferment(enriched(), enrichedMixed(24), 5, whole);
  const DoughState first = stateAfter(enriched(), enrichedMixed(24), 5, whole, 4.37);
  const Stay rest[] = {{8 - (4.37 - 2.5), swinging(20, 3), kStillAir}};
  const DoughState twice = ferment(enriched(), first, 5 + 4.37, rest);
  EXPECT_NEAR(twice.celsius, once.celsius, 1e-9);
  EXPECT_NEAR(riseOf(enriched(), twice), riseOf(enriched(), once), kRiseError);
}

TEST(FermentationTest, TheWallClockDecidesWhichTemperatureHolds) {
  const Stay stay = {6, swinging(22, 4), kStillAir};
  const DoughState afternoon = ferment(enriched(), enrichedMixed(22), 12, {&stay, 1}, 0);
  const DoughState shiftedOrigin = ferment(enriched(), enrichedMixed(22), 2, {&stay, 1}, 10);
  const DoughState night = ferment(enriched(), enrichedMixed(22), 0, {&stay, 1}, 0);
  EXPECT_NEAR(riseOf(enriched(), afternoon), riseOf(enriched(), shiftedOrigin), 1e-12);
  EXPECT_GT(riseOf(enriched(), afternoon), riseOf(enriched(), night) + 0.1);
}

TEST(FermentationTest, SkipsEmptyStaysAndStandsStillAfterTheLast) {
  const Stay stays[] = {always(22, 0), always(26, 2), always(4, 0)};
  const Stay one[] = {always(26, 2)};
  const DoughState state = stateAfter(enriched(), enrichedMixed(26), 0, stays, 50);
  EXPECT_EQ(state.gas, ferment(enriched(), enrichedMixed(26), 0, one).gas);
  EXPECT_NEAR(state.hoursSinceMix, 2, 1e-12);
  EXPECT_EQ(ferment(enriched(), enrichedMixed(26), 0, {}).hoursSinceMix, 0);
}

TEST(FermentationTest, SmallPiecesCoolSooner) {
  const Stay fridge[] = {always(4, 2)};
  EXPECT_LT(ferment(enriched(), enrichedMixed(28, 0.06), 0, fridge).celsius,
            ferment(enriched(), enrichedMixed(28, 1), 0, fridge).celsius - 5);
}

TEST(FermentationTest, AHotPlaceStopsTheCultureButNotBakersYeast) {
  const Stay hot[] = {always(36.5, 6)};
  DoughKind yeasted = kLeanKind;
  yeasted.yeastPercent = 1;
  const Culture culture = {.lag = 0};
  const Mixing mixing = {.inoculation = 0.2, .celsius = 36.5};
  EXPECT_LT(riseOf(kLeanKind, ferment(kLeanKind, *mix(kLeanKind, culture, mixing), 0, hot)), 1.001);
  EXPECT_GT(riseOf(yeasted, ferment(yeasted, *mix(yeasted, culture, mixing), 0, hot)), 2);
}

}  // namespace
}  // namespace suppertide::bread
