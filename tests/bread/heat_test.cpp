#include "server/bread/heat.h"

#include <gtest/gtest.h>

#include <limits>

namespace suppertide::bread {
namespace {

TEST(LumpTest, WarmsSlowerWhenHeavierAndFasterInMovedAir) {
  EXPECT_GT(Lump{.kilograms = 2}.timeConstantHours(kStillAir),
            Lump{.kilograms = 1}.timeConstantHours(kStillAir));
  EXPECT_GT(Lump{.kilograms = 1}.timeConstantHours(kStillAir),
            Lump{.kilograms = 1}.timeConstantHours(kMovedAir));
}

TEST(LumpTest, FollowsARampAsSmallEulerStepsDo) {
  const double tau = 1.7, slope = 1.5;
  double celsius = 28;
  const int steps = 200000;
  const double hours = 5;
  for (int i = 0; i < steps; ++i) {
    const double time = hours * (i + 0.5) / steps;
    celsius += hours / steps * (4 + slope * time - celsius) / tau;
  }
  EXPECT_NEAR(lumpAfter(28, 4, slope, tau, hours), celsius, 1e-3);
}

TEST(LumpTest, KeepsItsTemperatureWithoutExchangeAndTakesTheAirsWithoutMass) {
  EXPECT_EQ(lumpAfter(28, 4, 0, std::numeric_limits<double>::infinity(), 3), 28);
  EXPECT_EQ(lumpAfter(28, 4, 1, 0, 3), 7);
}

TEST(LumpTest, TwoHalvesOfATimeAreTheWhole) {
  const double half = lumpAfter(28, 10, 0.5, 2, 1.5);
  EXPECT_NEAR(lumpAfter(half, 10.75, 0.5, 2, 1.5), lumpAfter(28, 10, 0.5, 2, 3), 1e-12);
}

}  // namespace
}  // namespace suppertide::bread
