#include "server/kitchen/bake_tolerance.h"

#include <gtest/gtest.h>

#include <cmath>

#include "server/kitchen/conduction.h"

namespace suppertide::kitchen {
namespace {

Bake gratin() {
  return {.bakeClass = BakeClass::kCasserole,
          .setpointCelsius = 180,
          .minutes = 60,
          .startCelsius = 20,
          .endCelsius = 85,
          .thicknessMm = std::nullopt,
          .leastCelsius = std::nullopt,
          .mostCelsius = std::nullopt};
}

TEST(BakeToleranceTest, AtItsOwnSetpointADishTakesItsOwnTime) {
  const BakeTime time = *bakeTimeAt(gratin(), 180);
  EXPECT_DOUBLE_EQ(time.likely, 60);
  EXPECT_DOUBLE_EQ(time.checkFrom, 54);
  EXPECT_DOUBLE_EQ(time.atMost, 66);
}

TEST(BakeToleranceTest, AHotterOvenIsFasterAndACoolerOneSlower) {
  double before = 1e9;
  for (double setpoint = 150; setpoint <= 220; setpoint += 5) {
    const BakeTime time = *bakeTimeAt(gratin(), setpoint);
    EXPECT_LT(time.likely, before);
    EXPECT_LE(time.checkFrom, time.likely);
    EXPECT_LE(time.likely, time.atMost);
    before = time.likely;
  }
}

TEST(BakeToleranceTest, ThinThingsGainMoreFromAHotterOvenThanThickOnes) {
  Bake thin = gratin();
  thin.thicknessMm = 8;
  Bake thick = gratin();
  thick.thicknessMm = 150;
  EXPECT_LT(bakeTimeAt(thin, 200)->likely, bakeTimeAt(thick, 200)->likely);
  EXPECT_GT(bakeTimeAt(thin, 160)->likely, bakeTimeAt(thick, 160)->likely);
}

TEST(BakeToleranceTest, LikelyStaysBetweenTheTwoBoundsForEveryThickness) {
  for (double thickness : {2.0, 10.0, 40.0, 120.0, 1000.0}) {
    Bake roast = gratin();
    roast.bakeClass = BakeClass::kRoast;
    roast.thicknessMm = thickness;
    const double lumped = 60 * *timeRatio(Shape::kSphere, 0, 180, 200, 20, 85);
    const double sphere = 60 * *timeRatio(Shape::kSphere, INFINITY, 180, 200, 20, 85);
    const BakeTime time = *bakeTimeAt(roast, 200);
    EXPECT_GE(time.likely, lumped);
    EXPECT_LE(time.likely, sphere);
    EXPECT_NEAR(time.checkFrom, lumped * 0.9, 1e-9);
    EXPECT_NEAR(time.atMost, sphere * 1.1, 1e-9);
  }
}

TEST(BakeToleranceTest, DelicateBakesAcceptLessThanCasseroles) {
  Bake bread = gratin();
  bread.bakeClass = BakeClass::kYeastBread;
  EXPECT_DOUBLE_EQ(allowedSetpoints(bread).mostCelsius, 194);
  EXPECT_DOUBLE_EQ(allowedSetpoints(gratin()).leastCelsius, 152);
}

TEST(BakeToleranceTest, TheRecipesOwnRangeWinsButNeverReachesItsEndTemperature) {
  Bake bake = gratin();
  bake.leastCelsius = 80;
  bake.mostCelsius = 185;
  EXPECT_DOUBLE_EQ(allowedSetpoints(bake).mostCelsius, 185);
  EXPECT_DOUBLE_EQ(allowedSetpoints(bake).leastCelsius, 90);
}

TEST(BakeToleranceTest, RefusesAnOvenThatNeverBringsItThere) {
  EXPECT_EQ(bakeTimeAt(gratin(), 85).status().code(), absl::StatusCode::kOutOfRange);
  Bake none = gratin();
  none.minutes = 0;
  EXPECT_EQ(bakeTimeAt(none, 180).status().code(), absl::StatusCode::kInvalidArgument);
  Bake backwards = gratin();
  backwards.startCelsius = 90;
  EXPECT_EQ(bakeTimeAt(backwards, 180).status().code(), absl::StatusCode::kInvalidArgument);
}

TEST(BakeToleranceTest, AFanLowersTheSettingOnlyWhenTheRecipeHadNone) {
  EXPECT_EQ(fanCorrected(200, false, true), 180);
  EXPECT_EQ(fanCorrected(200, true, true), 200);
  EXPECT_EQ(fanCorrected(180, true, false), 200);
}

TEST(BakeToleranceTest, DegreesOffCountBothWays) {
  EXPECT_EQ(degreesOff(gratin(), 170), 10);
  EXPECT_EQ(degreesOff(gratin(), 195), 15);
}

TEST(ConductionTest, RootsSolveTheirSurfaceConditions) {
  for (double biot = 0.05; biot < 200; biot *= 1.7) {
    const FirstTerm slab = firstTerm(Shape::kSlab, biot);
    EXPECT_NEAR(slab.zeta * std::tan(slab.zeta), biot, 1e-6 * biot * (1 + biot));
    const FirstTerm sphere = firstTerm(Shape::kSphere, biot);
    EXPECT_NEAR(1 - sphere.zeta / std::tan(sphere.zeta), biot, 1e-6 * biot * (1 + biot));
  }
}

}  // namespace
}  // namespace suppertide::kitchen
