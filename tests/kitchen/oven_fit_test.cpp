#include "server/kitchen/oven_fit.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace suppertide::kitchen {
namespace {

std::vector<OvenReading> heatingOf(const ThermalCurve& curve, const std::vector<double>& minutes) {
  std::vector<OvenReading> readings;
  for (double minute : minutes) {
    readings.push_back({minute, temperatureAfter(curve, curve.roomCelsius, 1000, Door::kClosed, minute)});
  }
  return readings;
}

TEST(OvenFitTest, ThreeReadingsOfATrueCurveGiveItBack) {
  const ThermalCurve slow{.roomCelsius = 22, .maximumCelsius = 310, .heatMinutes = 24};
  const CurveFit fit = *fitHeating({}, heatingOf(slow, {0, 8, 17}));
  EXPECT_NEAR(fit.curve.heatMinutes, 24, 0.01);
  EXPECT_NEAR(fit.curve.maximumCelsius, 310, 0.1);
  EXPECT_LT(fit.residualAfter, 0.01);
  EXPECT_GT(fit.residualBefore, 20);
}

TEST(OvenFitTest, ManyNoisyReadingsComeNearTheTrueTimes) {
  for (unsigned seed = 1; seed <= 50; ++seed) {
    SCOPED_TRACE(testing::Message() << "seed " << seed);
    std::mt19937 random(seed);
    std::normal_distribution<double> noise(0, 2);
    const ThermalCurve oven{.roomCelsius = 22, .maximumCelsius = 330, .heatMinutes = 20};
    std::vector<OvenReading> readings = heatingOf(oven, {0, 3, 6, 9, 12, 15, 18});
    for (OvenReading& reading : readings) reading.celsius += noise(random);
    const CurveFit fit = *fitHeating({}, readings);
    EXPECT_LT(fit.residualAfter, 5);
    EXPECT_LT(fit.residualAfter, fit.residualBefore);
    EXPECT_NEAR(*minutesFromCold(fit.curve, 200), *minutesFromCold(oven, 200), 1.0);
  }
}

TEST(OvenFitTest, AStraightRiseIsFittedByALongApproach) {
  const CurveFit fit = *fitHeating({}, {{0, 20}, {5, 80}, {10, 140}, {15, 200}});
  EXPECT_LT(fit.residualAfter, 3);
  EXPECT_NEAR(*minutesBetween(fit.curve, 20, 200, Door::kClosed) - fit.curve.soakMinutes, 15, 0.5);
}

TEST(OvenFitTest, CoolingFitsTheDoorThatWasRead) {
  const CurveFit fit = *fitCooling({}, {{0, 200}, {10, 122}, {20, 78.2}}, Door::kAjar);
  EXPECT_NEAR(fit.curve.ajarMinutes, 17.3, 0.3);
  EXPECT_EQ(fit.curve.closedMinutes, ThermalCurve{}.closedMinutes);
  EXPECT_LT(fit.residualAfter, 1);
}

TEST(OvenFitTest, TheOrderOfReadingsDoesNotMatter) {
  const CurveFit one = *fitHeating({}, {{0, 20}, {5, 95}, {10, 150}});
  const CurveFit other = *fitHeating({}, {{10, 150}, {0, 20}, {5, 95}});
  EXPECT_EQ(one.curve.heatMinutes, other.curve.heatMinutes);
}

class ImpossibleHeating : public testing::TestWithParam<std::vector<OvenReading>> {};

TEST_P(ImpossibleHeating, IsRefused) {
  EXPECT_EQ(fitHeating({}, GetParam()).status().code(), absl::StatusCode::kInvalidArgument);
}

INSTANTIATE_TEST_SUITE_P(Readings, ImpossibleHeating,
                         testing::Values(std::vector<OvenReading>{{0, 20}, {5, 100}},            // too few
                                         std::vector<OvenReading>{{0, 20}, {5, 100}, {5, 110}},  // one minute
                                         std::vector<OvenReading>{{0, 20}, {5, 100}, {9, 90}},   // falls
                                         std::vector<OvenReading>{{0, 20}, {1, 120}, {9, 190}},  // too fast
                                         std::vector<OvenReading>{{0, 20}, {5, 100}, {9, 900}},  // no oven
                                         std::vector<OvenReading>{
                                             {0, 20}, {30, 25}, {34, 230}}));  // not one heating

TEST(OvenFitTest, CoolingBelowTheRoomOrWarmingIsRefused) {
  EXPECT_EQ(fitCooling({}, {{0, 200}, {90, 20}}, Door::kAjar).status().code(),
            absl::StatusCode::kInvalidArgument);
  EXPECT_FALSE(fitCooling({}, {{0, 150}, {10, 160}}, Door::kClosed).ok());
  EXPECT_FALSE(fitCooling({}, {{0, 150}}, Door::kClosed).ok());
}

TEST(OvenFitTest, OneMisreadThermometerIsLeftOutAndTold) {
  const ThermalCurve oven{.roomCelsius = 22, .maximumCelsius = 330, .heatMinutes = 20};
  std::vector<OvenReading> readings = heatingOf(oven, {0, 3, 6, 9, 12, 15, 18});
  readings[4].celsius -= 20;  // still above the one before
  const CurveFit fit = *fitHeating({}, readings);
  ASSERT_EQ(fit.readings.size(), readings.size());
  for (std::size_t i = 0; i < readings.size(); ++i) EXPECT_EQ(fit.readings[i].leftOut, i == 4) << i;
  EXPECT_NEAR(fit.curve.heatMinutes, 20, 0.1);
  EXPECT_LT(fit.residualAfter, 0.1);
  EXPECT_NEAR(fit.readings[4].after - readings[4].celsius, 20, 0.2);
}

TEST(OvenFitTest, NothingIsLeftOutOfFewReadingsOrOfHonestNoise) {
  const CurveFit few = *fitHeating({}, {{0, 20}, {5, 95}, {10, 150}, {15, 180}});
  for (const auto& reading : few.readings) EXPECT_FALSE(reading.leftOut);
  for (unsigned seed = 1; seed <= 50; ++seed) {
    std::mt19937 random(seed);
    std::normal_distribution<double> noise(0, 3);
    std::vector<OvenReading> readings = heatingOf({}, {0, 2, 4, 6, 8, 10, 12, 14});
    for (OvenReading& reading : readings) reading.celsius += noise(random);
    const CurveFit fit = *fitHeating({}, readings);
    int out = 0;
    for (const auto& reading : fit.readings) out += reading.leftOut ? 1 : 0;
    EXPECT_EQ(out, 0) << "seed " << seed;
  }
}

TEST(OvenFitTest, EveryImpossibleReadingIsNamed) {
  const auto faults = heatingFaults({{0, 20}, {5, 100}, {6, 700}, {8, 90}, {10, 150}, {10, 151}});
  ASSERT_EQ(faults.size(), 3U);
  EXPECT_EQ(faults[0].reading, 2);
  EXPECT_EQ(faults[1].reading, 3);
  EXPECT_EQ(faults[2].reading, 5);
  EXPECT_EQ(faults[1].why, "is not above the one before");
  EXPECT_EQ(coolingFaults(22, {{0, 200}, {10, 210}, {20, 21}}).size(), 2U);
}

TEST(OvenLearnTest, RisesPullTheCurveTowardsThemByTheirNumber) {
  const ThermalCurve prior;
  const ThermalCurve slow{.heatMinutes = 24};
  const double minutes = *minutesBetween(slow, 22, 200, Door::kClosed) - slow.soakMinutes;
  const auto learnt = [&](int count) {
    const std::vector<OvenRise> rises(static_cast<std::size_t>(count), {22, 200, minutes});
    return learnRises(prior, rises, 2)->curve.heatMinutes;
  };
  EXPECT_EQ(learnt(0), prior.heatMinutes);
  EXPECT_NEAR(learnt(2), std::sqrt(16 * 24), 0.01);
  EXPECT_GT(learnt(10), 22);
  EXPECT_LT(learnt(10), 24);
}

TEST(OvenLearnTest, ARiseThatNobodyWatchedIsLeftOut) {
  const double minutes = *minutesBetween({}, 22, 200, Door::kClosed) - ThermalCurve{}.soakMinutes;
  const CurveFit fit = *learnRises({}, {{22, 200, minutes}, {22, 200, 3 * minutes}, {22, 200, minutes}}, 2);
  EXPECT_TRUE(fit.readings[1].leftOut);
  EXPECT_FALSE(fit.readings[0].leftOut);
  EXPECT_NEAR(fit.curve.heatMinutes, ThermalCurve{}.heatMinutes, 1e-6);
}

TEST(OvenLearnTest, ImpossibleRisesAreRefused) {
  for (const OvenRise& rise : std::vector<OvenRise>{
           {22, 20, 5}, {22, 200, 0}, {22, 200, 1}, {22, 400, 30}, {22, 200, 500}, {-50, 200, 10}}) {
    EXPECT_FALSE(learnRises({}, {rise}, 2).ok()) << rise.toCelsius << " in " << rise.minutes;
    EXPECT_EQ(riseFaults({}, {{22, 180, 12}, rise}).front().reading, 1);
  }
}

TEST(LearnFallsTest, FallsWithTheDoorAjarCorrectItsConstant) {
  const ThermalCurve prior;
  std::vector<OvenRise> falls;
  for (const double from : {220.0, 200.0, 180.0})
    falls.push_back({from, 22 + (from - 22) * std::exp(-8.0 / 20), 8});
  const auto fit = learnFalls(prior, falls, 1);
  ASSERT_TRUE(fit.ok()) << fit.status();
  // Three falls against one usual curve: the geometric mean of 20, 20, 20 and the prior's 12.
  EXPECT_NEAR(fit->curve.ajarMinutes, std::pow(20.0 * 20 * 20 * prior.ajarMinutes, 0.25), 0.01);
  EXPECT_EQ(fit->curve.heatMinutes, prior.heatMinutes);
  EXPECT_LT(fit->residualAfter, fit->residualBefore);
}

TEST(LearnFallsTest, RefusesFallsThatNoOvenCanDo) {
  EXPECT_EQ(fallFaults({}, {{200, 210, 5}, {200, 15, 5}, {200, 100, 0}, {240, 100, 1}, {200, 150, 5}}).size(),
            4U);
  EXPECT_FALSE(learnFalls({}, {{200, 210, 5}}, 1).ok());
}

}  // namespace
}  // namespace suppertide::kitchen
