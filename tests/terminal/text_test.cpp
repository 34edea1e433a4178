#include "client/terminal/text.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "client/terminal/table.h"
#include "client/terminal/time_text.h"
#include "client/terminal/units.h"
#include "tests/terminal/sample.h"

namespace suppertide::terminal {
namespace {

using ::testing::ElementsAre;

TEST(TextTest, CountsColumnsNotBytes) {
  EXPECT_EQ(displayWidth("creme"), 5);
  EXPECT_EQ(displayWidth("crème"), 5);
  EXPECT_EQ(displayWidth("cre\u0300me"), 5) << "an accent of its own takes no column";
  EXPECT_EQ(displayWidth("パン"), 4);
  EXPECT_EQ(displayWidth("\xff"), 1) << "a stray byte";
}

TEST(TextTest, PadsByColumns) {
  EXPECT_EQ(padRight("thé", 5), "thé  ");
  EXPECT_EQ(padLeft("thé", 5), "  thé");
  EXPECT_EQ(padRight("bread", 3), "bread");
}

TEST(TextTest, WrapsAtSpacesAndCutsWhatIsTooWide) {
  EXPECT_THAT(wrap("feed the levain now", 10), ElementsAre("feed the", "levain now"));
  EXPECT_THAT(wrap("a\nb", 10), ElementsAre("a", "b"));
  EXPECT_THAT(wrap("Zwiebelkuchen", 5), ElementsAre("Zwieb", "elkuc", "hen"));
  EXPECT_THAT(wrap("", 10), ElementsAre());
  EXPECT_THAT(wrap("été été", 3), ElementsAre("été", "été"));
}

TEST(TextTest, ShortensWithASign) {
  EXPECT_EQ(shortened("Benoît", 6), "Benoît");
  EXPECT_EQ(shortened("Bartholomew", 5), "Bart…");
}

TEST(TextTest, TakesTheSteeringOutOfForeignText) {
  EXPECT_EQ(plainLine("a\x1b[2Jb\nc"), "a [2Jb c");
  EXPECT_EQ(plainLine("a\u009bb"), "a b") << "the one-byte form of the same";
  EXPECT_EQ(plainLine("Pão"), "Pão");
}

TEST(TextTest, ColoursOnlyWhenAskedTo) {
  EXPECT_EQ(Style(false).warning("late"), "late");
  EXPECT_NE(Style(true).warning("late"), "late");
}

TEST(TableTest, WrapsEachCellInItsColumn) {
  Table table({{.title = "At"}, {.title = "What", .fitted = false}});
  table.add({{"07:00"}, {"feed the levain", "weigh it"}});
  EXPECT_EQ(table.text(17, Style(false), true),
            "At     What\n"
            "07:00  feed the\n"
            "       levain\n"
            "       weigh it\n");
}

TEST(TimeTextTest, SaysSpansAsPeopleDo) {
  EXPECT_EQ(durationText(absl::Minutes(5)), "5 min");
  EXPECT_EQ(durationText(absl::Minutes(60)), "1 h");
  EXPECT_EQ(durationText(absl::Minutes(-80)), "1 h 20 min");
  EXPECT_EQ(durationText(absl::Hours(27)), "1 day 3 h");
  EXPECT_EQ(durationText(absl::Seconds(40)), "1 min");
}

TEST(TimeTextTest, NamesTheDayOnlyWhenItIsAnother) {
  const Clock clock("Europe/Lisbon");
  const absl::Time evening = toTime(testing::at("2026-06-19T22:30:00+01:00"));
  const absl::Time morning = toTime(testing::at("2026-06-20T07:00:00+01:00"));
  EXPECT_EQ(clock.span(evening, morning), "22:30–Sat 07:00");
  EXPECT_EQ(clock.spanWithDay(evening, morning), "Fri 22:30–Sat 07:00");
  EXPECT_EQ(clock.span(morning, morning + absl::Minutes(20)), "07:00–07:20");
  EXPECT_EQ(clock.date(morning), "Saturday 20 June 2026");
}

TEST(TimeTextTest, ShowsTheHourOfTheZoneAlsoWhenClocksChange) {
  const Clock clock("Europe/Berlin");
  // 2026-10-25 at 03:00 summer time the clocks go back to 02:00.
  const absl::Time before = toTime(testing::at("2026-10-25T00:30:00Z"));
  EXPECT_EQ(clock.hour(before), "02:30");
  EXPECT_EQ(clock.hour(before + absl::Hours(1)), "02:30");
  EXPECT_EQ(durationText(absl::Hours(1)), "1 h");
}

TEST(TimeTextTest, ReadsAnUnknownZoneAsUtcAndSaysSo) {
  EXPECT_EQ(Clock("Nowhere/Land").zoneName(), "UTC");
}

TEST(UnitsTest, NeverShowsALimitOnItsWrongSide) {
  EXPECT_EQ(Units(false, false).degreesAtLeast(62.78), "63 °C");
  EXPECT_EQ(Units(false, false).degreesAtLeast(71.11), "72 °C");
  EXPECT_EQ(Units(false, false).degreesAtLeast(60), "60 °C");
  EXPECT_EQ(Units(false, false).degreesAtMost(4.44), "4 °C");
  EXPECT_EQ(Units(true, false).degreesAtLeast(71.1111), "160 °F");
  EXPECT_EQ(Units(true, false).degreesAtMost(4.4444), "40 °F");
}

TEST(UnitsTest, SetsDialsThatExist) {
  const Units american(/*fahrenheit=*/true, /*ounces=*/true);
  EXPECT_EQ(american.dial(180), "355 °F");
  EXPECT_EQ(american.degrees(27), "81 °F");
  EXPECT_EQ(american.mass(350), "350 g (12.3 oz)");
  const Units metric(false, false);
  EXPECT_EQ(metric.dial(180), "180 °C");
  EXPECT_EQ(metric.mass(8.24), "8.2 g");
  EXPECT_EQ(metric.mass(9.97), "10 g");
}

}  // namespace
}  // namespace suppertide::terminal
