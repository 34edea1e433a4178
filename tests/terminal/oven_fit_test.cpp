// Readings as people write them, and the fitted curve as they read it.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "client/terminal/oven_fit_text.h"
#include "client/terminal/oven_readings.h"

namespace suppertide::terminal {
namespace {

using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;

TEST(OvenReadingsTest, ReadsEachPartOfATable) {
  const OvenReadings readings = readReadings(
      "part,minutes,celsius\n"
      "# measured on Sunday\n"
      "heating,0,21\n\nheating;4.5;96\r\n"
      "Cooling\t0\t200\n"
      "ajar, 0, 198\n"
      "rise,14,200,22\n");
  EXPECT_THAT(readings.mistakes, IsEmpty());
  ASSERT_EQ(readings.curve.heating_size(), 2);
  EXPECT_EQ(readings.curve.heating(1).after().seconds(), 270);
  EXPECT_EQ(readings.curve.heating(1).celsius(), 96);
  EXPECT_EQ(readings.curve.cooling(0).celsius(), 200);
  EXPECT_EQ(readings.curve.cooling_ajar(0).celsius(), 198);
  EXPECT_EQ(readings.curve.rises(0).to_celsius(), 200);
  EXPECT_EQ(readings.curve.rises(0).from_celsius(), 22);
  EXPECT_EQ(readings.lines.at("heatCurve.heating[1]"), "line 5");
}

TEST(OvenReadingsTest, TakesFahrenheitAllThrough) {
  const OvenReadings readings = readReadings("part,minutes,fahrenheit\nheating,0,68\nrise,14,392,68\n");
  EXPECT_TRUE(readings.fahrenheit);
  EXPECT_NEAR(readings.curve.heating(0).celsius(), 20, 1e-9);
  EXPECT_NEAR(readings.curve.rises(0).to_celsius(), 200, 1e-9);
}

TEST(OvenReadingsTest, ListsEveryMistakeByItsLine) {
  const OvenReadings readings =
      readReadings("heating,0\nbroil,1,2\nheating,ten,96\nrise,14,200\nheating,5,nan\n");
  ASSERT_EQ(readings.mistakes.size(), 5U);
  EXPECT_EQ(readings.mistakes[0].field_path(), "line 1");
  EXPECT_EQ(readings.mistakes[1].value(), "broil");
  EXPECT_THAT(readings.mistakes[1].description(), HasSubstr("heating, cooling, ajar or rise"));
  EXPECT_EQ(readings.mistakes[2].value(), "ten");
  EXPECT_EQ(readings.mistakes[4].field_path(), "line 5");
}

TEST(OvenReadingsTest, SaysOnceThatItsFirstColumnIsMissing) {
  const OvenReadings readings = readReadings("minutes,celsius\n0,21\n5,96\n10,140\n");
  ASSERT_EQ(readings.mistakes.size(), 1u);
  EXPECT_EQ(readings.mistakes[0].field_path(), "line 1");
  EXPECT_THAT(readings.mistakes[0].description(), HasSubstr("every line must begin with"));
}

TEST(OvenReadingsTest, AnEmptyTableIsAMistake) {
  EXPECT_EQ(readReadings("# nothing\n").mistakes.size(), 1U);
}

v1::FitOvenResponse sampleFit() {
  v1::FitOvenResponse fit;
  fit.mutable_before()->set_maximum_celsius(360);
  fit.mutable_before()->set_heat_minutes(16);
  fit.mutable_after()->set_maximum_celsius(318);
  fit.mutable_after()->set_heat_minutes(24.2);
  fit.set_residual_before_k(31.4);
  fit.set_residual_after_k(1.2);
  v1::ReadingFit& reading = *fit.add_readings();
  reading.set_field_path("oven.heatCurve.heating[0]");
  reading.mutable_after()->set_seconds(150);
  reading.set_celsius(60);
  reading.set_before_celsius(72);
  reading.set_after_celsius(61.2);
  reading.set_left_out(true);
  v1::OvenChange& change = *fit.add_changes();
  change.set_to_celsius(180);
  change.mutable_before_duration()->set_seconds(15 * 60);
  change.mutable_after_duration()->set_seconds(21 * 60);
  return fit;
}

TEST(OvenFitTextTest, HasNoSignWhereNothingIsOff) {
  v1::FitOvenResponse fit = sampleFit();
  fit.mutable_readings(0)->set_left_out(false);
  fit.mutable_readings(0)->set_after_celsius(59.96);
  const std::string text = ovenFitText("Oven", fit, Units(false, false), absl::UTCTimeZone(), 80, false);
  EXPECT_THAT(text, HasSubstr("0.0"));
  EXPECT_THAT(text, ::testing::Not(HasSubstr("-0.0")));
}

TEST(OvenFitTextTest, ShowsBeforeAndAfterWithTheResiduals) {
  const std::string text =
      ovenFitText("Large oven", sampleFit(), Units(false, false), absl::UTCTimeZone(), 80, false);
  EXPECT_THAT(text, HasSubstr("Large oven: 1 reading, 1 left out"));
  EXPECT_THAT(text, HasSubstr("31.4 °C"));
  EXPECT_THAT(text, HasSubstr("1.2 °C"));
  EXPECT_THAT(text, HasSubstr("2.5 min"));
  EXPECT_THAT(text, HasSubstr("left out"));
  EXPECT_THAT(text, HasSubstr("from cold to 180 °C"));
  EXPECT_THAT(text, HasSubstr("21 min"));
}

TEST(OvenFitTextTest, SpeaksTheHouseholdsDegrees) {
  const std::string text =
      ovenFitText("Large oven", sampleFit(), Units(true, false), absl::UTCTimeZone(), 80, false);
  EXPECT_THAT(text, HasSubstr("from cold to 355 °F"));
  EXPECT_THAT(text, HasSubstr("56.5 °F"));
  EXPECT_THAT(text, Not(HasSubstr("°C")));
}

}  // namespace
}  // namespace suppertide::terminal
