#include "server/bread/forecast.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

#include "tests/bread/builders.h"

namespace suppertide::bread {
namespace {

Forecast levainAt(double celsius, double parts = 1, const Culture& starter = {}) {
  const Stay stay = always(celsius);
  return forecast(halfWholeLevain(), fed(parts, celsius, starter), 0, {&stay, 1}, kLevainStage);
}

TEST(ForecastTest, CrossingsAreWhereTheRiseIs) {
  const Stay stay = {kOpenEnded, swinging(24, 2), kStillAir};
  const Forecast found = forecast(enriched(), enrichedMixed(24), 7.3, {&stay, 1}, kEnrichedBulk);
  ASSERT_TRUE(found.lowHour && found.wantedHour && found.highHour);
  const auto riseAt = [&](double hour) {
    return riseOf(enriched(), stateAfter(enriched(), enrichedMixed(24), 7.3, {&stay, 1}, hour - 7.3));
  };
  EXPECT_NEAR(riseAt(*found.lowHour), kEnrichedBulk.lowRise, 2e-4);
  EXPECT_NEAR(riseAt(*found.wantedHour), kEnrichedBulk.wantedRise, 2e-4);
  EXPECT_NEAR(riseAt(*found.highHour), kEnrichedBulk.highRise, 2e-4);
  EXPECT_EQ(found.window->hours.start, *found.lowHour);
  EXPECT_EQ(found.window->hours.limit, *found.highHour);
  EXPECT_EQ(found.window->best, *found.wantedHour);
}

TEST(ForecastTest, ALevainIsReadyFromDoubledToALittlePastItsPeak) {
  const Forecast found = levainAt(22);
  ASSERT_TRUE(found.window);
  EXPECT_NEAR(found.window->hours.start, 6.0, 0.1);
  EXPECT_TRUE(found.peaked);
  EXPECT_GT(found.window->hours.limit, found.peakHour + 1);
  EXPECT_LT(found.window->hours.limit, found.peakHour + 3);
  const Stay stay = always(22);
  const DoughState fallen =
      stateAfter(halfWholeLevain(), fed(1, 22), 0, {&stay, 1}, found.window->hours.limit);
  EXPECT_NEAR(riseOf(halfWholeLevain(), fallen), 0.95 * found.peakRise, 2e-4);
}

TEST(ForecastTest, ThePeakIsTheGreatestRise) {
  const Forecast found = levainAt(26, 2);
  const Stay stay = always(26);
  double greatest = 0, at = 0;
  for (double hour = 0; hour < 15; hour += 0.01) {
    const double rise =
        riseOf(halfWholeLevain(), stateAfter(halfWholeLevain(), fed(2, 26), 0, {&stay, 1}, hour));
    if (rise > greatest) greatest = rise, at = hour;
  }
  EXPECT_NEAR(found.peakRise, greatest, 5e-4);
  EXPECT_NEAR(found.peakHour, at, 0.05);
}

TEST(ForecastTest, NeverIsAnAnswer) {
  const Forecast found = levainAt(35);
  EXPECT_FALSE(found.window);
  EXPECT_FALSE(found.lowHour);
  EXPECT_LT(found.peakRise, 1.1);
}

TEST(ForecastTest, WithoutReachingTheWantedRiseThePeakIsBest) {
  Stage stage = kLevainStage;
  stage.wantedRise = 5;
  const Stay stay = always(22);
  const Forecast found = forecast(halfWholeLevain(), fed(1, 22), 0, {&stay, 1}, stage);
  ASSERT_TRUE(found.window);
  EXPECT_EQ(found.window->best, found.peakHour);
}

TEST(ForecastTest, ARetardLastsItsLeastAndMostHours) {
  const Stay stays[] = {always(28, 1.5), always(4)};
  const Forecast found = forecast(enriched(), enrichedMixed(28), 10, stays, kRetard);
  ASSERT_TRUE(found.window);
  EXPECT_NEAR(found.window->hours.start, 18, 1e-9);
  EXPECT_NEAR(found.window->best, 22, 1e-9);
  EXPECT_NEAR(found.window->hours.limit, 34, 1e-9);
}

TEST(ForecastTest, ADoughThatOverflowsBeforeItsLeastHoursIsNeverReady) {
  Stage stage = kEnrichedBulk;
  stage.leastHours = 8;
  const Stay stay = always(28);
  EXPECT_FALSE(forecast(enriched(), enrichedMixed(28), 0, {&stay, 1}, stage).window);
}

TEST(ForecastTest, SamplesCoverTheWholeSearchAtTheirPitch) {
  const Stay stays[] = {always(28, 1.5), always(4)};
  const Forecast found = forecast(enriched(), enrichedMixed(28), 2, stays, kEnrichedBulk, {0, 12, 0.5});
  ASSERT_EQ(found.samples.size(), 25u);
  EXPECT_EQ(found.samples.front().rise, 1);
  for (std::size_t i = 0; i < found.samples.size(); ++i) {
    EXPECT_NEAR(found.samples[i].hour, 2 + 0.5 * static_cast<double>(i), 1e-9);
  }
  EXPECT_NEAR(found.samples[7].celsius, 13.8, 0.05) << "two hours in the fridge";
}

TEST(ForecastTest, LeanerAndColderIsLater) {
  for (double celsius : {18.0, 21.0, 24.0, 26.0}) {
    double before = 0;
    for (double parts : {1.0, 2.0, 3.0, 5.0, 10.0}) {
      const double hour = levainAt(celsius, parts).lowHour.value();
      EXPECT_GT(hour, before) << celsius << " 1:" << parts;
      before = hour;
    }
  }
}

TEST(ForecastBandTest, FastIsBeforeLikelyAndLikelyBeforeSlow) {
  const Stay stay = always(22);
  const ForecastBand band = forecastBand(halfWholeLevain(), fed(1, 22), 3, {&stay, 1}, kLevainStage);
  ASSERT_TRUE(band.fast && band.slow && band.likely.window);
  EXPECT_LT(band.fast->hours.start, band.likely.window->hours.start);
  EXPECT_LT(band.fast->best, band.likely.window->best);
  EXPECT_GT(band.slow->hours.start, band.likely.window->hours.start);
  EXPECT_GT(band.slow->hours.limit, band.likely.window->hours.limit);
}

TEST(ForecastBandTest, AWeakCultureInTheColdMayNeverBeReady) {
  const Stay stay = always(13);
  const ForecastBand band = forecastBand(halfWholeLevain(), fed(1, 13), 0, {&stay, 1}, kLevainStage);
  EXPECT_FALSE(band.slow);
  EXPECT_TRUE(band.fast);
}

TEST(ForecastBandTest, ALikelyReadyOneMayNeverBeReadyWhenSlow) {
  const Stay stay = always(14);
  const ForecastBand band = forecastBand(halfWholeLevain(), fed(1, 14), 0, {&stay, 1}, kLevainStage);
  ASSERT_TRUE(band.likely.window);
  EXPECT_FALSE(band.slow);
  EXPECT_TRUE(band.fast);
}

TEST(ForecastBandTest, CertainThingsHaveNoWidth) {
  const Stay stay = always(24);
  const ForecastBand band =
      forecastBand(enriched(), enrichedMixed(24), 0, {&stay, 1}, kEnrichedBulk, {0, 0, 0});
  EXPECT_NEAR(band.fast->best, band.likely.window->best, 1e-6);
  EXPECT_NEAR(band.slow->best, band.likely.window->best, 1e-6);
}

TEST(ForecastBandTest, DecilesAgreeWithRandomDoughs) {
  const Stay stay = always(23);
  const Uncertainty uncertainty;
  const ForecastBand band =
      forecastBand(halfWholeLevain(), fed(2, 23), 0, {&stay, 1}, kLevainStage, uncertainty);
  std::mt19937_64 random(7);
  std::normal_distribution<double> normal;
  std::vector<double> hours;
  for (int i = 0; i < 4000; ++i) {
    DoughState state = fed(2, 23);
    state.vigour = std::exp(uncertainty.logVigour * normal(random));
    state.activeShare = std::min(1.0, std::exp(-kMatureStarterLag * (1 + uncertainty.lag * normal(random))));
    const Stay room = always(23 + uncertainty.placeKelvin * normal(random));
    hours.push_back(
        forecast(halfWholeLevain(), state, 0, {&room, 1}, kLevainStage).lowHour.value_or(kSearchHours));
  }
  std::sort(hours.begin(), hours.end());
  EXPECT_NEAR(band.fast->hours.start / hours[400], 1, 0.04);
  EXPECT_NEAR(band.slow->hours.start / hours[3600], 1, 0.04);
}

}  // namespace
}  // namespace suppertide::bread
