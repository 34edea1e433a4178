#include "client/terminal/rise_chart.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "absl/strings/str_split.h"
#include "client/terminal/text.h"

namespace suppertide::terminal {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

// Four hours from noon, risen to 2; ready from the second to the third.
v1::FermentForecast bulk() {
  v1::FermentForecast forecast;
  constexpr std::int64_t kNoon = 1'800'000'000 / 86'400 * 86'400 + 12 * 3600;
  for (int quarter = 0; quarter <= 16; ++quarter) {
    v1::RiseSample& sample = *forecast.add_samples();
    sample.mutable_time()->set_seconds(kNoon + quarter * 900);
    sample.set_rise(1 + quarter / 16.0);
    sample.set_slow_rise(1 + quarter / 20.0);
    sample.set_fast_rise(1 + quarter / 13.0);
    sample.set_celsius(20 + quarter / 4.0);
  }
  forecast.mutable_ready_from_time()->set_seconds(kNoon + 2 * 3600);
  forecast.mutable_best_time()->set_seconds(kNoon + 9000);
  forecast.mutable_ready_until_time()->set_seconds(kNoon + 3 * 3600);
  return forecast;
}

TEST(RiseChartTest, FitsTheWidthAndShowsCurveBandHoursAndWindow) {
  for (const int width : {60, 80, 120}) {
    const std::string chart = riseChart(bulk(), Clock("UTC"), Units(false, false), width);
    for (const absl::string_view line : absl::StrSplit(chart, '\n'))
      EXPECT_LE(displayWidth(std::string(line)), width) << line;
    EXPECT_THAT(chart, HasSubstr("█"));
    EXPECT_THAT(chart, HasSubstr("░"));
    EXPECT_THAT(chart, HasSubstr("12:00"));
    EXPECT_THAT(chart, HasSubstr("◆"));
  }
}

TEST(RiseChartTest, TellsHowWarmTheDoughIsAtFullHours) {
  const std::string chart = riseChart(bulk(), Clock("UTC"), Units(false, false), 80);
  EXPECT_THAT(chart, ::testing::ContainsRegex("12:00 +12:30 +13:00 +13:30"));
  EXPECT_THAT(chart, ::testing::ContainsRegex("dough +20 °C +21 °C +21 °C +22 °C"));
  EXPECT_THAT(riseChart(bulk(), Clock("UTC"), Units(true, false), 80), HasSubstr("68 °F"));
}

TEST(RiseChartTest, EveryColumnHasTheCurveOnce) {
  const std::string chart = riseChart(bulk(), Clock("UTC"), Units(false, false), 80);
  std::size_t blocks = 0;
  for (std::size_t at = chart.find("█"); at != std::string::npos; at = chart.find("█", at + 1)) ++blocks;
  EXPECT_EQ(blocks, 72u);
}

TEST(RiseChartTest, ADoughThatIsNeverReadyHasNoWindow) {
  v1::FermentForecast never = bulk();
  never.clear_ready_from_time();
  EXPECT_THAT(riseChart(never, Clock("UTC"), Units(false, false), 80), Not(HasSubstr("├")));
}

TEST(RiseChartTest, IsEmptyWhereThereIsNothingToDraw) {
  EXPECT_EQ(riseChart({}, Clock("UTC"), Units(false, false), 80), "");
  EXPECT_EQ(riseChart(bulk(), Clock("UTC"), Units(false, false), 30), "");
}

}  // namespace
}  // namespace suppertide::terminal
