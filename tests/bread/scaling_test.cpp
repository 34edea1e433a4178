#include "server/bread/scaling.h"

#include <gtest/gtest.h>

namespace suppertide::bread {
namespace {

TEST(ScalingTest, ATinOfTwoLitresTakesAboutAKilogram) {
  const PanSize tin{300, 110, 0, 60};  // 1.98 litres
  EXPECT_NEAR(tin.volumeMl(), 1980, 1e-9);
  EXPECT_NEAR(*doughForPan(tin, kPanMlPerGram), 943, 1);
  EXPECT_GT(*doughForPan(tin, panMlPerGram(0.8)), *doughForPan(tin, panMlPerGram(0.2)));
}

TEST(ScalingTest, ASheetWithoutWallsGoesByItsArea) {
  const auto dough = doughForPan({400, 300, 0, 0}, kPanMlPerGram);
  ASSERT_TRUE(dough.ok());
  EXPECT_NEAR(*dough, 720, 1e-9);
}

TEST(ScalingTest, ARoundPanHasItsDiameter) {
  EXPECT_NEAR(PanSize({0, 0, 200, 0}).areaCm2(), 314.159, 1e-3);
}

TEST(ScalingTest, RefusesAPanWithoutASize) {
  EXPECT_FALSE(doughForPan({}, 2).ok());
  EXPECT_FALSE(doughForPan({300, 0, 0, 60}, 2).ok());
  EXPECT_FALSE(doughForPan({300, 110, 0, -5}, 2).ok());
  EXPECT_FALSE(doughForPan({300, 110, 0, 60}, 0).ok());
}

TEST(ScalingTest, GuestsGetWholePieces) {
  EXPECT_EQ(piecesForGuests(24, 14, 14), 24);
  EXPECT_EQ(piecesForGuests(24, 14, 10), 18);
  EXPECT_EQ(piecesForGuests(2, 8, 1), 1);
  EXPECT_EQ(piecesForGuests(12, 6, 3), 6);
}

}  // namespace
}  // namespace suppertide::bread
