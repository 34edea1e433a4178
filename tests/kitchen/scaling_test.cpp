#include "server/kitchen/scaling.h"

#include <gtest/gtest.h>

namespace suppertide::kitchen {
namespace {

TEST(ScalingTest, TakesWholeEggsAndAtLeastOne) {
  EXPECT_EQ(wholePieces("eggs", 4.3), 4);
  EXPECT_EQ(wholePieces("eggs", 0.2), 1);
  EXPECT_EQ(wholePieces("packets of dry yeast", 1.6), 2);
  EXPECT_EQ(wholePieces("egg yolks", 1.3), 1.5);
  EXPECT_EQ(wholePieces("lemon", 0.6), 0.5);
  EXPECT_EQ(wholePieces("eggs", 0), 0);
}

TEST(ScalingTest, TakesHalfPacketsOnlyWhereTheyAreNear) {
  EXPECT_EQ(halfPackets(480, 250), 2);
  EXPECT_EQ(halfPackets(370, 250), 1.5);
  EXPECT_EQ(halfPackets(320, 250), 0);
  EXPECT_EQ(halfPackets(20, 250), 0);
}

TEST(ScalingTest, SpansTheTimeOfAPieceBetweenItsTwoBounds) {
  const BakeMinutes twice = minutesAtMass(30, 2);
  EXPECT_NEAR(twice.least, 37.8, 0.01);
  EXPECT_NEAR(twice.most, 47.62, 0.01);  // TURKEY-P: mass doubled, same shape, times 1.5874
  const BakeMinutes half = minutesAtMass(30, 0.5);
  EXPECT_LT(half.least, half.most);
  EXPECT_LT(half.most, 30);
  EXPECT_EQ(minutesAtMass(30, 1).least, 30);
}

TEST(ScalingTest, NeverShortensALargerRoast) {
  EXPECT_EQ(minutesOfRoast(200, 1.5).least, 200);
  EXPECT_EQ(minutesOfRoast(200, 0.5).most, 200);
  EXPECT_LT(minutesAtDepth(60, 0.5).least, minutesAtDepth(60, 0.5).most);
}

Oven oven() {
  Oven oven;
  oven.clearHeightsMm = {100, 100, 100};
  oven.shelfWidthMm = 450;
  oven.shelfDepthMm = 370;
  return oven;
}

TEST(ScalingTest, CountsLoadsByWhatFitsAtOnce) {
  const Pan sheet{440, 360, 60, 1};
  EXPECT_EQ(loadsOf(oven(), sheet, 3).count, 1);
  EXPECT_EQ(loadsOf(oven(), sheet, 4).count, 2);
  EXPECT_EQ(loadsOf(oven(), {460, 380, 60, 1}, 1).count, 0) << "too wide";
  EXPECT_EQ(loadsOf(oven(), {100, 100, 60, 1}, 40).count, 4) << "twelve pans at once are the most";
}

}  // namespace
}  // namespace suppertide::kitchen
