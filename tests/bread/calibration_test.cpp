#include "server/bread/calibration.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "tests/bread/builders.h"

namespace suppertide::bread {
namespace {

// A jar of levain seen after some hours at `celsius`, had the starter been shifted so.
Observation seen(double parts, double celsius, double hours, const Shift& truth,
                 double spread = kRiseSpread) {
  Observation observation{.kind = halfWholeLevain(),
                          .start = fed(parts, celsius),
                          .stays = {always(celsius)},
                          .hours = hours,
                          .spread = spread};
  const DoughState state = stateAfter(observation.kind, shifted(observation.start, truth), 0,
                                      shifted(observation.stays, truth), hours);
  observation.value = riseOf(observation.kind, state);
  return observation;
}

TEST(CalibrationTest, WithoutObservationsNothingIsLearnt) {
  const Belief before = {{0.1, 0.2, -0.5}, {}};
  const Belief after = *learn(before, {});
  EXPECT_NEAR(after.mean.logVigour, 0.1, 1e-12);
  EXPECT_NEAR(after.spread.logVigour, before.spread.logVigour, 1e-12);
  EXPECT_NEAR(after.spread.placeKelvin, before.spread.placeKelvin, 1e-12);
  EXPECT_NEAR(after.spread.vigourWithLag, 0, 1e-12);
}

TEST(CalibrationTest, FindsTheVigourWhenNothingElseIsUnsure) {
  const Belief unsure = {{}, {.logVigour = 1, .placeKelvin = 0, .lag = 0}};
  for (double vigour : {0.6, 0.8, 1.0, 1.25, 1.6}) {
    const Observation jar = seen(2, 23, 6, {.logVigour = std::log(vigour)}, 0.01);
    const Belief after = *learn(unsure, {&jar, 1});
    EXPECT_NEAR(std::exp(after.mean.logVigour), vigour, 0.01 * vigour);
    EXPECT_LT(after.spread.logVigour, 0.08);
    EXPECT_EQ(after.mean.lag, 0);
    EXPECT_EQ(after.mean.placeKelvin, 0);
  }
}

TEST(CalibrationTest, AgreesWithBruteForceOverAGrid) {
  const Belief before = {{}, {.logVigour = 0.2, .placeKelvin = 0, .lag = 0.3}};
  const Observation jar = seen(2, 23, 6, {.logVigour = 0.15, .lag = -0.1});
  const Belief after = *learn(before, {&jar, 1});
  double weight = 0, v = 0, l = 0, vv = 0, ll = 0, vl = 0;
  for (double logVigour = -0.9; logVigour <= 0.9; logVigour += 0.03) {
    for (double lag = -1; lag <= 1.4; lag += 0.05) {
      const Observation here = seen(2, 23, 6, {logVigour, lag, 0});
      const double miss = (here.value - jar.value) / kRiseSpread;
      const double w = std::exp(-0.5 * (miss * miss + std::pow(logVigour / 0.2, 2) + std::pow(lag / 0.3, 2)));
      weight += w;
      v += w * logVigour;
      l += w * lag;
      vv += w * logVigour * logVigour;
      ll += w * lag * lag;
      vl += w * logVigour * lag;
    }
  }
  v /= weight, l /= weight;
  const double deviationV = std::sqrt(vv / weight - v * v), deviationL = std::sqrt(ll / weight - l * l);
  EXPECT_NEAR(after.mean.logVigour, v, 0.03);
  EXPECT_NEAR(after.mean.lag, l, 0.05);
  EXPECT_NEAR(after.spread.logVigour / deviationV, 1, 0.15);
  EXPECT_NEAR(after.spread.lag / deviationL, 1, 0.15);
  EXPECT_NEAR(after.spread.vigourWithLag, (vl / weight - v * l) / (deviationV * deviationL), 0.1);
}

TEST(CalibrationTest, OneDoublingCannotTellAWeakStarterFromASleepyOne) {
  const Observation jar = seen(1, 22, 6.5, {.logVigour = -0.1});
  const Belief after = *learn({}, {&jar, 1});
  EXPECT_GT(after.spread.vigourWithLag, 0.5) << "vigour and lag are tied";
  EXPECT_GT(after.spread.lag, 0.6 * Uncertainty{}.lag) << "but neither is known well";
}

TEST(CalibrationTest, ASecondRatioTellsThemApart) {
  const Shift truth = {.logVigour = 0.25, .lag = 0.35};
  const Belief before = {{}, {.logVigour = 0.4, .placeKelvin = 0, .lag = 0.4}};
  const std::vector<Observation> jars = {seen(1, 22, 3, truth, 0.02), seen(1, 22, 5, truth, 0.02),
                                         seen(10, 22, 9, truth, 0.02), seen(10, 22, 11, truth, 0.02)};
  const Belief one = *learn(before, {jars.data(), 1});
  const Belief four = *learn(before, jars);
  EXPECT_LT(four.spread.lag, 0.5 * one.spread.lag);
  EXPECT_NEAR(four.mean.logVigour, truth.logVigour, 0.05);
  EXPECT_NEAR(four.mean.lag, truth.lag, 0.1);
}

TEST(CalibrationTest, ADoughThermometerTellsTheRoom) {
  const Belief before;
  Observation dough{.kind = enriched(),
                    .start = enrichedMixed(24),
                    .stays = {always(22)},
                    .hours = 6,
                    .seen = Seen::kDoughCelsius,
                    .spread = 0.3};
  dough.value = stateAfter(enriched(), enrichedMixed(24), 0, std::vector<Stay>{always(23.5)}, 6).celsius;
  const Belief after = *learn(before, {&dough, 1});
  EXPECT_GT(after.mean.placeKelvin, 1.0);
  EXPECT_LT(after.mean.placeKelvin, 1.5) << "the prior holds it back";
  EXPECT_LT(after.spread.placeKelvin, 0.5 * before.spread.placeKelvin);
  EXPECT_NEAR(after.mean.logVigour, 0, 1e-9);
}

TEST(CalibrationTest, LearningTightensTheNextForecast) {
  const Shift truth = {.logVigour = std::log(0.8)};
  const std::vector<Observation> jars = {seen(1, 22, 6, truth), seen(1, 22, 7, truth), seen(2, 22, 8, truth)};
  const Belief after = *learn({}, jars);
  const Stay stay = always(22);
  const auto band = [&](const Belief& belief) {
    return believedBand(halfWholeLevain(), fed(3, 22), 0, {&stay, 1}, kLevainStage, belief);
  };
  const ForecastBand old = band({}), fresh = band(after);
  ASSERT_TRUE(old.slow && fresh.slow);
  EXPECT_LT(fresh.slow->hours.start - fresh.fast->hours.start,
            0.6 * (old.slow->hours.start - old.fast->hours.start));
  const double actual =
      *forecast(halfWholeLevain(), shifted(fed(3, 22), truth), 0, {&stay, 1}, kLevainStage).lowHour;
  EXPECT_LT(std::abs(*fresh.likely.lowHour - actual), std::abs(*old.likely.lowHour - actual));
  EXPECT_LT(fresh.fast->hours.start, actual);
  EXPECT_GT(fresh.slow->hours.start, actual);
}

TEST(CalibrationTest, VigourStaysWithinItsBounds) {
  Observation dead = seen(1, 22, 12, {});
  dead.value = 1.0;
  dead.spread = 0.01;
  const Belief after = *learn({{}, {.logVigour = 2, .placeKelvin = 0, .lag = 0}}, {&dead, 1});
  EXPECT_GE(after.mean.logVigour, -std::log(2.5) - 1e-3);
}

TEST(CalibrationTest, RefusesWhatNobodyCanHaveSeen) {
  const Observation good = seen(1, 22, 6, {});
  std::vector<Observation> list = {good, good};
  list[1].value = -1;
  EXPECT_THAT(std::string(learn({}, list).status().message()),
              testing::HasSubstr("observation 1: a rise of -1"));
  list[1] = good;
  list[1].hours = 0;
  EXPECT_FALSE(learn({}, list).ok());
  list[1] = good;
  list[1].stays = {always(22, 3)};
  EXPECT_FALSE(learn({}, list).ok());
  list[1] = good;
  list[1].spread = 0;
  EXPECT_FALSE(learn({}, list).ok());
}

TEST(CalibrationTest, APokeSpeaksForARise) {
  EXPECT_EQ(riseOfPoke(Poke::kSpringsBack, kEnrichedProof), kEnrichedProof.lowRise);
  EXPECT_EQ(riseOfPoke(Poke::kRecedesSlowly, kEnrichedProof), kEnrichedProof.wantedRise);
  EXPECT_EQ(riseOfPoke(Poke::kCollapses, kEnrichedProof), kEnrichedProof.highRise);
}

TEST(CalibrationTest, APokeBoundsOrMeetsARise) {
  const Belief unsure = {{}, {.logVigour = 0.3, .placeKelvin = 0, .lag = 0}};
  Observation proof{
      .kind = enriched(),
      .start = enrichedMixed(26),
      .stays = {always(26)},
      .hours = *forecast(enriched(), enrichedMixed(26), 0, std::vector<Stay>{always(26)}, kEnrichedProof)
                    .wantedHour};
  const auto vigour = [&](const Observation& o) { return learn(unsure, {&o, 1})->mean.logVigour; };
  EXPECT_LT(vigour(poked(proof, Poke::kSpringsBack, kEnrichedProof)), -0.03);
  EXPECT_NEAR(vigour(poked(proof, Poke::kRecedesSlowly, kEnrichedProof)), 0, 0.01);
  EXPECT_GT(vigour(poked(proof, Poke::kCollapses, kEnrichedProof)), 0.03);
  EXPECT_NEAR(vigour(calledReady(proof, kEnrichedProof)), 0, 0.01);
  proof.hours /= 2;
  EXPECT_NEAR(vigour(poked(proof, Poke::kSpringsBack, kEnrichedProof)), 0, 0.03) << "no news so early";
  EXPECT_GT(vigour(calledReady(proof, kEnrichedProof)), 0.1);
}

TEST(CalibrationTest, APeakTellsTheVigour) {
  const Belief unsure = {{}, {.logVigour = 0.4, .placeKelvin = 0, .lag = 0}};
  for (double vigour : {0.75, 1.0, 1.35}) {
    const Stay stay = always(23);
    const Forecast truly =
        forecast(halfWholeLevain(), fed(2, 23, {.vigour = vigour}), 0, {&stay, 1}, kLevainStage);
    Observation jar{.kind = halfWholeLevain(),
                    .start = fed(2, 23),
                    .stays = {stay},
                    .hours = 30,
                    .seen = Seen::kPeakHours,
                    .value = truly.peakHour,
                    .spread = 0.1};
    const Belief after = *learn(unsure, {&jar, 1});
    EXPECT_NEAR(std::exp(after.mean.logVigour), vigour, 0.02 * vigour);
    EXPECT_LT(after.spread.logVigour, 0.05);
    jar.value = 31;
    EXPECT_FALSE(learn(unsure, {&jar, 1}).ok()) << "it peaked after it was last looked at";
  }
}

TEST(PlaceFitTest, TwoReadingsMoveTheProfileAndNarrowIt) {
  const TemperatureByHour believed = swinging(21, 2);
  const AirReading readings[] = {{9, believed.at(9) + 1.5}, {18, believed.at(18) + 1.7}};
  const PlaceFit fit = fitPlace(believed, readings);
  EXPECT_NEAR(fit.air.at(12) - believed.at(12), 1.6, 0.1);
  EXPECT_LT(fit.spread, kThermometerSpread);
  EXPECT_EQ(fitPlace(believed, {}).air, believed);
}

}  // namespace
}  // namespace suppertide::bread
