#include "server/base/clock.h"

#include <gtest/gtest.h>

namespace suppertide {
namespace {

using std::chrono::seconds;

TEST(ManualClockTest, StandsStillUntilTold) {
  ManualClock clock(Instant(seconds(100)));
  EXPECT_EQ(clock.now(), Instant(seconds(100)));
  clock.advance(seconds(7));
  EXPECT_EQ(clock.now(), Instant(seconds(107)));
  clock.set(Instant(seconds(3)));
  EXPECT_EQ(clock.now(), Instant(seconds(3)));
}

TEST(SystemClockTest, DoesNotGoBack) {
  const SystemClock clock;
  const Instant first = clock.now();
  EXPECT_GE(clock.now(), first);
}

}  // namespace
}  // namespace suppertide
