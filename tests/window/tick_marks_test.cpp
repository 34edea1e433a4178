#include "client/timeline/tick_marks.h"

#include <gtest/gtest.h>

#include "tests/window/moment.h"
#include "tests/window/sample.h"

namespace suppertide {
namespace {

std::vector<std::string> labels(const std::vector<TickMark>& marks, Instant base, const TimeWords& words) {
  std::vector<std::string> result;
  for (const TickMark& mark : marks)
    result.push_back((mark.midnight ? "| " : "") + words.clock(instantAt(base, mark.minute)).toStdString());
  return result;
}

TEST(TickMarksTest, ChoosesTheLeastStepWithRoomForItsLabels) {
  struct Row {
    double pixelsPerMinute, step;
  };
  for (const Row& row : {Row{64, 5}, Row{15.2, 5}, Row{10, 10}, Row{5, 30}, Row{1.6, 60}, Row{0.8, 120},
                         Row{0.25, 360}, Row{0.06, 1440}, Row{0.001, 1440}})
    EXPECT_EQ(tickStep(row.pixelsPerMinute, 76), row.step) << row.pixelsPerMinute << " px a minute";
}

TEST(TickMarksTest, StandsOnWholeLocalHoursAndMarksMidnight) {
  const TimeWords words("Europe/Lisbon");
  const Instant base = at("2026-06-19T20:30:00+01:00");
  EXPECT_EQ(labels(tickMarks(base, words, 0, 8 * 60, 120), base, words),
            (std::vector<std::string>{"22:00", "| 00:00", "02:00", "04:00"}));
}

TEST(TickMarksTest, KeepsToTheHourWhenTheClocksChange) {
  const TimeWords words("Europe/Lisbon");
  // Forward on 29 March 2026: 01:00 becomes 02:00. Back on 25 October: 02:00 becomes 01:00.
  const Instant spring = at("2026-03-29T00:00:00+00:00");
  EXPECT_EQ(labels(tickMarks(spring, words, 0, 4 * 60, 60), spring, words),
            (std::vector<std::string>{"| 00:00", "02:00", "03:00", "04:00"}));
  const Instant autumn = at("2026-10-25T00:00:00+01:00");
  const auto marks = tickMarks(autumn, words, 0, 25 * 60, 180);
  EXPECT_EQ(labels(marks, autumn, words), (std::vector<std::string>{"| 00:00", "03:00", "06:00", "09:00",
                                                                    "12:00", "15:00", "18:00", "21:00"}));
  EXPECT_EQ(marks[1].minute, 4 * 60) << "three o'clock comes four hours after midnight";
}

TEST(TickMarksTest, NightsRunFromTenToSixInLocalTime) {
  const TimeWords words("Europe/Lisbon");
  const Instant base = at("2026-06-19T00:00:00+01:00");
  const auto nights = nightsBetween(base, words, 0, 24 * 60);
  ASSERT_EQ(nights.size(), 2U);
  EXPECT_EQ(nights[0].limit, 6 * 60);
  EXPECT_EQ(nights[1].start, 22 * 60);
  EXPECT_EQ(nights[1].limit, 30 * 60);
}

}  // namespace
}  // namespace suppertide
