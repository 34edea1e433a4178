#include "server/bread/baking.h"

#include <gtest/gtest.h>

#include <cmath>

namespace suppertide::bread {
namespace {

TEST(BakingTest, ScalesTheBakeByMassAndWarnsOutsideItsRange) {
  EXPECT_DOUBLE_EQ(bakeTime(20, 0.06, 0.06)->minutes, 20);
  EXPECT_NEAR(bakeTime(20, 0.06, 0.12)->minutes, 20 * std::pow(2, 0.35), 1e-12);
  EXPECT_FALSE(bakeTime(20, 0.06, 1.0)->outsideRange);
  EXPECT_TRUE(bakeTime(20, 0.06, 1.2)->outsideRange);
  EXPECT_TRUE(bakeTime(20, 0.03, 0.06)->outsideRange);
  EXPECT_FALSE(bakeTime(20, 0, 1).ok());
}

TEST(BakingTest, EnrichedCrumbIsDoneCooler) {
  EXPECT_LT(coreEndCelsius(CrumbClass::kEnriched).start, coreEndCelsius(CrumbClass::kLean).start);
}

TEST(BakingTest, CoolsAtLeastAFewMinutesAndALoafAnHour) {
  EXPECT_EQ(leastCoolingMinutes(0.005), 5);
  EXPECT_NEAR(leastCoolingMinutes(0.05), 10, 1e-9);
  EXPECT_NEAR(leastCoolingMinutes(0.75), 60, 2);
  EXPECT_EQ(leastCoolingMinutes(20), 120);
}

TEST(BakingTest, FreshnessFallsFasterInTheFridge) {
  EXPECT_EQ(freshness(0, 21), 1);
  EXPECT_NEAR(freshness(84, 21), std::exp(-1), 1e-12);
  EXPECT_NEAR(freshness(36, 0), std::exp(-1), 1e-12);
  EXPECT_LT(freshness(12, 4), freshness(12, 21));
  EXPECT_EQ(freshness(12, 32), freshness(12, 50));
}

TEST(BakingTest, TheUsualBakeHoldsTheCardsItComesFrom) {
  const auto roll = usualBake(0.055, CrumbClass::kEnriched);
  ASSERT_TRUE(roll.ok());
  EXPECT_LT(roll->minutes.start, 15);  // the institutional roll at 204 degrees
  EXPECT_GE(roll->minutes.limit, 25);  // crowded in its pan at 191
  EXPECT_EQ(roll->setpointCelsius, 205);
  const auto loaf = usualBake(0.765, CrumbClass::kLean);
  ASSERT_TRUE(loaf.ok());
  EXPECT_LT(loaf->minutes.start, 35);  // army card, 35 to 40 min
  EXPECT_GT(loaf->minutes.limit, 40);
  EXPECT_FALSE(loaf->outsideRange);
  EXPECT_TRUE(usualBake(3, CrumbClass::kLean)->outsideRange);
  EXPECT_FALSE(usualBake(0, CrumbClass::kLean).ok());
}

TEST(BakingTest, RangesOfCoolingFreshnessAndWarmingAgain) {
  EXPECT_NEAR(coolingMinutes(0.05).start, 10, 1e-9);
  EXPECT_NEAR(coolingMinutes(0.05).limit, 20, 1e-9);
  EXPECT_NEAR(freshness(freshHours().start, 21), std::exp(-freshHours().start / 84), 1e-9);
  EXPECT_GT(freshHours().start, 24);
  EXPECT_LT(freshHours().limit, 36);
  EXPECT_NEAR(refreshMinutes(0.05).start, 5, 1e-9);
  EXPECT_GT(refreshMinutes(0.75).limit, refreshMinutes(0.05).limit);
}

TEST(BakingTest, SteamStaysAQuarterHourButHalfTheBakeAtMost) {
  EXPECT_EQ(usualSteamMinutes(45), 15);
  EXPECT_EQ(usualSteamMinutes(18), 9);
}

}  // namespace
}  // namespace suppertide::bread
