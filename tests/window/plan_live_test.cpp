// Planning in the window against the real server: streamed, stopped, asked "what if?", remedied, taken back.
#include <gtest/gtest.h>

#include <QtTest/qsignalspy.h>
#include <QtTest/qtest.h>

#include "tests/compose/small_dinner.h"
#include "tests/window/find_item.h"
#include "tests/window/patience.h"
#include "tests/window/served_household.h"

namespace suppertide::testing {
namespace {

// So much that no search is over before it is told to be.
v1::Bundle crowdedDinner() {
  v1::Bundle dinner = compose::smallDinner();
  v1::Event& event = *dinner.mutable_events(0);
  const auto dishes = event.dishes();
  for (int copy = 2; copy <= 6; ++copy)
    for (const v1::Dish& dish : dishes) {
      v1::Dish& more = *event.add_dishes();
      more = dish;
      more.set_id(dish.id() + "-" + std::to_string(copy));
    }
  return dinner;
}

class PlanLiveTest : public ::testing::Test {
 protected:
  void open(const v1::Bundle& bundle) {
    household_ = std::make_unique<ServedHousehold>(bundle);
    app_ = std::make_unique<WindowApp>(household_->options());
    ASSERT_NE(app_->window(), nullptr);
    waitFor([&] { return session().state() == HouseholdSession::Live && planning().mayPlan(); });
  }
  void openPlanned() {
    open(compose::smallDinner());
    planning().run()->begin(2);
    waitFor([&] { return planning().hasPlan() && !planning().previewing(); });
  }
  template <class Condition>
  void waitFor(Condition condition) {
    ASSERT_TRUE(QTest::qWaitFor(condition, kPatienceMs));
  }
  HouseholdSession& session() { return app_->session(); }
  Planning& planning() { return app_->planning(); }
  const v1::PlannedStep& step(const char* id) { return *session().view()->step(id); }
  QQuickItem* item(const char* name) {
    return findItem(app_->window()->contentItem(), QString::fromUtf8(name));
  }

  // Leaves a picture in the build folder, to be looked at.
  void look(const char* name) {
    EXPECT_TRUE(
        app_->picture().save(QStringLiteral(SUPPERTIDE_PICTURES "/%1.png").arg(QString::fromUtf8(name))));
  }

  std::unique_ptr<ServedHousehold> household_;
  std::unique_ptr<WindowApp> app_;
};

TEST_F(PlanLiveTest, AnEventWithoutAPlanAsksToBePlannedAndShowsEachBetterPlanAtOnce) {
  open(crowdedDinner());
  QQuickItem* button = item("emptyAction");
  ASSERT_NE(button, nullptr);
  EXPECT_EQ(button->property("text").toString(), QStringLiteral("Plan this event"));
  QMetaObject::invokeMethod(button, "clicked");
  waitFor([&] { return app_->timeline().hasPlan(); });
  EXPECT_TRUE(planning().run()->running()) << "the first plan is shown while it goes on";
  EXPECT_FALSE(planning().hasPlan()) << "and is not the household's yet";
  EXPECT_FALSE(planning().run()->proven().isEmpty());
  look("plan_running");
  QQuickItem* stop = item("stopPlanning");
  ASSERT_NE(stop, nullptr);
  QMetaObject::invokeMethod(stop, "clicked");
  EXPECT_TRUE(planning().run()->stopping());
  waitFor([&] { return planning().hasPlan() && !planning().previewing(); });
  EXPECT_TRUE(app_->timeline().hasPlan());
  EXPECT_FALSE(planning().run()->running());
}

TEST_F(PlanLiveTest, AnotherDeviceSeesThatItIsBeingPlannedAndThenThePlan) {
  open(crowdedDinner());
  WindowApp other(household_->options());
  waitFor([&] { return other.planning().mayPlan(); });
  planning().run()->begin(60);
  waitFor([&] { return app_->timeline().hasPlan(); });
  other.planning().run()->begin();
  waitFor([&] { return other.planning().run()->elsewhere(); });
  other.planning().run()->stop();
  waitFor([&] { return other.planning().hasPlan() && other.timeline().hasPlan(); });
  EXPECT_FALSE(other.planning().run()->elsewhere());
  EXPECT_TRUE(other.planning().run()->trouble().isEmpty());
}

TEST_F(PlanLiveTest, AMovedStepIsAskedAboutAppliedAndTakenBack) {
  openPlanned();
  const std::int64_t before = step("gratin/prepare").start_time().seconds();
  app_->timeline().choose(QStringLiteral("gratin/prepare"));
  app_->timeline().moveChosen(-60);
  app_->timeline().askMove();
  WhatIf& whatIf = *planning().whatIf();
  waitFor([&] { return whatIf.answered(); });
  waitFor([&] { return app_->timeline().comparing(); });
  EXPECT_GE(whatIf.moves()->count(), 1);
  look("plan_what_if");
  EXPECT_EQ(step("gratin/prepare").start_time().seconds(), before) << "nothing is changed yet";
  ASSERT_TRUE(whatIf.mayApply()) << whatIf.obstacle().toStdString();
  whatIf.apply();
  waitFor([&] { return !whatIf.isOpen(); });
  EXPECT_EQ(step("gratin/prepare").start_time().seconds(), before - 3600);
  EXPECT_TRUE(session().view()->isPinned(step("gratin/prepare")));
  EXPECT_TRUE(planning().outOfDate().isEmpty()) << planning().outOfDate().toStdString();
  EXPECT_TRUE(session().undoText().contains(QStringLiteral("instead of"))) << "one undo for all";
  session().undo();
  waitFor([&] { return step("gratin/prepare").start_time().seconds() == before; });
  EXPECT_FALSE(session().view()->isPinned(step("gratin/prepare")));
}

TEST_F(PlanLiveTest, APinStaysUntilItIsLetGo) {
  openPlanned();
  WhatIf& whatIf = *planning().whatIf();
  whatIf.ask(QStringLiteral("roast/season"), 0);
  waitFor([&] { return whatIf.answered(); });
  EXPECT_EQ(whatIf.summary().toStdString(), "Nothing else has to move.");
  whatIf.apply();
  waitFor([&] { return !whatIf.isOpen(); });
  EXPECT_TRUE(session().view()->isPinned(step("roast/season")));
  whatIf.askFree(QStringLiteral("roast/season"));
  waitFor([&] { return whatIf.answered(); });
  whatIf.apply();
  waitFor([&] { return !whatIf.isOpen(); });
  EXPECT_FALSE(session().view()->isPinned(step("roast/season")));
}

TEST_F(PlanLiveTest, AChangedRecipeMakesThePlanOldUntilItIsAdapted) {
  openPlanned();
  v1::UpdateEventRequest request;
  *request.mutable_event() = session().view()->event();
  request.mutable_event()->mutable_courses(0)->mutable_serving_time()->set_seconds(
      session().view()->event().courses(0).serving_time().seconds() + 1800);
  session().send(request);
  waitFor([&] { return !planning().outOfDate().isEmpty(); });
  EXPECT_EQ(planning().outOfDate().toStdString(), "Changed since it was planned: Sunday supper.");
  planning().run()->adapt();
  waitFor([&] { return !planning().run()->running() && planning().outOfDate().isEmpty(); });
  EXPECT_EQ(planning().run()->trouble().toStdString(), "");
}

// The rolls and the gratin want their own temperatures in the one oven, and neither may wait.
v1::Bundle clashingDinner() {
  v1::Bundle bundle = compose::smallDinner();
  for (const int recipe : {0, 2}) {
    for (v1::Step& step : *bundle.mutable_recipes(recipe)->mutable_steps()) {
      if (!step.has_oven()) continue;
      step.mutable_oven()->set_min_setpoint_celsius(step.oven().setpoint_celsius());
      step.mutable_oven()->set_max_setpoint_celsius(step.oven().setpoint_celsius());
    }
    bundle.mutable_recipes(recipe)->mutable_holding()->mutable_longest()->set_seconds(300);
    bundle.mutable_recipes(recipe)->mutable_holding()->clear_best_until();
  }
  bundle.mutable_events(0)->mutable_courses(0)->mutable_late_limit()->set_seconds(0);
  return bundle;
}

TEST_F(PlanLiveTest, WhatDoesNotFitIsNamedWithWhatWouldHelpPreviewedAndApplied) {
  open(clashingDinner());
  planning().run()->begin(4);
  waitFor([&] { return planning().hasPlan() && !planning().previewing(); });
  ASSERT_FALSE(planning().shortfall().isEmpty()) << "the example is meant not to fit";
  RemedySearch& search = *planning().remedies();
  search.begin();
  EXPECT_GT(search.clashes()->count(), 0);
  waitFor([&] { return !search.running(); });
  ASSERT_GT(search.remedies()->count(), 0) << search.progress().toStdString();
  const int first = search.remedies()->data(search.remedies()->index(0, 0), RemedyModel::NumberRole).toInt();
  search.choose(first);
  waitFor([&] { return app_->timeline().comparing(); });
  EXPECT_FALSE(planning().shortfall().isEmpty()) << "nothing is changed yet";
  look("plan_clash");
  ASSERT_TRUE(search.obstacle().isEmpty()) << search.obstacle().toStdString();
  search.apply();
  waitFor([&] { return !search.isOpen() && planning().shortfall().isEmpty(); });
  EXPECT_TRUE(planning().outOfDate().isEmpty());
}

}  // namespace
}  // namespace suppertide::testing
