// What an oven does at a moment, its day on a chart, and the cursor that all share.
#include <gtest/gtest.h>

#include <QtTest/qabstractitemmodeltester.h>

#include "client/ovens/ovens_controller.h"
#include "client/ovens/settled_words.h"
#include "tests/window/moment.h"
#include "tests/window/sample.h"

namespace suppertide {
namespace {

class OvenReadingTest : public ::testing::Test {
 protected:
  const v1::OvenProgram& large() const { return view_.plan()->oven_programs(0); }
  PlanView view_{testing::sampleReplica(), testing::kSampleEvent};
};

TEST_F(OvenReadingTest, TellsWhichDishStandsOnWhichRack) {
  const OvenAt both = ovenAt(view_, large(), at("2026-06-20T15:30:00Z"));
  ASSERT_EQ(both.dishes.size(), 2U);
  EXPECT_EQ(both.dishes[0].step->id(), "chicken/roast");
  EXPECT_EQ(both.dishes[0].positions, std::vector<int>{1});
  EXPECT_EQ(both.segment->setpoint_celsius(), 195);
  const OvenAt one = ovenAt(view_, large(), at("2026-06-20T14:50:00Z"));
  ASSERT_EQ(one.dishes.size(), 1U) << "the gratin goes in at 15:10";
}

TEST_F(OvenReadingTest, IsOffBetweenItsPrograms) {
  const OvenAt off = ovenAt(view_, large(), at("2026-06-20T12:00:00Z"));
  EXPECT_EQ(off.segment, nullptr);
  EXPECT_TRUE(off.dishes.empty());
}

TEST_F(OvenReadingTest, ItsDayHoldsEveryUseAndItsCurveStaysOnTheChart) {
  const auto days = ovenDays(view_);
  ASSERT_EQ(days.size(), 1U);
  const HeatAxis axis = heatAxis(view_, days[0]);
  EXPECT_LT(axis.start, at("2026-06-20T06:30:00Z"));
  const auto lines = temperatureLines(large(), axis);
  ASSERT_GE(lines.size(), 1U);
  for (const auto& line : lines)
    for (const QPointF& point : line) EXPECT_LE(point.y(), 1 / 1.1) << "room above the hottest";
  EXPECT_EQ(axis.at(axis.x(at("2026-06-20T12:02:00Z"))), at("2026-06-20T12:00:00Z"))
      << "on the clock's fives";
}

TEST(SettledWordsTest, SaysWhoGaveWay) {
  const PlanView view(testing::sampleReplica(), testing::kSampleEvent);
  v1::OvenClash clash;
  clash.set_oven_id("large");
  clash.set_step_a_id("loaf/bake");
  clash.set_step_b_id("beet/roast");
  for (v1::TimeSpan* span : {clash.mutable_naive_a(), clash.mutable_naive_b()})
    span->mutable_start()->set_seconds(testing::secondsAt("2026-06-20T14:10:00Z"));
  clash.set_naive_setpoint_a_celsius(240);
  clash.set_naive_setpoint_b_celsius(200);
  clash.mutable_moved_a()->set_seconds(-40 * 60);
  const SettledWords words(view);
  EXPECT_EQ(words.settled(clash).toStdString().find("goes in 40 min earlier") != std::string::npos, true);
  EXPECT_NE(words.wanted(clash).toStdString().find("Large oven on Sat 15:10"), std::string::npos);
  clash.clear_moved_a();
  EXPECT_EQ(words.settled(clash).toStdString(), "There was room for both.");
}

class OvensControllerTest : public ::testing::Test {
 protected:
  OvensControllerTest() {
    session_.adopt(testing::sampleReplica());
    ovens_.setSession(&session_);
  }
  std::string headline(int row) const {
    return ovens_.ovens()->value(row, QStringLiteral("headline")).toString().toStdString();
  }

  HouseholdSession session_{[] { return at("2026-06-20T16:30:00+01:00"); }};
  mutable OvensController ovens_;
  QAbstractItemModelTester list_{ovens_.ovens(), QAbstractItemModelTester::FailureReportingMode::Fatal};
};

TEST_F(OvensControllerTest, StandsAtNowUntilTheCursorIsMoved) {
  EXPECT_EQ(ovens_.cursorText().toStdString(), "Sat 16:30");
  EXPECT_EQ(headline(0), "Set to 195 °C until 17:35");
  ovens_.nudgeCursor(-120);
  EXPECT_EQ(ovens_.cursorText().toStdString(), "Sat 14:30");
  EXPECT_EQ(headline(0), "Off");
  EXPECT_FALSE(ovens_.atNow());
  ovens_.toNow();
  EXPECT_EQ(headline(0), "Set to 195 °C until 17:35");
}

TEST_F(OvensControllerTest, WhatMayFitIsToBeTriedWithTheColdPans) {
  const auto loose = [&] {
    return ovens_.ovens()->value(0, QStringLiteral("loose")).toString().toStdString();
  };
  EXPECT_EQ(loose(), "");
  link::Replica changed = *testing::sampleReplica();
  v1::Plan& plan = changed.plans.begin()->second;
  v1::RackDoubt& doubt = *plan.add_rack_doubts();
  doubt.set_oven_id(plan.oven_programs(0).oven_id());
  doubt.add_step_ids("chicken/roast");
  doubt.add_step_ids("gratin/bake");
  for (v1::OvenSegment& segment : *plan.mutable_oven_programs(0)->mutable_segments())
    for (v1::RackUse& use : *segment.mutable_racks()) {
      use.clear_positions();
      use.set_may_fit(true);
    }
  session_.adopt(std::make_shared<const link::Replica>(changed));
  EXPECT_NE(loose().find("Where there is room: "), std::string::npos) << loose();
  EXPECT_NE(loose().find("\nMay fit: try it with the cold pans first.\n"), std::string::npos) << loose();
  EXPECT_NE(loose().find("The plan does not count on it."), std::string::npos) << loose();
}

TEST_F(OvensControllerTest, GoesFromChangeToChange) {
  ovens_.toChange(1);
  EXPECT_EQ(ovens_.cursorText().toStdString(), "Sat 16:40") << "the rolls go in";
  ovens_.toChange(-1);
  ovens_.toChange(-1);
  EXPECT_LT(ovens_.cursorX(), ovens_.nowX());
}

TEST_F(OvensControllerTest, StaysOnTheChart) {
  ovens_.nudgeCursor(-10'000);
  EXPECT_GE(ovens_.cursorX(), 0);
  ovens_.moveCursor(7);
  EXPECT_LE(ovens_.cursorX(), 1.01);
}

}  // namespace
}  // namespace suppertide
