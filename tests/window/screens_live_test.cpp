// The screens' controllers on a real server: what a tap tells, what a draft writes, what a look corrects.
#include <gtest/gtest.h>

#include <QtTest/qsignalspy.h>
#include <QtTest/qtest.h>

#include "client/doughs/doughs_controller.h"
#include "client/event/event_controller.h"
#include "client/tasks/tasks_controller.h"
#include "tests/compose/small_dinner.h"
#include "tests/window/party.h"
#include "tests/window/patience.h"
#include "tests/window/real_household.h"

namespace suppertide::testing {
namespace {

class ScreensLiveTest : public ::testing::Test {
 protected:
  ScreensLiveTest() { session_.setMemberId("ana"); }
  // Planned, and Ana's device is live.
  void open() {
    household_.plan();
    session_.start(household_.host(), "supper");
    ASSERT_TRUE(QTest::qWaitFor(
        [this] { return session_.state() == HouseholdSession::Live && session_.view() != nullptr; },
        kPatienceMs));
  }
  bool waitFor(const std::function<bool()>& what) { return QTest::qWaitFor(what, kPatienceMs); }
  const v1::Event& stored() const { return session_.replica()->events.at("supper"); }

  RealHousehold household_;
  Instant now_ = std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
  HouseholdSession session_{[this] { return now_; }};
};

TEST_F(ScreensLiveTest, DoneIsToldAndCanBeTakenBack) {
  open();
  TasksController tasks;
  tasks.setSession(&session_);
  tasks.finish(QStringLiteral("roast/season"));
  ASSERT_TRUE(waitFor([&] { return session_.view()->progress().isOver("roast/season"); }));
  EXPECT_EQ(session_.undoText().toStdString(), "“Season the roast” done");
  session_.undo();
  EXPECT_TRUE(waitFor([&] { return !session_.view()->progress().isOver("roast/season"); }));
}

TEST_F(ScreensLiveTest, ADraftIsCheckedAndThenKept) {
  open();
  EventController dinner;
  dinner.setSession(&session_);
  dinner.addGuest(QStringLiteral("Mira"));
  const QString mira = dinner.guests()->value(8, QStringLiteral("guestId")).toString();
  dinner.addNeed(mira, QStringLiteral("milk"));
  ASSERT_TRUE(waitFor([&] { return !dinner.checking() && dinner.warnings()->count() > 0; }));
  const int rolls = dinner.dishes()->rowOf(QStringLiteral("rolls"));
  EXPECT_TRUE(dinner.dishes()
                  ->value(rolls, QStringLiteral("collisions"))
                  .toString()
                  .contains(QStringLiteral("Mira")));
  EXPECT_EQ(stored().guests_size(), 8) << "nobody else sees it yet";
  dinner.keep();
  ASSERT_TRUE(waitFor([&] { return stored().guests_size() == 9; }));
  EXPECT_TRUE(waitFor([&] { return !dinner.editing(); }));
}

TEST_F(ScreensLiveTest, WhatIsWrongStandsBesideItsField) {
  open();
  EventController dinner;
  dinner.setSession(&session_);
  dinner.setName(QString());
  dinner.removeDish(QStringLiteral("rolls"));
  ASSERT_TRUE(waitFor([&] { return !dinner.checking() && dinner.problemCount() > 0; }));
  EXPECT_FALSE(dinner.problem().isEmpty());
  dinner.setName(QStringLiteral("Supper"));
  EXPECT_TRUE(waitFor([&] { return !dinner.checking() && dinner.problemCount() == 0; }));
}

TEST_F(ScreensLiveTest, ANewEventIsMadeAndShown) {
  open();
  EventController dinner;
  dinner.setSession(&session_);
  dinner.makeNew();
  dinner.setName(QStringLiteral("Breakfast"));
  dinner.addDish(QStringLiteral("rolls"), dinner.courses()->value(0, QStringLiteral("courseId")).toString());
  ASSERT_TRUE(waitFor([&] { return !dinner.checking(); }));
  EXPECT_EQ(dinner.problemCount(), 0);
  dinner.keep();
  ASSERT_TRUE(waitFor(
      [&] { return session_.view() != nullptr && session_.view()->event().display_name() == "Breakfast"; }));
  EXPECT_FALSE(dinner.editing());
}

TEST_F(ScreensLiveTest, SomebodyElsesChangeIsNotOverwritten) {
  open();
  EventController dinner;
  dinner.setSession(&session_);
  dinner.setName(QStringLiteral("Mine"));
  v1::UpdateEventRequest theirs;
  *theirs.mutable_event() = stored();
  theirs.mutable_event()->set_display_name("Theirs");
  theirs.set_household_id(household_.id());
  theirs.set_request_id("their-change");
  ASSERT_TRUE(household_.calls().write(theirs).ok());
  ASSERT_TRUE(waitFor([&] { return stored().display_name() == "Theirs"; }));
  dinner.keep();
  ASSERT_TRUE(waitFor([&] { return dinner.differences()->count() > 0; }));
  EXPECT_TRUE(dinner.editing()) << "the change is still here";
  EXPECT_EQ(stored().display_name(), "Theirs");
  EXPECT_EQ(dinner.differences()->value(0, QStringLiteral("mine")).toString().toStdString(), "Mine");
  EXPECT_EQ(dinner.differences()->value(0, QStringLiteral("theirs")).toString().toStdString(), "Theirs");
  EXPECT_EQ(dinner.otherName().toStdString(), "Ana");
  dinner.keep();
  EXPECT_TRUE(waitFor([&] { return stored().display_name() == "Mine" && session_.waitingCount() == 0; }));
  EXPECT_EQ(session_.refused()->count(), 0);
}

// On a server whose clock stands in the middle of the proof.
TEST(DoughsLiveTest, TheCurveCorrectsItselfBeforeAnythingIsTold) {
  const v1::Bundle dinner = compose::smallDinner();
  Instant now = toInstant(dinner.events(0).work_start_time());
  Party party(dinner, now);
  party.plan(200);
  HouseholdSession session([&now] { return now; });
  session.setMemberId("ana");
  session.start(party.deviceOf("ana"), party.eventId());
  const auto waitFor = [](const std::function<bool()>& what) { return QTest::qWaitFor(what, kPatienceMs); };
  ASSERT_TRUE(
      waitFor([&] { return session.state() == HouseholdSession::Live && session.view() != nullptr; }));
  const v1::FermentForecast* proof = nullptr;
  for (const v1::FermentForecast& stage : session.view()->plan()->doughs(0).stages())
    if (stage.step_id() == "rolls/proof") proof = &stage;
  ASSERT_NE(proof, nullptr);
  now = toInstant(proof->start_time()) + (toInstant(proof->end_time()) - toInstant(proof->start_time())) / 2;
  party.clock().set(now);
  session.tick();
  DoughsController doughs;
  doughs.setSession(&session);
  ASSERT_EQ(doughs.stageId().toStdString(), "rolls/proof");
  ASSERT_TRUE(doughs.mayTell());
  doughs.nudgeRise(1);
  for (int i = 0; i < 4; ++i) doughs.nudgeRise(1);
  ASSERT_TRUE(waitFor([&] { return !doughs.working(); }));
  ASSERT_TRUE(doughs.corrected().known) << doughs.correctedText().toStdString();
  EXPECT_LT(doughs.corrected().best, doughs.curve().best) << "risen more than forecast: ready sooner";
  EXPECT_EQ(session.replica()->progresses.count(party.eventId()), 0U) << "nothing was told";
  doughs.tell();
  EXPECT_TRUE(waitFor([&] { return session.waitingCount() == 0; }));
  EXPECT_EQ(session.refused()->count(), 0);
  EXPECT_EQ(doughs.seen()->count(), 1);
}

}  // namespace
}  // namespace suppertide::testing
