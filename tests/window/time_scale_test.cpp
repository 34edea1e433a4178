#include "client/timeline/time_scale.h"

#include <gtest/gtest.h>

namespace suppertide {
namespace {

TEST(TimeScaleTest, MapsMinutesToPixelsAndBack) {
  struct Row {
    double left, pixelsPerMinute, minute, x;
  };
  for (const Row& row : {Row{0, 2, 0, 0}, Row{0, 2, 30, 60}, Row{60, 2, 30, -60}, Row{-10, 0.5, 10, 10},
                         Row{1440, 64, 1441.5, 96}}) {
    const TimeScale scale(row.left, row.pixelsPerMinute);
    EXPECT_DOUBLE_EQ(scale.toX(row.minute), row.x);
    EXPECT_DOUBLE_EQ(scale.toMinute(row.x), row.minute);
  }
}

TEST(TimeScaleTest, ZoomKeepsTheMinuteUnderTheAnchor) {
  const TimeScale scale(100, 2);
  for (const double factor : {0.25, 0.5, 1.0, 3.0, 16.0}) {
    for (const double anchor : {0.0, 300.0, 1280.0})
      EXPECT_NEAR(scale.zoomed(factor, anchor).toMinute(anchor), scale.toMinute(anchor), 1e-9)
          << "factor " << factor << " at " << anchor;
  }
}

TEST(TimeScaleTest, ZoomStopsAtTwentyMinutesAndAtTheLongestSpan) {
  const double width = 1280;
  const TimeScale hour(0, width / 60);
  EXPECT_NEAR(hour.zoomedWithin(100, 640, width, 5760).span(width), 20, 1e-9);
  EXPECT_NEAR(hour.zoomedWithin(0.001, 640, width, 5760).span(width), 5760, 1e-9);
  EXPECT_NEAR(hour.zoomedWithin(2, 640, width, 5760).span(width), 30, 1e-9);
  const TimeScale shut(0, width / 20);
  EXPECT_NEAR(shut.zoomedWithin(2, 0, width, 5760).left(), 0, 1e-9) << "at the limit nothing moves";
}

TEST(TimeScaleTest, FittingShowsAllOfASpanWithRoomAtBothSides) {
  const TimeScale scale = TimeScale::fitting(600, 1800, 1000);
  EXPECT_GT(scale.toX(600), 20);
  EXPECT_LT(scale.toX(1800), 900) << "the last words need room";
  EXPECT_GE(TimeScale::fitting(5, 5, 1000).span(1000), TimeScale::kShortestSpan) << "a span of no length";
}

TEST(TimeScaleTest, PanningMovesByPixels) {
  EXPECT_DOUBLE_EQ(TimeScale(0, 4).panned(100).left(), 25);
  EXPECT_DOUBLE_EQ(TimeScale(0, 4).panned(-100).left(), -25);
}

TEST(TimeScaleTest, KeepsItsMiddleNearThePlan) {
  const TimeScale scale(5000, 1);
  EXPECT_DOUBLE_EQ(scale.keptNear(0, 1000, 400).left(), 800);
  EXPECT_DOUBLE_EQ(TimeScale(-900, 1).keptNear(0, 1000, 400).left(), -200);
  EXPECT_DOUBLE_EQ(TimeScale(300, 1).keptNear(0, 1000, 400).left(), 300) << "inside nothing moves";
}

TEST(TimeScaleTest, RevealsASpanWithTheLeastMove) {
  const TimeScale scale(100, 1);  // shows 100 to 500
  EXPECT_EQ(scale.revealing(200, 300, 400), scale);
  EXPECT_DOUBLE_EQ(scale.revealing(50, 80, 400).left(), 26) << "to the left, with a margin";
  EXPECT_DOUBLE_EQ(scale.revealing(490, 520, 400).left(), 144) << "to the right";
  EXPECT_DOUBLE_EQ(scale.revealing(600, 2000, 400).left(), 576) << "too long: its start";
}

}  // namespace
}  // namespace suppertide
