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

}  // namespace
}  // namespace suppertide::bread
