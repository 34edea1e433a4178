#include "server/base/interval.h"

#include <gtest/gtest.h>

namespace suppertide {
namespace {

using Span = Interval<int>;

TEST(IntervalTest, DoesNotContainItsLimit) {
  EXPECT_TRUE((Span{5, 9}.contains(5)));
  EXPECT_FALSE((Span{5, 9}.contains(9)));
}

TEST(IntervalTest, SpansThatTouchDoNotOverlap) {
  EXPECT_FALSE((Span{5, 9}.overlaps({9, 12})));
  EXPECT_TRUE((Span{5, 9}.overlaps({8, 12})));
}

TEST(IntervalTest, IsEmptyWhenItsLimitIsNotAfterItsStart) {
  EXPECT_TRUE((Span{5, 5}.empty()));
  EXPECT_TRUE((Span{6, 5}.empty()));
  EXPECT_TRUE((Span{1, 4}.intersect({4, 9}).empty()));
}

TEST(IntervalTest, IntersectsToWhatBothHave) {
  EXPECT_EQ((Span{1, 6}.intersect({4, 9})), (Span{4, 6}));
}

}  // namespace
}  // namespace suppertide
