#include "server/bread/levain_build.h"

#include <gtest/gtest.h>

#include <cmath>

namespace suppertide::bread {
namespace {

TEST(LevainBuildTest, MakesMoreThanIsWantedByWhatSticksToTheJar) {
  const auto build = *buildLevain(180, {1, 2, 2});
  EXPECT_NEAR(build.totalGrams, 200, 1e-9);
  EXPECT_NEAR(build.starterGrams, 40, 1e-9);
  EXPECT_NEAR(build.flourGrams, 80, 1e-9);
  EXPECT_NEAR(build.waterGrams, 80, 1e-9);
  EXPECT_NEAR(build.hydration, 1, 1e-12);
}

TEST(LevainBuildTest, KnowsTheInoculationOfAStiffStarter) {
  EXPECT_NEAR((LevainRatio{1, 2, 2}.inoculation(0.5)), (1 / 1.5) / (1 / 1.5 + 2), 1e-12);
  EXPECT_NEAR((LevainRatio{1, 2, 1}.hydration(0.5)), (1 / 3.0 + 1) / (2 / 3.0 + 2), 1e-12);
}

TEST(LevainBuildTest, RefusesWhatCannotBeWeighed) {
  EXPECT_FALSE(buildLevain(0, {}).ok());
  EXPECT_FALSE(buildLevain(100, {0, 1, 1}).ok());
  EXPECT_FALSE(buildLevain(100, {1, 1, -1}).ok());
  EXPECT_FALSE(buildLevain(100, {}, 1, 1).ok());
  EXPECT_FALSE(buildLevain(std::nan(""), {}).ok());
}

}  // namespace
}  // namespace suppertide::bread
