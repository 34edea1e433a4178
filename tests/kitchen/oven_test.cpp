#include "server/kitchen/oven.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace suppertide::kitchen {
namespace {

Oven largeOven() {
  return {.id = "large",
          .leastCelsius = 50,
          .mostCelsius = 275,
          .stepCelsius = 5,
          .clearHeightsMm = {80, 80, 80, 80},
          .shelfCount = 3,
          .shelfWidthMm = 450,
          .shelfDepthMm = 370,
          .litres = 70,
          .fan = true,
          .lightCelsius = 28,
          .curve = {}};
}

TEST(OvenCurveTest, DefaultPreheatLiesInTheUsualBands) {
  // Air times of electric 60-70 litre ovens; the soak comes on top.
  const ThermalCurve curve{.roomCelsius = 20};
  const auto air = [&](double to) { return *minutesFromCold(curve, to) - curve.soakMinutes; };
  EXPECT_GE(air(180), 8);
  EXPECT_LE(air(180), 12);
  EXPECT_GE(air(205), 10);
  EXPECT_LE(air(205), 15);
  EXPECT_GE(air(230), 13);
  EXPECT_LE(air(230), 18);
}

TEST(OvenCurveTest, CoolingFromTwoHundredToOneHundredTakesTenMinutesAjarAndAnHourClosed) {
  const ThermalCurve curve;
  EXPECT_NEAR(*minutesBetween(curve, 200, 100, Door::kAjar), 10, 1);
  EXPECT_GE(*minutesBetween(curve, 200, 100, Door::kClosed), 60);
}

TEST(OvenCurveTest, NothingToDoTakesNoTime) {
  EXPECT_EQ(*minutesBetween({}, 180, 180, Door::kClosed), 0);
}

TEST(OvenCurveTest, RefusesWhatTheOvenNeverReaches) {
  const ThermalCurve curve;
  EXPECT_EQ(minutesBetween(curve, 200, 360, Door::kClosed).status().code(), absl::StatusCode::kOutOfRange);
  EXPECT_EQ(minutesBetween(curve, 200, 22, Door::kAjar).status().code(), absl::StatusCode::kOutOfRange);
  EXPECT_FALSE(minutesFromCold(curve, 400).ok());
}

TEST(OvenCurveTest, StoneAndPotSoakLonger) {
  EXPECT_GT(*minutesFromCold({}, 240, HeavyWare::kStone), *minutesFromCold({}, 240) + 15);
  EXPECT_GT(*minutesFromCold({}, 240, HeavyWare::kHeavyPot), *minutesFromCold({}, 240) + 15);
}

TEST(OvenCurveTest, TheDrawnTemperatureAgreesWithTheMinutes) {
  const ThermalCurve curve;
  const double up = *minutesBetween(curve, 40, 200, Door::kClosed) - curve.soakMinutes;
  EXPECT_NEAR(temperatureAfter(curve, 40, 200, Door::kClosed, up), 200, 1e-6);
  EXPECT_LT(temperatureAfter(curve, 40, 200, Door::kClosed, up - 1), 199);
  const double down = *minutesBetween(curve, 230, 90, Door::kAjar);
  EXPECT_NEAR(temperatureAfter(curve, 230, std::nullopt, Door::kAjar, down), 90, 1e-6);
}

TEST(OvenCurveTest, AReachedSetpointIsHeldAndAnOvenThatIsOffEndsAtTheRoom) {
  const ThermalCurve curve;
  EXPECT_EQ(temperatureAfter(curve, 22, 180, Door::kClosed, 500), 180);
  EXPECT_EQ(temperatureAfter(curve, 230, 180, Door::kClosed, 500), 180);
  EXPECT_NEAR(temperatureAfter(curve, 230, std::nullopt, Door::kClosed, 5000), curve.roomCelsius, 1e-6);
  EXPECT_EQ(temperatureAfter(curve, 230, std::nullopt, Door::kClosed, 0), 230);
}

TEST(OvenDoorTest, AMinuteOpenCostsWhatWasMeasuredAndComesBackInAboutAMinute) {
  const ThermalCurve curve;
  EXPECT_NEAR(doorDropKelvin(curve, 177, 1), 56, 2);
  EXPECT_NEAR(doorRecoveryMinutes(curve, 177, 1, 0), 1, 0.1);
  EXPECT_EQ(doorDropKelvin(curve, 177, 0), 0);
}

TEST(OvenDoorTest, LoadedShelvesDelayTheRecovery) {
  const double one = doorRecoveryMinutes({}, 200, 0.5, 1) - doorRecoveryMinutes({}, 200, 0.5, 0);
  EXPECT_GE(one, 3);
  EXPECT_LE(one, 5);
}

TEST(OvenTest, TheDialKeepsItsStepsAndItsRange) {
  Oven oven = largeOven();
  EXPECT_EQ(nearestSetting(oven, 163), 165);
  EXPECT_EQ(nearestSetting(oven, 400), 275);
  EXPECT_EQ(nearestSetting(oven, 10), 50);
  oven.stepCelsius = 20;  // 50, 70, ... 270: the end of the range is off the steps
  EXPECT_EQ(nearestSetting(oven, 275), 270);
}

TEST(OvenTest, NamesWhatNoOvenHas) {
  Oven oven = largeOven();
  EXPECT_TRUE(check(oven).ok());
  oven.lightCelsius = 60;
  EXPECT_EQ(check(oven).code(), absl::StatusCode::kInvalidArgument);
  oven = largeOven();
  oven.clearHeightsMm = {80, 0};
  EXPECT_FALSE(check(oven).ok());
  oven = largeOven();
  oven.mostCelsius = 370;
  EXPECT_FALSE(check(oven).ok());
  oven = largeOven();
  oven.curve.ajarMinutes = 100;
  EXPECT_FALSE(check(oven).ok());
}

TEST(ChangeTableTest, ProofingAfterBakingCoolsAndSettlesFirst) {
  const ChangeTable table = *changeTable(largeOven(), {28, 180, 230});
  EXPECT_GT(table.change[2][0], table.change[1][0]);
  EXPECT_GE(table.change[1][0], 40);
  EXPECT_EQ(table.fromCold[0], 30);
  EXPECT_LT(table.change[0][1], 20);
}

TEST(ChangeTableTest, AClosedDoorCoolsMoreSlowly) {
  const int ajar = changeTable(largeOven(), {160, 230})->change[1][0];
  const int closed = changeTable(largeOven(), {160, 230}, Door::kClosed)->change[1][0];
  EXPECT_GT(closed, 5 * ajar);
}

TEST(ChangeTableTest, RefusesSetpointsThatAreNotOnTheDialOrDoNotAscend) {
  EXPECT_EQ(changeTable(largeOven(), {180, 180}).status().code(), absl::StatusCode::kInvalidArgument);
  EXPECT_FALSE(changeTable(largeOven(), {180, 300}).ok());
  EXPECT_FALSE(changeTable(largeOven(), {35, 180}).ok());
  Oven dark = largeOven();
  dark.lightCelsius.reset();
  EXPECT_FALSE(changeTable(dark, {28, 180}).ok());
}

TEST(ChangeTablePropertyTest, DetoursAreNeverShorterAndTheDiagonalIsZero) {
  for (unsigned seed = 1; seed <= 200; ++seed) {
    SCOPED_TRACE(testing::Message() << "seed " << seed);
    std::mt19937 random(seed);
    const auto between = [&](double low, double high) {
      return std::uniform_real_distribution<double>(low, high)(random);
    };
    Oven oven = largeOven();
    oven.curve = {.roomCelsius = between(12, 26),
                  .maximumCelsius = between(290, 900),
                  .heatMinutes = between(4, 90),
                  .soakMinutes = between(0, 15),
                  .closedMinutes = between(60, 150),
                  .ajarMinutes = between(6, 30)};
    std::vector<int> setpoints = {28};
    while (setpoints.size() < 7)
      setpoints.push_back(setpoints.back() + 25 + static_cast<int>(between(0, 14)));
    const Door door = seed % 2 == 0 ? Door::kAjar : Door::kClosed;
    const ChangeTable table = *changeTable(oven, setpoints, door);
    for (std::size_t a = 0; a < setpoints.size(); ++a) {
      EXPECT_EQ(table.change[a][a], 0);
      for (std::size_t b = 0; b < setpoints.size(); ++b) {
        EXPECT_EQ(table.change[a][b] > 0, a != b);
        for (std::size_t c = 0; c < setpoints.size(); ++c) {
          EXPECT_LE(table.change[a][c], table.change[a][b] + table.change[b][c]) << a << b << c;
        }
      }
    }
  }
}

}  // namespace
}  // namespace suppertide::kitchen
