#include "server/compose/day/calendar.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <libical/ical.h>

#include <map>
#include <memory>
#include <set>
#include <string>
#include <vector>

#include "absl/strings/str_split.h"
#include "server/compose/day/calendar_lines.h"
#include "server/compose/day/calendar_uid.h"
#include "server/compose/day/local_hours.h"
#include "tests/compose/shifted_plan.h"
#include "tests/compose/small_dinner.h"

namespace suppertide::compose {
namespace {

struct Free {
  void operator()(icalcomponent* component) const { icalcomponent_free(component); }
};
using Component = std::unique_ptr<icalcomponent, Free>;

// An entry as a parser that is not ours reads it.
struct Entry {
  std::string summary;
  std::int64_t start = 0;  // seconds since 1970, by the calendar's own VTIMEZONE
  std::int64_t end = 0;
  int sequence = 0;
  bool cancelled = false;
  std::vector<std::int64_t> alarms;
};

std::map<std::string, Entry> entriesOf(const std::string& text) {
  std::map<std::string, Entry> entries;
  const Component calendar(icalparser_parse_string(text.c_str()));
  EXPECT_NE(calendar, nullptr);
  if (calendar == nullptr) return entries;
  EXPECT_EQ(icalcomponent_isa(calendar.get()), ICAL_VCALENDAR_COMPONENT);
  icalrestriction_check(calendar.get());
  EXPECT_EQ(icalcomponent_count_errors(calendar.get()), 0);
  for (icalcomponent* event = icalcomponent_get_first_component(calendar.get(), ICAL_VEVENT_COMPONENT);
       event != nullptr; event = icalcomponent_get_next_component(calendar.get(), ICAL_VEVENT_COMPONENT)) {
    Entry entry;
    entry.summary = icalcomponent_get_summary(event);
    entry.sequence = icalcomponent_get_sequence(event);
    entry.cancelled = icalcomponent_get_status(event) == ICAL_STATUS_CANCELLED;
    const icaltimetype start = icalcomponent_get_dtstart(event);
    const icaltimetype end = icalcomponent_get_dtend(event);
    entry.start = icaltime_as_timet_with_zone(start, start.zone);
    entry.end = icaltime_as_timet_with_zone(end, end.zone);
    for (icalcomponent* alarm = icalcomponent_get_first_component(event, ICAL_VALARM_COMPONENT);
         alarm != nullptr; alarm = icalcomponent_get_next_component(event, ICAL_VALARM_COMPONENT)) {
      const icaltriggertype trigger =
          icalproperty_get_trigger(icalcomponent_get_first_property(alarm, ICAL_TRIGGER_PROPERTY));
      entry.alarms.push_back(
          icaltime_is_null_time(trigger.time)
              ? entry.start + icaldurationtype_as_int(trigger.duration)
              : icaltime_as_timet_with_zone(trigger.time, icaltimezone_get_utc_timezone()));
    }
    EXPECT_TRUE(entries.emplace(icalcomponent_get_uid(event), entry).second) << icalcomponent_get_uid(event);
  }
  return entries;
}

class CalendarTest : public testing::Test {
 protected:
  static std::string uidOf(const std::string& step) { return calendarUid("h/supper/" + step); }
  CalendarTest() : documents_(documentsOf(smallDinner())) {
    auto made = planEvent(documents_, {.seed = 1, .workLimit = 3000});
    EXPECT_TRUE(made.ok());
    plan_ = *made;
    plan_.mutable_meta()->set_revision(7);
  }
  std::string text(const std::string& member = "") const {
    const v1::Progress none;
    const CalendarEvent event{
        {documents_.household, documents_.event, plan_, none},
        documents_.kitchen,
        {{"rolls", "Butter rolls"}, {"roast", "Pork, slow; \"crackling\" \\ no rind\nsalted"}}};
    return calendarOf({event}, member);
  }
  Documents documents_;
  v1::Plan plan_;
};

TEST_F(CalendarTest, AnotherParserReadsEveryStepAtItsTime) {
  const auto entries = entriesOf(text());
  int found = 0;
  for (const v1::PlannedStep& step : plan_.steps()) {
    if (step.cook_member_id().empty()) continue;
    const auto entry = entries.find(uidOf(step.id()));
    ASSERT_NE(entry, entries.end()) << step.id();
    EXPECT_EQ(entry->second.start, step.start_time().seconds()) << step.id();
    EXPECT_EQ(entry->second.end, step.end_time().seconds()) << step.id();
    EXPECT_THAT(entry->second.alarms,
                testing::IsSupersetOf({step.start_time().seconds() - 600, step.start_time().seconds() + 0}))
        << step.id();
    ++found;
  }
  EXPECT_GT(found, 5);
}

TEST_F(CalendarTest, TextComesBackAsItWas) {
  const auto entries = entriesOf(text());
  EXPECT_NE(entries.at(uidOf("roast/season")).summary.find("Pork, slow; \"crackling\" \\ no rind\nsalted"),
            std::string::npos);
}

TEST_F(CalendarTest, ACooksCalendarHasTheirOwnStepsOnly) {
  for (const auto& [uid, entry] : entriesOf(text("rui")))
    EXPECT_EQ(entry.summary.find("Ana:"), std::string::npos);
  EXPECT_LT(entriesOf(text("rui")).size(), entriesOf(text()).size());
}

TEST_F(CalendarTest, TheMorningAndTheEveningBeforeAreAlarmsOfTheFirstStep) {
  bool early = false;
  for (const auto& [uid, entry] : entriesOf(text("ana")))
    for (const std::int64_t alarm : entry.alarms) early = early || alarm < entry.start - 3600;
  EXPECT_TRUE(early);
}

TEST_F(CalendarTest, AMovedStepKeepsItsUidAndHasAHigherSequence) {
  const std::string uid = uidOf("roast/season");
  const Entry before = entriesOf(text()).at(uid);
  for (v1::PlannedStep& step : *plan_.mutable_steps()) {
    if (step.id() != "roast/season") continue;
    step.mutable_start_time()->set_seconds(step.start_time().seconds() + 900);
    step.set_move_count(step.move_count() + 1);
  }
  const Entry after = entriesOf(text()).at(uid);
  EXPECT_EQ(after.start, before.start + 900);
  EXPECT_GT(after.sequence, before.sequence);
}

// The first step that `member` has; taken out of the plan as the last correction would.
v1::PlannedStep takeAway(v1::Plan& plan, const std::string& member) {
  v1::PlannedStep gone;
  for (int i = 0; i < plan.steps_size() && gone.id().empty(); ++i) {
    if (plan.steps(i).cook_member_id() != member) continue;
    gone = plan.steps(i);
    plan.mutable_steps()->DeleteSubrange(i, 1);
  }
  v1::MovedStep& moved = *plan.add_moved_steps();
  moved.set_step_id(gone.id());
  moved.set_title(gone.title());
  *moved.mutable_old_start_time() = gone.start_time();
  *moved.mutable_old_end_time() = gone.end_time();
  moved.set_old_cook_member_id(member);
  return gone;
}

TEST_F(CalendarTest, AStepThatVanishedIsCancelledUnderItsUid) {
  const auto before = entriesOf(text());
  plan_.mutable_meta()->set_revision(8);
  const v1::PlannedStep gone = takeAway(plan_, "rui");
  const Entry entry = entriesOf(text()).at(uidOf(gone.id()));
  EXPECT_TRUE(entry.cancelled);
  EXPECT_TRUE(entry.alarms.empty());
  EXPECT_EQ(entry.start, gone.start_time().seconds());
  EXPECT_GT(entry.sequence, before.at(uidOf(gone.id())).sequence);
  EXPECT_TRUE(entriesOf(text("rui")).at(uidOf(gone.id())).cancelled);
  EXPECT_FALSE(entriesOf(text("ana")).contains(uidOf(gone.id())));
}

TEST_F(CalendarTest, AStepHandedOverIsCancelledForWhomHadIt) {
  const v1::PlannedStep gone = takeAway(plan_, "rui");
  v1::PlannedStep& given = *plan_.add_steps();
  given = gone;
  given.set_cook_member_id("ana");
  v1::MovedStep& moved = *plan_.mutable_moved_steps(0);
  *moved.mutable_new_start_time() = gone.start_time();
  *moved.mutable_new_end_time() = gone.end_time();
  moved.set_new_cook_member_id("ana");
  EXPECT_TRUE(entriesOf(text("rui")).at(uidOf(gone.id())).cancelled);
  EXPECT_FALSE(entriesOf(text("ana")).at(uidOf(gone.id())).cancelled);
  EXPECT_FALSE(entriesOf(text()).at(uidOf(gone.id())).cancelled);
}

// RFC 5545 3.6.2 and 3.8.2.3 forbid DUE beside DURATION and a DUE that is the DTSTART: we write no VTODO.
TEST_F(CalendarTest, HasNothingButEventsThatEndAfterTheyBegin) {
  EXPECT_EQ(text().find("VTODO"), std::string::npos);
  for (const auto& [uid, entry] : entriesOf(text())) EXPECT_GE(entry.end, entry.start) << entry.summary;
}

TEST_F(CalendarTest, UidsAreUuids) {
  for (const auto& [uid, entry] : entriesOf(text()))
    EXPECT_THAT(uid,
                testing::MatchesRegex("[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}"));
}

TEST_F(CalendarTest, TimesHoldAcrossAClockChange) {
  // The small dinner is in March; three weeks on, Lisbon's clocks change on its day.
  shiftDays(plan_, zoneOf(documents_.household, documents_.event), 21);
  const auto entries = entriesOf(text());
  std::set<int> offsets;
  const absl::TimeZone zone = zoneOf(documents_.household, documents_.event);
  for (const v1::PlannedStep& step : plan_.steps()) {
    if (step.cook_member_id().empty()) continue;
    const Entry& entry = entries.at(uidOf(step.id()));
    EXPECT_EQ(entry.start, step.start_time().seconds()) << step.id();
    EXPECT_EQ(entry.end, step.end_time().seconds()) << step.id();
    offsets.insert(zone.At(toTime(step.start_time())).offset);
  }
  EXPECT_EQ(offsets.size(), 2U) << "the plan lies on both sides of the change";
}

TEST_F(CalendarTest, NoLineIsLongerThan75OctetsAndEachEndsWithCrLf) {
  plan_.mutable_steps(0)->set_title(std::string(120, 'x') + "äöüß—“Brot”" + std::string(90, 'y'));
  const std::string whole = text();
  ASSERT_EQ(whole.substr(whole.size() - 2), "\r\n");
  const std::vector<std::string> lines = absl::StrSplit(whole.substr(0, whole.size() - 2), "\r\n");
  for (const std::string& line : lines) {
    EXPECT_LE(line.size(), 75U) << line;
    EXPECT_EQ(line.find_first_of("\r\n"), std::string::npos);
    // A fold never cuts a character in two.
    const bool folded = line.size() > 1 && line.front() == ' ';
    EXPECT_FALSE(folded && (static_cast<unsigned char>(line[1]) & 0xC0) == 0x80) << line;
  }
}

}  // namespace
}  // namespace suppertide::compose
