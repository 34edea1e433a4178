#include "server/compose/day/reminders.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "absl/time/time.h"
#include "server/compose/day/local_hours.h"
#include "tests/compose/small_dinner.h"

namespace suppertide::compose {
namespace {

class RemindersTest : public testing::Test {
 protected:
  RemindersTest() : documents_(documentsOf(smallDinner())) {
    auto made = planEvent(documents_, {.seed = 1, .workLimit = 3000});
    EXPECT_TRUE(made.ok());
    plan_ = *made;
    absl::LoadTimeZone("Europe/Lisbon", &zone_);
  }

  std::vector<v1::Reminder> all() const {
    return remindersOf({documents_.household, documents_.event, plan_, progress_});
  }
  std::vector<v1::Reminder> of(v1::ReminderKind kind) const {
    std::vector<v1::Reminder> some;
    for (const v1::Reminder& reminder : all())
      if (reminder.kind() == kind) some.push_back(reminder);
    return some;
  }
  std::string clock(const google::protobuf::Timestamp& time) const {
    return absl::FormatTime("%H:%M", toTime(time), zone_);
  }

  Documents documents_;
  v1::Plan plan_;
  v1::Progress progress_;
  absl::TimeZone zone_;
};

TEST_F(RemindersTest, EachIdIsOfOneReminder) {
  std::set<std::string> ids;
  for (const v1::Reminder& reminder : all()) {
    EXPECT_TRUE(ids.insert(reminder.id()).second) << reminder.id();
    EXPECT_LE(reminder.id().size(), 200U);
    EXPECT_FALSE(reminder.member_id().empty()) << reminder.id();
  }
}

TEST_F(RemindersTest, EveryStepWithHandsIsToldWhenDue) {
  std::set<std::string> told;
  for (const v1::Reminder& reminder : of(v1::REMINDER_KIND_STEP_DUE)) told.insert(reminder.step_id());
  for (const v1::PlannedStep& step : plan_.steps())
    EXPECT_EQ(told.count(step.id()) > 0, !step.cook_member_id().empty() && step.attention_percent() > 0)
        << step.id();
}

TEST_F(RemindersTest, EveryHeatedOvenIsToldBeforeItsFirstBake) {
  const auto preheats = of(v1::REMINDER_KIND_PREHEAT);
  ASSERT_FALSE(preheats.empty());
  for (const v1::Reminder& reminder : preheats) {
    EXPECT_GE(reminder.setpoint_celsius(), 50);
    const auto bake = std::find_if(plan_.steps().begin(), plan_.steps().end(),
                                   [&](const v1::PlannedStep& s) { return s.id() == reminder.step_id(); });
    ASSERT_NE(bake, plan_.steps().end());
    EXPECT_LE(reminder.due_time().seconds(), bake->start_time().seconds());
  }
}

TEST_F(RemindersTest, EveryBakeIsTakenOutBySomebody) {
  EXPECT_EQ(of(v1::REMINDER_KIND_TAKE_OUT).size(), 3U);
}

TEST_F(RemindersTest, TheFirstThingIsToldTheEveningBeforeAndAtWakingTime) {
  for (const v1::Reminder& reminder : of(v1::REMINDER_KIND_MORNING)) {
    const bool ana = reminder.member_id() == "ana";
    EXPECT_EQ(clock(reminder.remind_time()), ana ? "06:30" : "07:00");
  }
  const auto evenings = of(v1::REMINDER_KIND_TOMORROW);
  ASSERT_FALSE(evenings.empty());
  for (const v1::Reminder& reminder : evenings) {
    EXPECT_EQ(clock(reminder.remind_time()), reminder.member_id() == "ana" ? "22:00" : "21:30");
    EXPECT_LT(absl::ToCivilDay(toTime(reminder.remind_time()), zone_),
              absl::ToCivilDay(toTime(reminder.due_time()), zone_));
  }
}

TEST_F(RemindersTest, AWakingTimeStaysWhereItIsOnTheClockAcrossAClockChange) {
  const v1::Member& ana = documents_.household.members(0);
  const Span before = hoursOn(absl::CivilDay(2027, 3, 27), awakeHours(ana), zone_);
  const Span after = hoursOn(absl::CivilDay(2027, 3, 28), awakeHours(ana), zone_);
  EXPECT_EQ(after.start - before.start, absl::Hours(23));
  EXPECT_EQ(absl::FormatTime("%H:%M", after.start, zone_), "06:30");
}

TEST_F(RemindersTest, MovingAStepMakesItAnotherReminder) {
  const auto before = all();
  for (v1::PlannedStep& step : *plan_.mutable_steps()) {
    if (step.id() != "roast/season") continue;
    step.mutable_start_time()->set_seconds(step.start_time().seconds() + 300);
  }
  std::set<std::string> old;
  for (const v1::Reminder& reminder : before) old.insert(reminder.id());
  int fresh = 0;
  for (const v1::Reminder& reminder : all()) fresh += old.count(reminder.id()) > 0 ? 0 : 1;
  EXPECT_EQ(fresh, 2);  // soon and due
}

TEST_F(RemindersTest, WhatWasSeenToIsLeftOutAndWhatWasPutOffComesLater) {
  const auto before = all();
  v1::ReminderLog log;
  v1::ReminderMark& seen = *log.add_marks();
  seen.set_reminder_id(before[0].id());
  seen.mutable_settled_time()->set_seconds(1);
  v1::ReminderMark& later = *log.add_marks();
  later.set_reminder_id(before[1].id());
  later.mutable_snoozed_until_time()->set_seconds(before.back().remind_time().seconds() + 60);
  const auto after = withMarks(before, log);
  ASSERT_EQ(after.size(), before.size() - 1);
  EXPECT_EQ(after.back().id(), before[1].id());
}

}  // namespace
}  // namespace suppertide::compose
