#include "server/bread/temperature_by_hour.h"

#include <gtest/gtest.h>

#include "tests/bread/builders.h"

namespace suppertide::bread {
namespace {

std::array<double, 24> rising() {
  std::array<double, 24> celsius;
  for (std::size_t i = 0; i < 24; ++i) celsius[i] = 10 + static_cast<double>(i);
  return celsius;
}

TEST(TemperatureByHourTest, IsLinearBetweenFullHoursAndOverMidnight) {
  const TemperatureByHour place(rising());
  EXPECT_DOUBLE_EQ(place.at(7), 17);
  EXPECT_DOUBLE_EQ(place.at(7.25), 17.25);
  EXPECT_DOUBLE_EQ(place.at(23.5), (33 + 10) / 2.0);
}

TEST(TemperatureByHourTest, RepeatsDailyBothWays) {
  const TemperatureByHour place(rising());
  EXPECT_NEAR(place.at(25.5), place.at(1.5), 1e-12);
  EXPECT_NEAR(place.at(-22.5), place.at(1.5), 1e-12);
  EXPECT_NEAR(place.at(24 * 400 + 3), place.at(3), 1e-9);
  EXPECT_DOUBLE_EQ(place.at(-1e-18), place.at(0)) << "rounding to 24 must not run off the table";
}

TEST(TemperatureByHourTest, KnowsWhenItIsConstant) {
  EXPECT_TRUE(TemperatureByHour(21).isConstant());
  std::array<double, 24> level;
  level.fill(19);
  EXPECT_TRUE(TemperatureByHour(level).isConstant());
  EXPECT_FALSE(TemperatureByHour(rising()).isConstant());
  EXPECT_DOUBLE_EQ(TemperatureByHour(rising()).warmerBy(2).at(5), 17);
}

}  // namespace
}  // namespace suppertide::bread
