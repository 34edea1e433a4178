#include "server/base/timer.h"

#include <gtest/gtest.h>

#include <chrono>
#include <future>

namespace suppertide {
namespace {

using std::chrono::seconds;

TEST(TimerTest, CallsWhenTheClockIsSetToItsMoment) {
  ManualClock clock(Instant(seconds(100)));
  std::promise<Instant> called;
  Timer timer(clock, [&] { called.set_value(clock.now()); });
  timer.set(Instant(seconds(160)));
  clock.advance(seconds(59));
  clock.advance(seconds(1));
  EXPECT_EQ(called.get_future().get(), Instant(seconds(160)));
}

TEST(TimerTest, AMomentInThePastIsDueAtOnce) {
  ManualClock clock(Instant(seconds(100)));
  std::promise<void> called;
  Timer timer(clock, [&] { called.set_value(); });
  timer.set(Instant(seconds(1)));
  called.get_future().get();
}

TEST(TimerTest, AnotherMomentTakesThePlaceOfTheOneBefore) {
  ManualClock clock(Instant(seconds(0)));
  std::promise<Instant> called;  // a second call would throw
  Timer timer(clock, [&] { called.set_value(clock.now()); });
  timer.set(Instant(seconds(10)));
  timer.set(Instant(seconds(20)));
  clock.set(Instant(seconds(15)));
  clock.set(Instant(seconds(20)));
  EXPECT_EQ(called.get_future().get(), Instant(seconds(20)));
}

TEST(TimerTest, WithTheMachinesClockItIsDueWithinASecond) {
  const SystemClock clock;
  std::promise<std::chrono::system_clock::time_point> called;
  Timer timer(clock, [&] { called.set_value(std::chrono::system_clock::now()); });
  const Instant when = clock.now() + seconds(1);
  timer.set(when);
  const auto late = called.get_future().get() - when;
  EXPECT_GE(late, seconds(0));
  EXPECT_LT(late, seconds(1));
}

TEST(TimerTest, EndsWhileItWaits) {
  ManualClock clock(Instant(seconds(0)));
  Timer timer(clock, [] { FAIL(); });
  timer.set(Instant(seconds(1000)));
}

}  // namespace
}  // namespace suppertide
