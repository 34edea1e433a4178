// An event being changed, and how it reads.
#include <gtest/gtest.h>

#include <QtTest/qabstractitemmodeltester.h>

#include <set>

#include "client/event/event_controller.h"
#include "tests/window/sample.h"

namespace suppertide {
namespace {

const QTimeZone kLisbon("Europe/Lisbon");

v1::Event sampleEvent() {
  return testing::sampleReplica()->events.at(testing::kSampleEvent);
}

TEST(EventDraftTest, KeepsTheCoursesInTheOrderOfTheirTimes) {
  EventDraft draft(sampleEvent(), kLisbon);
  EXPECT_TRUE(draft.setServing("sweet", 16 * 60));
  EXPECT_EQ(draft.event().courses(0).id(), "sweet");
  EXPECT_EQ(draft.event().courses(0).serving_time().seconds(),
            testing::secondsAt("2026-06-20T16:00:00+01:00"));
  EXPECT_FALSE(draft.setServing("none", 0));
}

TEST(EventDraftTest, MovesToAnotherDayAtTheSameHours) {
  EventDraft draft(sampleEvent(), kLisbon);
  // Over the end of summer time.
  draft.moveToDay(QDate(2026, 11, 7));
  EXPECT_EQ(draft.event().courses(0).serving_time().seconds(),
            testing::secondsAt("2026-11-07T17:05:00+00:00"));
  EXPECT_EQ(draft.event().courses(2).serving_time().seconds(),
            testing::secondsAt("2026-11-07T19:00:00+00:00"));
}

TEST(EventDraftTest, ADishMadeTwiceHasTwoIds) {
  EventDraft draft(sampleEvent(), kLisbon);
  const std::string first = draft.addDish("r-soup", "main");
  const std::string second = draft.addDish("r-soup", "main");
  EXPECT_NE(first, second);
  EXPECT_EQ(draft.event().dishes_size(), sampleEvent().dishes_size() + 2);
}

TEST(EventDraftTest, WhatGoesTakesAlongWhatNamesIt) {
  EventDraft draft(sampleEvent(), kLisbon);
  draft.setDishCook("soup", "noor");
  draft.setCooks("noor", false);
  EXPECT_EQ(draft.event().cooks_size(), 2);
  EXPECT_TRUE(draft.event().dishes(0).cook_member_id().empty());
  draft.removeCourse("main");
  for (const v1::Dish& dish : draft.event().dishes()) EXPECT_NE(dish.course_id(), "main");
  draft.removeCourse("first");
  draft.removeCourse("sweet");
  EXPECT_EQ(draft.event().courses_size(), 1) << "the last course stays";
}

TEST(EventDraftTest, GuestsHaveNeedsOnce) {
  EventDraft draft(sampleEvent(), kLisbon);
  const std::string mira = draft.addGuest("Mira");
  draft.addNeed(mira, "gluten", v1::NEED_SEVERITY_AVOID);
  draft.addNeed(mira, "gluten", v1::NEED_SEVERITY_NO_TRACES);
  const v1::Guest& guest = draft.event().guests(draft.event().guests_size() - 1);
  ASSERT_EQ(guest.needs_size(), 1);
  EXPECT_EQ(MenuWords::needs(guest).toStdString(), "gluten: not even traces");
  draft.removeNeed(mira, 5);
  draft.removeNeed(mira, 0);
  EXPECT_EQ(guest.needs_size(), 0);
}

class EventReaderTest : public ::testing::Test {
 protected:
  EventReaderTest() {
    EventDraft draft(sampleEvent(), kLisbon);
    guest_ = draft.addGuest("Mira");
    draft.addNeed(guest_, "gluten", v1::NEED_SEVERITY_AVOID);
    event_ = draft.event();
  }
  std::shared_ptr<const link::Replica> replica_ = testing::sampleReplica();
  std::string guest_;
  v1::Event event_;
};

TEST_F(EventReaderTest, SaysWhichGuestADishIsNotFor) {
  v1::CheckMenuResponse check;
  v1::GuestCourse* cell = check.add_cells();
  cell->set_guest_id(guest_);
  v1::DishForGuest* dish = cell->add_dishes();
  dish->set_dish_id("loaf");
  dish->set_fit(v1::DISH_FIT_HOLDS);
  v1::FitReason* reason = dish->add_reasons();
  reason->set_fit(v1::DISH_FIT_HOLDS);
  reason->set_ingredient("rye flour, fine");
  reason->set_substance("gluten");
  v1::MenuWarning* warning = check.add_warnings();
  warning->set_kind(v1::MENU_WARNING_KIND_NOTHING_TO_EAT);
  warning->set_guest_id(guest_);
  warning->set_course_id("first");
  const EventLists lists = EventReader(*replica_, event_, &check, {}).read();
  bool told = false;
  for (const Record& one : lists.dishes) {
    if (one.value(QStringLiteral("dishId")) != QStringLiteral("loaf")) continue;
    told = true;
    EXPECT_EQ(one.value(QStringLiteral("collisions")).toString().toStdString(),
              "Not for Mira: rye flour (gluten)");
    EXPECT_TRUE(one.value(QStringLiteral("grave")).toBool());
  }
  EXPECT_TRUE(told);
  ASSERT_EQ(lists.warnings.size(), 1U);
  EXPECT_EQ(lists.warnings[0].value(QStringLiteral("words")).toString().toStdString(),
            "Mira has nothing to eat at “Soup and bread”.");
  EXPECT_EQ(lists.guestText.toStdString(), "1 guest, 1 with needs");
}

TEST_F(EventReaderTest, PutsWhatIsWrongBesideItsField) {
  const QHash<QString, QString> problems{
      {QStringLiteral("courses[1].servingTime"), QStringLiteral("too early")}};
  const EventLists lists = EventReader(*replica_, event_, nullptr, problems).read();
  EXPECT_TRUE(lists.courses[0].value(QStringLiteral("problem")).toString().isEmpty());
  EXPECT_EQ(lists.courses[1].value(QStringLiteral("problem")).toString().toStdString(), "too early");
}

class EventControllerTest : public ::testing::Test {
 protected:
  EventControllerTest() {
    session_.adopt(testing::sampleReplica());
    session_.setMemberId("ines");
    dinner_.setSession(&session_);
  }
  HouseholdSession session_{
      [] { return Instant(std::chrono::seconds(testing::secondsAt("2026-06-10T12:00:00Z"))); }};
  EventController dinner_;
  QAbstractItemModelTester courses_{dinner_.courses(), QAbstractItemModelTester::FailureReportingMode::Fatal};
  QAbstractItemModelTester guests_{dinner_.guests(), QAbstractItemModelTester::FailureReportingMode::Fatal};
  QAbstractItemModelTester dishes_{dinner_.dishes(), QAbstractItemModelTester::FailureReportingMode::Fatal};
};

TEST_F(EventControllerTest, AChangeIsADraftThatCanBePutBack) {
  ASSERT_EQ(dinner_.guests()->count(), 0);
  dinner_.addGuest(QStringLiteral(" Mira "));
  EXPECT_TRUE(dinner_.editing());
  ASSERT_EQ(dinner_.guests()->count(), 1);
  EXPECT_EQ(dinner_.guests()->value(0, QStringLiteral("name")).toString().toStdString(), "Mira");
  dinner_.putBack();
  EXPECT_FALSE(dinner_.editing());
  EXPECT_EQ(dinner_.guests()->count(), 0);
}

TEST_F(EventControllerTest, ACookSeesButDoesNotChange) {
  session_.setMemberId("noor");
  EXPECT_FALSE(dinner_.mayEdit());
  dinner_.addGuest(QStringLiteral("Mira"));
  dinner_.edit();
  EXPECT_FALSE(dinner_.editing());
}

TEST_F(EventControllerTest, ANewEventBeginsWithOneCourseInAWeek) {
  dinner_.makeNew();
  EXPECT_TRUE(dinner_.isNew());
  EXPECT_EQ(dinner_.dayText().toStdString(), "Wednesday 17 June");
  EXPECT_EQ(dinner_.courses()->count(), 1);
  EXPECT_EQ(dinner_.dishes()->count(), 0);
  dinner_.putBack();
  EXPECT_EQ(dinner_.courses()->count(), 3) << "the shown event again";
}

// No server has been reached: what is kept is shown, waits, and is one of the changes that undo takes back.
TEST_F(EventControllerTest, WhatIsKeptWhileTheServerIsAwayIsShownAndWaits) {
  const QString before = dinner_.name();
  dinner_.setName(QStringLiteral("Supper in the yard"));
  dinner_.keep();
  EXPECT_FALSE(dinner_.editing());
  EXPECT_EQ(dinner_.name().toStdString(), "Supper in the yard");
  EXPECT_EQ(session_.waitingCount(), 1);
  session_.undo();
  EXPECT_EQ(dinner_.name(), before);
}

TEST_F(EventControllerTest, ANewEventIsGoneToAtOnce) {
  dinner_.makeNew();
  dinner_.setName(QStringLiteral("Breakfast"));
  dinner_.keep();
  EXPECT_EQ(dinner_.name().toStdString(), "Breakfast");
  EXPECT_EQ(session_.view()->event().display_name(), "Breakfast");
}

TEST_F(EventControllerTest, SeverityTurnsRound) {
  dinner_.addGuest(QStringLiteral("Mira"));
  const QString id = dinner_.guests()->value(0, QStringLiteral("guestId")).toString();
  dinner_.addNeed(id, QStringLiteral("milk"));
  std::set<std::string> seen;
  for (int turn = 0; turn < 3; ++turn) {
    seen.insert(dinner_.guests()->value(0, QStringLiteral("needsText")).toString().toStdString());
    dinner_.turnSeverity(id, 0);
  }
  EXPECT_EQ(seen.size(), 3U);
}

}  // namespace
}  // namespace suppertide
