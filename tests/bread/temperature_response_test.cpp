#include "server/bread/temperature_response.h"

#include <gtest/gtest.h>

namespace suppertide::bread {
namespace {

TEST(TemperatureResponseTest, ActivityIsTheGrowthCurveOverItsMaximum) {
  for (double celsius = -2; celsius < 40; celsius += 0.25) {
    EXPECT_NEAR(sourdoughYeastActivity(celsius) * kSourdoughYeastBestRate, kSourdoughYeast.rate(celsius),
                2e-5)
        << celsius;
  }
}

TEST(TemperatureResponseTest, BakersYeastStopsOutsideItsRange) {
  EXPECT_EQ(kBakersYeast.rate(3), 0);
  EXPECT_EQ(kBakersYeast.rate(2), 0);
  EXPECT_EQ(kBakersYeast.rate(46), 0);
  EXPECT_EQ(kBakersYeast.rate(60), 0);
  EXPECT_DOUBLE_EQ(kBakersYeast.rate(37), 1);
}

TEST(TemperatureResponseTest, WarmerWaterHoldsLess) {
  for (double celsius = 1; celsius < 35; ++celsius) {
    EXPECT_GT(carbonDioxideHeld(celsius), carbonDioxideHeld(celsius + 1));
  }
}

}  // namespace
}  // namespace suppertide::bread
