// Reminders: what is told, where, and that nothing is told twice.
#include "client/session/reminders.h"

#include <gtest/gtest.h>

#include <QtTest/qsignalspy.h>
#include <QtTest/qtest.h>

#include "tests/compose/small_dinner.h"
#include "tests/support/temp_dir.h"
#include "tests/window/party.h"
#include "tests/window/patience.h"
#include "tests/window/sample.h"

namespace suppertide::testing {
namespace {

v1::Reminder soon(const char* id, const char* time, v1::ReminderKind kind = v1::REMINDER_KIND_STEP_DUE) {
  v1::Reminder reminder;
  reminder.set_id(id);
  reminder.set_event_id(kSampleEvent);
  reminder.set_member_id("ines");
  reminder.set_kind(kind);
  reminder.set_step_id("rolls/shape");
  reminder.set_dish_id("rolls");
  reminder.set_title("Shape the rolls");
  reminder.mutable_remind_time()->set_seconds(secondsAt(time));
  *reminder.mutable_due_time() = reminder.remind_time();
  return reminder;
}

v1::WatchRemindersResponse due(const v1::Reminder& reminder, bool rings = true) {
  v1::WatchRemindersResponse message;
  *message.mutable_due()->mutable_reminder() = reminder;
  message.mutable_due()->set_rings(rings);
  return message;
}

v1::WatchRemindersResponse upcoming(const v1::Reminder& reminder) {
  v1::WatchRemindersResponse message;
  *message.mutable_upcoming()->add_reminders() = reminder;
  return message;
}

// Without a server; the desktop has no service, so that the window is told.
class RemindersTest : public ::testing::Test {
 protected:
  RemindersTest() {
    session_.setMemberId("ines");
    session_.adopt(sampleReplica());
  }
  void setTime(const char* time) {
    now_ = Instant(std::chrono::seconds(secondsAt(time)));
    session_.tick();
  }
  QString title(int row = 0) { return reminders_.due()->value(row, QStringLiteral("title")).toString(); }

  Instant now_{std::chrono::seconds(secondsAt("2026-06-20T15:00:00+01:00"))};
  HouseholdSession session_{[this] { return now_; }};
  Notifier notifier_{QDBusConnection(QStringLiteral("no such bus"))};
  QSignalSpy shown_{&notifier_, &Notifier::shownHere};
  QSignalSpy rung_{&notifier_, &Notifier::ringsHere};
  Reminders reminders_{session_, notifier_};
};

TEST_F(RemindersTest, WhatIsDueIsSaidInWordsAndStaysUntilItIsSeenTo) {
  reminders_.reminderTold(due(soon("r1", "2026-06-20T15:00:00+01:00")));
  ASSERT_EQ(reminders_.due()->count(), 1);
  EXPECT_EQ(title().toStdString(), "Now: Shape the rolls");
  EXPECT_EQ(shown_.count(), 1);
  EXPECT_EQ(rung_.count(), 1);
  reminders_.settle(QStringLiteral("r1"));
  EXPECT_EQ(reminders_.due()->count(), 0);
  EXPECT_EQ(session_.waitingCount(), 1) << "the server is told when it is back";
}

TEST_F(RemindersTest, NothingIsToldTwice) {
  for (int i = 0; i < 2; ++i) reminders_.reminderTold(due(soon("r1", "2026-06-20T15:00:00+01:00")));
  reminders_.settle(QStringLiteral("r1"));
  v1::WatchRemindersResponse missed;
  *missed.mutable_missed()->add_reminders() = soon("r1", "2026-06-20T15:00:00+01:00");
  reminders_.reminderTold(missed);
  EXPECT_EQ(shown_.count(), 1);
  EXPECT_EQ(reminders_.due()->count(), 0);
}

TEST_F(RemindersTest, InQuietHoursItIsShownWithoutASound) {
  reminders_.reminderTold(due(soon("r1", "2026-06-20T15:00:00+01:00"), false));
  EXPECT_EQ(shown_.count(), 1);
  EXPECT_EQ(rung_.count(), 0);
}

TEST_F(RemindersTest, WhileTheServerIsAwayWhatWasToComeIsToldFromHere) {
  reminders_.reminderTold(upcoming(soon("r1", "2026-06-20T15:05:00+01:00")));
  reminders_.reminderStateChanged(link::LinkState::kConnecting, "cut");
  setTime("2026-06-20T15:04:00+01:00");
  EXPECT_EQ(shown_.count(), 0);
  setTime("2026-06-20T15:05:00+01:00");
  EXPECT_EQ(shown_.count(), 1);
  reminders_.reminderTold(due(soon("r1", "2026-06-20T15:05:00+01:00")));
  EXPECT_EQ(shown_.count(), 1) << "and not again when it is back";
}

TEST_F(RemindersTest, ASnoozedOneComesAgain) {
  reminders_.reminderTold(due(soon("r1", "2026-06-20T15:00:00+01:00")));
  reminders_.snooze(QStringLiteral("r1"), 10);
  EXPECT_EQ(reminders_.due()->count(), 0);
  setTime("2026-06-20T15:09:00+01:00");
  EXPECT_EQ(reminders_.due()->count(), 0);
  setTime("2026-06-20T15:10:00+01:00");
  EXPECT_EQ(reminders_.due()->count(), 1);
  EXPECT_EQ(shown_.count(), 2);
}

TEST_F(RemindersTest, WhatIsDoneIsTakenAway) {
  reminders_.reminderTold(due(soon("r1", "2026-06-20T15:00:00+01:00")));
  v1::Report report;
  report.set_dish_id("rolls");
  report.set_step_id("shape");
  report.set_finished(true);
  session_.report(report);
  EXPECT_EQ(reminders_.due()->count(), 0);
}

TEST_F(RemindersTest, ARestartDoesNotTellAgain) {
  const TempDir folder;
  link::LinkOptions nowhere;
  nowhere.target = "unix:" + folder.file("none.sock");
  for (int i = 0; i < 2; ++i) {
    Reminders reminders(session_, notifier_);
    reminders.start(nowhere, folder.file(""));
    reminders.reminderTold(due(soon("r1", "2026-06-20T15:00:00+01:00")));
  }
  EXPECT_EQ(shown_.count(), 1);
}

TEST_F(RemindersTest, OfAnEventThatIsNotHereYetItIsToldOnceItIs) {
  now_ = Instant(std::chrono::seconds(secondsAt("2026-06-20T15:00:00+01:00")));
  HouseholdSession early([this] { return now_; });
  Reminders reminders(early, notifier_);
  reminders.reminderTold(due(soon("r1", "2026-06-20T15:00:00+01:00")));
  EXPECT_EQ(shown_.count(), 0);
  early.adopt(sampleReplica());
  EXPECT_EQ(shown_.count(), 1);
}

// On a real server whose clock is set.
TEST(RemindersLiveTest, TheServersReminderIsToldAtItsTimeSnoozedAndSettled) {
  const v1::Bundle bundle = compose::smallDinner();
  Instant now = toInstant(bundle.events(0).work_start_time());
  Party party(bundle, now);
  party.plan(200);
  v1::ListRemindersRequest list;
  list.set_household_id(party.id());
  const auto coming = party.host().listReminders(list);
  ASSERT_TRUE(coming.ok()) << coming.status();
  ASSERT_FALSE(coming->reminders().empty());
  const Instant first = toInstant(coming->reminders(0).remind_time());
  const QString id = QString::fromStdString(coming->reminders(0).id());

  HouseholdSession session([&now] { return now; });
  session.setMemberId("ana");
  Notifier notifier{QDBusConnection(QStringLiteral("no such bus"))};
  QSignalSpy shown(&notifier, &Notifier::shownHere);
  Reminders reminders(session, notifier);
  session.start(party.deviceOf("ana"), party.eventId());
  reminders.start(party.deviceOf("ana"), {});
  const auto setTime = [&](Instant time) {
    now = time;
    party.clock().set(now);
    session.tick();
  };
  const auto waitFor = [](const std::function<bool()>& what) { return QTest::qWaitFor(what, kPatienceMs); };
  ASSERT_TRUE(
      waitFor([&] { return session.state() == HouseholdSession::Live && session.view() != nullptr; }));
  setTime(first);
  ASSERT_TRUE(waitFor([&] { return reminders.due()->rowOf(id) >= 0; }));
  const int told = static_cast<int>(shown.count());
  reminders.snooze(id, 10);
  ASSERT_TRUE(waitFor([&] { return session.waitingCount() == 0; }));
  EXPECT_LT(reminders.due()->rowOf(id), 0);
  setTime(first + std::chrono::minutes(10));
  ASSERT_TRUE(waitFor([&] { return reminders.due()->rowOf(id) >= 0; }));
  EXPECT_GT(shown.count(), told);
  reminders.settle(id);
  ASSERT_TRUE(waitFor([&] { return session.waitingCount() == 0; }));
  EXPECT_LT(reminders.due()->rowOf(id), 0);
  EXPECT_EQ(session.refused()->count(), 0);
}

}  // namespace
}  // namespace suppertide::testing
