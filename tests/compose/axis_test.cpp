#include "server/compose/axis.h"

#include <gtest/gtest.h>

namespace suppertide::compose {
namespace {

TimeAxis axisFrom(const char* zone, std::int64_t seconds) {
  absl::TimeZone loaded;
  EXPECT_TRUE(absl::LoadTimeZone(zone, &loaded));
  google::protobuf::Timestamp origin;
  origin.set_seconds(seconds);
  return TimeAxis(origin, loaded);
}

std::int64_t at(const char* text) {
  absl::Time time;
  std::string error;
  EXPECT_TRUE(absl::ParseTime(absl::RFC3339_full, text, &time, &error)) << error;
  return absl::ToUnixSeconds(time);
}

TEST(TimeAxisTest, StartsAtTheFiveMinutesBeforeItsOrigin) {
  const TimeAxis axis = axisFrom("UTC", at("2027-03-05T08:03:20Z"));
  EXPECT_EQ(axis.timeOf(0).seconds(), at("2027-03-05T08:00:00Z"));
}

TEST(TimeAxisTest, GoesThereAndBack) {
  const TimeAxis axis = axisFrom("Asia/Kolkata", at("2027-03-05T00:00:00Z"));
  for (const int minute : {0, 5, 999, 5000}) EXPECT_EQ(axis.minuteOf(axis.timeOf(minute)), minute);
}

TEST(TimeAxisTest, KnowsTheWallClockAtZero) {
  EXPECT_EQ(axisFrom("Asia/Kolkata", at("2027-03-05T00:00:00Z")).clockAtZero(), 330);
}

// Clocks go forward in Lisbon on 2027-03-28 at 01:00 UTC.
TEST(TimeAxisTest, FollowsTheWallClockOverTheChangeToSummerTime) {
  const TimeAxis axis = axisFrom("Europe/Lisbon", at("2027-03-27T12:00:00Z"));
  EXPECT_EQ(axis.minuteOfClock(0, "18:00"), 360);
  EXPECT_EQ(axis.minuteOfClock(1, "18:00"), 360 + 23 * 60);
}

TEST(TimeAxisTest, TakesTwentyFourHoursAsTheNextMidnight) {
  const TimeAxis axis = axisFrom("UTC", at("2027-03-05T00:00:00Z"));
  EXPECT_EQ(axis.minuteOfClock(0, "24:00"), axis.minuteOfClock(1, "00:00"));
}

TEST(TimeAxisTest, CountsTheDaysItTouches) {
  const TimeAxis axis = axisFrom("UTC", at("2027-03-05T23:00:00Z"));
  EXPECT_EQ(axis.daysUpTo(30), 1);
  EXPECT_EQ(axis.daysUpTo(90), 2);
  EXPECT_EQ(axis.dateOf(90), "2027-03-06");
}

}  // namespace
}  // namespace suppertide::compose
