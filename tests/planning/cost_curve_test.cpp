#include "server/planning/model/cost_curve.h"

#include "gtest/gtest.h"

namespace suppertide::planning {
namespace {

TEST(CostCurveTest, CostsNothingWithoutKnots) {
  EXPECT_EQ(CostCurve{}.at(100), 0);
}

TEST(CostCurveTest, IsLevelOutsideItsKnots) {
  const CostCurve curve{{{10, 3}, {20, 8}}};
  EXPECT_EQ(curve.at(-5), 3);
  EXPECT_EQ(curve.at(10), 3);
  EXPECT_EQ(curve.at(20), 8);
  EXPECT_EQ(curve.at(1000), 8);
}

TEST(CostCurveTest, RunsStraightBetweenKnotsRoundedDown) {
  const CostCurve curve{{{0, 0}, {10, 5}, {20, 0}}};
  EXPECT_EQ(curve.at(4), 2);
  EXPECT_EQ(curve.at(5), 2);   // 2.5
  EXPECT_EQ(curve.at(13), 3);  // 3.5
  EXPECT_EQ(curve.at(14), 3);
}

TEST(CostCurveTest, RoundsDownAlsoBelowNothing) {
  const CostCurve curve{{{0, 0}, {10, -5}}};
  EXPECT_EQ(curve.at(1), -1);  // -0.5
}

}  // namespace
}  // namespace suppertide::planning
