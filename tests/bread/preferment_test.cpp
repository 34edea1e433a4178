#include <gtest/gtest.h>

#include <cmath>

#include "server/bread/forecast.h"
#include "server/bread/temperature_response.h"
#include "tests/bread/builders.h"

namespace suppertide::bread {
namespace {

// `yeastPercent` compressed on the preferment's flour.
DoughState mixed(const DoughKind& kind, double celsius) {
  return *mix(kind, Culture{0, 0, 1}, {0, 0, celsius, 0.4, 1});
}

DoughState after(double yeastPercent, double celsius, double hours) {
  const DoughKind kind = prefermentKind(0.6, 0, yeastPercent, 0);
  const std::vector<Stay> stays = {always(celsius)};
  return stateAfter(kind, mixed(kind, celsius), 0, stays, hours);
}

TEST(PrefermentTest, YeastGrowsAsTheTextbookSays) {
  EXPECT_NEAR(after(0.5, 27, 6).yeastFactor, 1.88, 0.01);
  EXPECT_NEAR(after(2, 27, 6).yeastFactor, 1.29, 0.01);
}

// Against the logistic equation in steps of seconds, in a room that warms and cools.
TEST(PrefermentTest, GrowthIsTheLogisticEquationsInAChangingRoom) {
  const double yeast = 0.1;
  const DoughKind kind = prefermentKind(1, 0, yeast, 0);
  const std::vector<Stay> stays = {{kOpenEnded, swinging(21, 4), kStillAir}};
  const double found = stateAfter(kind, mixed(kind, 24), 9, stays, 14).yeastFactor;
  double factor = 1;
  const double step = 1.0 / 1800;
  Fermentation run(kind, mixed(kind, 24), 9, stays);
  run.refine(100);
  double hour = 9;
  const double best = kBakersYeast.rate(kYeastGrowthCelsius);
  while (hour < 23) {
    const double reach = std::min(step, run.nextStep());
    const double rate = kWetYeastGrowth * kBakersYeast.rate(run.state().celsius) / best;
    factor += reach * rate * factor * (1 - factor * yeast / kYeastCapacityPercent);
    run.stepBy(reach);
    hour += reach;
  }
  EXPECT_NEAR(found, factor, 1e-3 * factor);
}

TEST(PrefermentTest, LessYeastTakesLonger) {
  double before = 0;
  for (const double yeast : {0.5, 0.25, 0.12, 0.06}) {
    const DoughKind kind = prefermentKind(1, 0, yeast, 0);
    const std::vector<Stay> stays = {always(21)};
    const Forecast found = forecast(kind, mixed(kind, 21), 0, stays, kPoolishStage);
    ASSERT_TRUE(found.window) << yeast;
    EXPECT_GT(found.window->best, before + 1) << yeast;
    before = found.window->best;
  }
}

TEST(PrefermentTest, ADoughWithGrownYeastIsFasterInProportion) {
  DoughKind kind = kLeanKind;
  kind.yeastPercent = 0.5;
  const std::vector<Stay> stays = {always(24)};
  const auto grown = *mix(kind, Culture{0, 0, 1}, {0, 0, 24, 1, 2});
  DoughKind twice = kind;
  twice.yeastPercent = 1;
  const auto plain = *mix(twice, Culture{0, 0, 1}, {0, 0, 24, 1, 1});
  EXPECT_NEAR(riseOf(kind, stateAfter(kind, grown, 0, stays, 3)),
              riseOf(twice, stateAfter(twice, plain, 0, stays, 3)), 1e-9);
}

TEST(PrefermentTest, ABigaStandsLongerThanItRisesAndOldDoughRipensInTheFridge) {
  const DoughKind biga = prefermentKind(0.55, 0, 1, 0);
  const std::vector<Stay> cellar = {always(18)};
  const Forecast found = forecast(biga, mixed(biga, 20), 0, cellar, kBigaStage);
  ASSERT_TRUE(found.window);
  EXPECT_LT(*found.wantedHour, 8);
  EXPECT_NEAR(found.window->best, 14, 1e-6);
  const DoughKind old = prefermentKind(0.65, 0, 1, 2);
  const std::vector<Stay> fridge = {always(21, 2), always(4, 20)};
  const Forecast kept = forecast(old, mixed(old, 24), 0, fridge, kOldDoughStage, {0, 22, 0});
  ASSERT_TRUE(kept.window);
  EXPECT_TRUE(kept.window->hours.contains(14));
}

}  // namespace
}  // namespace suppertide::bread
