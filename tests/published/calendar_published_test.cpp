// Calendar lines and times against published values, each with its source; read back by libical, which
// shares no code with the writer.
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <libical/ical.h>

#include <memory>
#include <string>
#include <vector>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_split.h"
#include "absl/time/civil_time.h"
#include "absl/time/time.h"
#include "server/compose/day/calendar_lines.h"
#include "server/compose/day/calendar_uid.h"

namespace suppertide::compose {
namespace {

using testing::ElementsAre;

// Octets of each folded line, without its end.
std::vector<std::size_t> foldsOf(const std::string& name, const std::string& value) {
  CalendarLines lines;
  lines.add(name, value);
  std::vector<std::size_t> sizes;
  for (const auto& line : absl::StrSplit(lines.text(), "\r\n", absl::SkipEmpty()))
    sizes.push_back(line.size());
  return sizes;
}

// RFC 5545 3.1 (read), and lengths computed from it.
TEST(CalendarPublishedTest, LinesFoldAt75OctetsTheBlankCounted) {
  EXPECT_THAT(foldsOf("SUMMARY", std::string(67, 'a')), ElementsAre(75));
  EXPECT_THAT(foldsOf("SUMMARY", std::string(68, 'a')), ElementsAre(75, 2));
  EXPECT_THAT(foldsOf("SUMMARY", std::string(200, 'a')), ElementsAre(75, 75, 60));
  // 66 a, then two octets of one letter that would be cut, then 5 b.
  EXPECT_THAT(foldsOf("SUMMARY", std::string(66, 'a') + "é" + "bbbbb"), ElementsAre(74, 8));
}

// RFC 5545 3.3.11 (read).
TEST(CalendarPublishedTest, TextIsEscaped) {
  CalendarLines lines;
  lines.addText("SUMMARY", "Stir; rest, then: a\\b\n");
  EXPECT_EQ(lines.text(), "SUMMARY:Stir\\; rest\\, then: a\\\\b\\n\r\n");
}

struct Free {
  void operator()(icalcomponent* component) const { icalcomponent_free(component); }
};

// What another parser makes of an entry that begins at `time`, and of its alarm so long before.
struct ReadBack {
  std::string utc;
  std::string alarm;
  bool local = false;
};
ReadBack readBack(absl::Time time, const absl::TimeZone& zone, const std::string& trigger = "PT0S") {
  CalendarLines lines;
  lines.add("BEGIN", "VCALENDAR");
  addTimeZone(lines, zone, time - absl::Hours(24 * 370), time + absl::Hours(24 * 370));
  lines.add("BEGIN", "VEVENT");
  lines.addLocal("DTSTART", time, zone);
  lines.add("BEGIN", "VALARM");
  lines.add("TRIGGER", trigger);
  lines.add("END", "VALARM");
  lines.add("END", "VEVENT");
  lines.add("END", "VCALENDAR");
  const std::unique_ptr<icalcomponent, Free> calendar(icalparser_parse_string(lines.text().c_str()));
  icalcomponent* event = icalcomponent_get_first_component(calendar.get(), ICAL_VEVENT_COMPONENT);
  const icaltimetype start = icalcomponent_get_dtstart(event);
  const std::int64_t at = icaltime_as_timet_with_zone(start, start.zone);
  icalcomponent* alarm = icalcomponent_get_first_component(event, ICAL_VALARM_COMPONENT);
  const icaltriggertype when =
      icalproperty_get_trigger(icalcomponent_get_first_property(alarm, ICAL_TRIGGER_PROPERTY));
  return {utcText(absl::FromUnixSeconds(at)),
          utcText(absl::FromUnixSeconds(at + icaldurationtype_as_int(when.duration))),
          lines.text().find("DTSTART;TZID") != std::string::npos};
}

absl::TimeZone zoneNamed(const std::string& name) {
  absl::TimeZone zone;
  EXPECT_TRUE(absl::LoadTimeZone(name, &zone)) << name;
  return zone;
}

// tzdata (computed).
TEST(CalendarPublishedTest, LocalTimesComeBackAsTheirInstants) {
  struct Row {
    const char* zone;
    absl::CivilSecond local;
    const char* utc;
  };
  const Row rows[] = {
      {"America/New_York", absl::CivilSecond(2026, 11, 26, 17), "20261126T220000Z"},
      {"Europe/Berlin", absl::CivilSecond(2026, 12, 24, 18), "20261224T170000Z"},
      {"Europe/London", absl::CivilSecond(2026, 12, 25, 14), "20261225T140000Z"},
      {"Australia/Sydney", absl::CivilSecond(2026, 12, 25, 13), "20261225T020000Z"},
      {"Asia/Kolkata", absl::CivilSecond(2026, 11, 8, 19), "20261108T133000Z"},
  };
  for (const Row& row : rows) {
    const absl::TimeZone zone = zoneNamed(row.zone);
    EXPECT_EQ(readBack(absl::FromCivil(row.local, zone), zone).utc, row.utc) << row.zone;
  }
}

// RFC 5545 3.3.5 (read): a local time that is there twice is the first one. libical reads the second, so
// neither is ever written as local time.
TEST(CalendarPublishedTest, BothOfTwoEqualHoursComeBack) {
  const absl::TimeZone zone = zoneNamed("America/New_York");
  const absl::Time first = absl::FromCivil(absl::CivilSecond(2007, 11, 4, 5, 30), absl::UTCTimeZone());
  EXPECT_EQ(readBack(first, zone).utc, "20071104T053000Z");
  EXPECT_EQ(readBack(first + absl::Hours(1), zone).utc, "20071104T063000Z");
  EXPECT_FALSE(readBack(first, zone).local);
  EXPECT_TRUE(readBack(first - absl::Hours(1), zone).local);
}

// RFC 5545 3.3.5 (read): 02:30 is skipped that day and means 03:30 EDT.
TEST(CalendarPublishedTest, AnHourThatIsSkippedIsNeverWritten) {
  const absl::TimeZone zone = zoneNamed("America/New_York");
  const absl::Time time = absl::FromCivil(absl::CivilSecond(2007, 3, 11, 7, 30), absl::UTCTimeZone());
  CalendarLines lines;
  lines.addLocal("DTSTART", time, zone);
  EXPECT_EQ(lines.text(), "DTSTART;TZID=America/New_York:20070311T033000\r\n");
  EXPECT_EQ(readBack(time, zone).utc, "20070311T073000Z");
}

// RFC 5545 3.3.6 (read): a day is nominal, hours are exact. What lasts 24 hours over the change of
// the clock ends at another hour of the day.
TEST(CalendarPublishedTest, WhatLastsHoursEndsAtTheirInstant) {
  const absl::TimeZone zone = zoneNamed("America/New_York");
  CalendarLines lines;
  lines.addLocal("DTEND", absl::FromCivil(absl::CivilSecond(2026, 10, 31, 18), zone) + absl::Hours(24), zone);
  EXPECT_EQ(lines.text(), "DTEND;TZID=America/New_York:20261101T170000\r\n");
}

// RFC 5545 3.8.6.3 (read).
TEST(CalendarPublishedTest, AnAlarmGoesOffBeforeTheStart) {
  const absl::TimeZone zone = zoneNamed("America/New_York");
  const absl::Time time = absl::FromCivil(absl::CivilSecond(2026, 11, 26, 17), zone);
  EXPECT_EQ(readBack(time, zone, "-PT15M").alarm, "20261126T214500Z");
}

// RFC 7986 5.3 (read): nothing but letters, digits and hyphens, below 255 octets; a random-looking UUID.
TEST(CalendarPublishedTest, UidsTellNothing) {
  const std::string uid = calendarUid("h/supper/roast");
  EXPECT_THAT(uid,
              testing::MatchesRegex("[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}"));
  EXPECT_EQ(uid, calendarUid("h/supper/roast"));
  EXPECT_NE(uid, calendarUid("h/supper/rolls"));
}

}  // namespace
}  // namespace suppertide::compose
