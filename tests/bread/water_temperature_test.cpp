#include "server/bread/water_temperature.h"

#include <gtest/gtest.h>

#include <cmath>

namespace suppertide::bread {
namespace {

TEST(WaterTemperatureTest, BalanceGivesTheWantedDough) {
  const std::vector<MixPart> others = {
      {"flour", 405, 20, 0.14}, {"levain", 190, 26, 0.57}, {"egg", 75, 6, 0.75}};
  const auto plan = *waterByHeatBalance(others, 195, 26, 2, 21, 0.1);
  auto parts = others;
  parts.push_back({"water", 195, plan.celsius, 1});
  EXPECT_NEAR(mixedCelsius(parts, 2, 21, 0.1), 26, 1e-9);
}

TEST(WaterTemperatureTest, RuleAndBalanceWithTheRulesLossAgree) {
  double worst = 0;
  for (double hydration = 0.55; hydration <= 0.751; hydration += 0.05) {
    for (double flour = 15; flour <= 28; ++flour) {
      for (double room = 15; room <= 28; ++room) {
        for (double wanted = 22; wanted <= 28; ++wanted) {
          const double water = waterByThreeFactors(wanted, room, flour, 3 * 1.0);
          const double dough = mixedCelsius(
              {{"flour", 100, flour, 0.14}, {"water", 100 * hydration, water, 1}}, 1.0, room, kRuleLossShare);
          worst = std::max(worst, std::abs(dough - wanted));
        }
      }
    }
  }
  EXPECT_LT(worst, kRuleAgreesKelvin);
  EXPECT_GT(worst, kRuleAgreesKelvin / 3) << "the stated bound is far too wide";
}

TEST(WaterTemperatureTest, AsksForIceThatGivesTheSameHeat) {
  const WaterPlan plan = planWater(-6, 300);
  ASSERT_GT(plan.iceGrams, 0);
  EXPECT_TRUE(plan.iceIsEnough);
  const double heat =
      (300 - plan.iceGrams) * 4.18 * plan.waterCelsius - plan.iceGrams * 334.0;  // over water at 0
  EXPECT_NEAR(heat, 300 * 4.18 * -6, 1e-6);
}

TEST(WaterTemperatureTest, NeedsNoIceWhileTapOrFridgeWillDo) {
  EXPECT_EQ(planWater(kColdestWaterCelsius, 300).iceGrams, 0);
  EXPECT_EQ(planWater(18, 300).waterCelsius, 18);
}

TEST(WaterTemperatureTest, SaysWhenEvenAllIceIsNotEnough) {
  const WaterPlan plan = planWater(-100, 300);
  EXPECT_FALSE(plan.iceIsEnough);
  EXPECT_EQ(plan.iceGrams, 300);
}

TEST(WaterTemperatureTest, WarnsAboveWhatYeastStands) {
  EXPECT_FALSE(planWater(kWarmestWaterForYeastCelsius, 300).harmsYeast);
  EXPECT_TRUE(planWater(kWarmestWaterForYeastCelsius + 0.1, 300).harmsYeast);
}

TEST(WaterTemperatureTest, RefusesMassesThatAreNoMasses) {
  EXPECT_FALSE(waterByHeatBalance({{"flour", 0, 20, 0.14}}, 100, 26, 0).ok());
  EXPECT_FALSE(waterByHeatBalance({{"flour", 100, 20, 0.14}}, -1, 26, 0).ok());
  EXPECT_FALSE(waterByHeatBalance({{"flour", 100, 20, 0.14}}, 60, 26, 0, 20, 1).ok());
  EXPECT_FALSE(waterByHeatBalance({{"flour", 100, 20, 0.14}}, 60, std::nan(""), 0).ok());
}

}  // namespace
}  // namespace suppertide::bread
