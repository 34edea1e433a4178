#include "server/bread/mix_learning.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>
#include <vector>

#include "server/bread/water_temperature.h"

namespace suppertide::bread {
namespace {

TEST(MixLearningTest, NothingMeasuredCorrectsNothing) {
  const MixCorrection none = learnMixing({});
  EXPECT_EQ(none.kelvin, 0);
  EXPECT_EQ(none.spread, kMixPriorSpread);
}

TEST(MixLearningTest, OneReadingCorrectsMostOfItsMissAndMoreReadingsMore) {
  const double miss = 2;
  const std::vector<double> one = {miss}, four(4, miss);
  EXPECT_GT(learnMixing(one).kelvin, 1.5);
  EXPECT_LT(learnMixing(one).kelvin, miss);
  EXPECT_GT(learnMixing(four).kelvin, learnMixing(one).kelvin);
  EXPECT_LT(learnMixing(four).spread, learnMixing(one).spread);
}

TEST(MixLearningTest, FrictionOfATestBatchIsTheRulesOwn) {
  // US Navy manual: room 72, flour 68, water 80, mixed 80.
  EXPECT_NEAR(frictionOf({72, 68, 80, 0, 80}, false), 20, 1e-12);
  EXPECT_NEAR(frictionOf({71, 71, 67, 71, 75}, true), 20, 1e-12);
}

// A kitchen whose bowl takes heat and whose mixer gives more than believed: after five mixings, each with the
// water that the balance asks for, the dough comes out right though nobody told either.
TEST(MixLearningTest, TheBalanceComesRightByReadings) {
  int near = 0;
  for (std::uint64_t seed = 1; seed <= 200; ++seed) {
    std::mt19937_64 random(seed);
    std::normal_distribution<double> normal;
    const double trueRise = 4 + 1.5 * normal(random);
    std::vector<double> misses;
    double miss = 0;
    for (int mixing = 0; mixing < 6; ++mixing) {
      const double room = 20 + 2 * normal(random);
      const std::vector<MixPart> flour = {{"flour", 1000, room, 0}};
      const double correction = learnMixing(misses).kelvin;
      const auto plan = waterByHeatBalance(flour, 650, 25, 4 + correction, room);
      ASSERT_TRUE(plan.ok());
      auto parts = flour;
      parts.push_back({"water", 650, plan->waterCelsius, 1});
      const double measured = mixedCelsius(parts, trueRise, room) + 0.5 * normal(random);
      miss = measured - 25;
      misses.push_back(measured - mixedCelsius(parts, 4, room));
    }
    near += std::abs(miss) < 1.5 ? 1 : 0;
  }
  EXPECT_GE(near, 190);
}

}  // namespace
}  // namespace suppertide::bread
