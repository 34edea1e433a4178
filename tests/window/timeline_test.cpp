// The state of the view: where it looks, what it marks, what it says.
#include "client/timeline/timeline.h"

#include <gtest/gtest.h>

#include <QtTest/qsignalspy.h>
#include <QtTest/qtest.h>

#include "client/timeline/timeline_keys.h"
#include "tests/window/moment.h"
#include "tests/window/sample.h"

namespace suppertide {
namespace {

class TimelineTest : public ::testing::Test {
 protected:
  TimelineTest() {
    timeline_.setViewWidth(1000);
    timeline_.setNow(at("2026-06-20T15:20:00+01:00"));
    timeline_.show(testing::sampleReplica(), testing::kSampleEvent);
  }

  bool movedMark(const char* lane, const char* id) {
    for (const StepRow& step : timeline_.lanes()->steps(QString::fromUtf8(lane))->allSteps()) {
      if (step.id == QLatin1String(id)) return step.moved;
    }
    ADD_FAILURE() << id << " is not in " << lane;
    return false;
  }
  double span() { return timeline_.viewWidth() / timeline_.pixelsPerMinute(); }
  double nowX() { return timeline_.offset() + timeline_.nowMinute() * timeline_.pixelsPerMinute(); }

  Timeline timeline_;
  QSignalSpy notices_{&timeline_, &Timeline::changed};
};

TEST_F(TimelineTest, BeginsAtNowWhenNowIsInThePlan) {
  EXPECT_TRUE(timeline_.hasPlan());
  EXPECT_NEAR(nowX(), 200, 1);
}

TEST_F(TimelineTest, BeginsWithTheWholePlanWhenNowIsFarAway) {
  Timeline early;
  early.setViewWidth(1000);
  early.setNow(at("2026-06-01T12:00:00+01:00"));
  early.show(testing::sampleReplica(), testing::kSampleEvent);
  EXPECT_GT(early.viewWidth() / early.pixelsPerMinute(), 2 * 24 * 60);
}

TEST_F(TimelineTest, AChangedPlanMarksWhatMovedAndSaysWho) {
  timeline_.show(testing::sampleWithStepLater("rolls/shape", 5), testing::kSampleEvent,
                 QStringLiteral("Noor"));
  ASSERT_EQ(notices_.size(), 1);
  EXPECT_EQ(notices_[0][0].toString().toStdString(), "Noor changed the plan: “Shape the rolls” moved");
  EXPECT_TRUE(movedMark("cook/ines", "rolls/shape"));
  EXPECT_FALSE(movedMark("cook/ines", "rolls/mix"));
  timeline_.endHighlight();
  EXPECT_FALSE(movedMark("cook/ines", "rolls/shape"));
}

TEST_F(TimelineTest, AnUnchangedPlanSaysNothing) {
  timeline_.show(testing::sampleReplica(), testing::kSampleEvent, QStringLiteral("Noor"));
  EXPECT_EQ(notices_.size(), 0);
}

TEST_F(TimelineTest, AChangeLeavesTheViewWhereItIs) {
  timeline_.panBy(123);
  const double offset = timeline_.offset();
  timeline_.show(testing::sampleWithStepLater("loaf/feed", -600), testing::kSampleEvent);
  EXPECT_DOUBLE_EQ(timeline_.offset(), offset);
}

TEST_F(TimelineTest, TheDetailsFollowTheirStepThroughAChange) {
  timeline_.choose(QStringLiteral("rolls/shape"));
  ASSERT_TRUE(timeline_.detailsOpen());
  EXPECT_TRUE(timeline_.details().when.contains(QStringLiteral("15:05–15:30")));
  timeline_.show(testing::sampleWithStepLater("rolls/shape", 5), testing::kSampleEvent);
  EXPECT_TRUE(timeline_.details().when.contains(QStringLiteral("15:10–15:35")));
  timeline_.closeDetails();
  EXPECT_FALSE(timeline_.detailsOpen());
}

TEST_F(TimelineTest, AStepThatIsGoneClosesItsDetails) {
  timeline_.choose(QStringLiteral("rolls/shape"));
  link::Replica replica = *testing::sampleReplica();
  auto& steps = *replica.plans.at(testing::kSampleEvent).mutable_steps();
  for (int i = steps.size() - 1; i >= 0; --i) {
    if (steps[i].dish_id() == "rolls") steps.DeleteSubrange(i, 1);
  }
  timeline_.show(std::make_shared<link::Replica>(replica), testing::kSampleEvent);
  EXPECT_FALSE(timeline_.detailsOpen());
  EXPECT_EQ(notices_[0][0].toString().toStdString(), "New plan: 5 steps gone");
}

TEST_F(TimelineTest, AnEventThatIsGoneLeavesNothing) {
  timeline_.show(std::make_shared<link::Replica>(), testing::kSampleEvent);
  EXPECT_FALSE(timeline_.hasPlan());
  EXPECT_EQ(timeline_.lanes()->rowCount(), 0);
  EXPECT_TRUE(timeline_.title().isEmpty());
}

TEST_F(TimelineTest, ZoomGoesFromFourDaysToTwentyMinutes) {
  for (int i = 0; i < 60; ++i) timeline_.zoomOut();
  EXPECT_NEAR(span(), 4 * 24 * 60, 1);
  for (int i = 0; i < 60; ++i) timeline_.zoomIn();
  EXPECT_NEAR(span(), 20, 0.01);
}

TEST_F(TimelineTest, ThePlanCannotBeLostByPanning) {
  const double lastServing = timeline_.courses()->courses().back().minute;
  for (int i = 0; i < 500; ++i) timeline_.panByPart(1);
  EXPECT_NEAR(timeline_.scale().toMinute(500), lastServing + 5 + 12 * 60, 1)
      << "half a day after its last step";
  const double right = timeline_.offset();
  timeline_.panByPart(1);
  EXPECT_DOUBLE_EQ(timeline_.offset(), right);
}

TEST_F(TimelineTest, AWiderViewKeepsItsMiddle) {
  const double middle = timeline_.scale().toMinute(500);
  timeline_.setViewWidth(600);
  EXPECT_NEAR(timeline_.scale().toMinute(300), middle, 1e-6);
}

TEST_F(TimelineTest, TheChosenStepStaysInSightBesideItsPanel) {
  timeline_.choose(QStringLiteral("chicken/carve"));
  timeline_.reveal(timeline_.courses()->courses()[1].minute - 30, 30);
  timeline_.setViewWidth(300);
  const double limit = timeline_.courses()->courses()[1].minute - 5;
  EXPECT_LE(timeline_.scale().toX(limit), 300);
  EXPECT_GE(timeline_.scale().toX(limit - 20), 0);
}

TEST_F(TimelineTest, MostPanningMakesNoRow) {
  QSignalSpy windows(&timeline_, &Timeline::windowChanged);
  for (int i = 0; i < 100; ++i) timeline_.panBy(5);
  EXPECT_LE(windows.size(), 2) << "half a view was panned";
}

TEST_F(TimelineTest, WhileZoomingLanesAreStretchedAndLaidOutAnewAtRest) {
  LaneModel& lanes = *timeline_.lanes();
  const auto laid = [&] {
    std::vector<double> scales;
    for (int i = 0; i < lanes.rowCount(); ++i)
      scales.push_back(lanes.data(lanes.index(i), LaneModel::StepsRole).value<StepModel*>()->laidScale());
    return scales;
  };
  ASSERT_GT(lanes.rowCount(), 2);
  const double before = timeline_.pixelsPerMinute();
  const auto at = [&](double scale) {
    const std::vector<double> scales = laid();
    return std::count(scales.begin(), scales.end(), scale);
  };
  EXPECT_EQ(at(before), lanes.rowCount());
  timeline_.zoomBy(1.1, 500);
  EXPECT_EQ(at(before), lanes.rowCount());
  timeline_.zoomBy(1.5, 500);
  EXPECT_EQ(at(before), lanes.rowCount() - 1) << "one lane a frame once they are stretched too far";
  lanes.setInSight(1, lanes.rowCount() - 1);
  timeline_.zoomBy(1.1, 500);
  EXPECT_TRUE(QTest::qWaitFor([&] { return at(timeline_.pixelsPerMinute()) == lanes.rowCount() - 1; }));
  lanes.setInSight(0, lanes.rowCount() - 1);
  EXPECT_EQ(at(timeline_.pixelsPerMinute()), lanes.rowCount()) << "what comes into sight is laid out";
}

TEST_F(TimelineTest, ADragIsHeldInStepsOfFiveMinutesAndAsksWhenLetGo) {
  QSignalSpy wanted(&timeline_, &Timeline::moveWanted);
  timeline_.grab(QStringLiteral("rolls/shape"));
  timeline_.dragBy(13 * timeline_.pixelsPerMinute());
  EXPECT_EQ(timeline_.movingMinutes(), 15);
  EXPECT_TRUE(timeline_.movingText().contains(QStringLiteral("15:20, 15 min later")));
  EXPECT_EQ(wanted.size(), 0) << "nothing is asked while it moves";
  timeline_.drop();
  ASSERT_EQ(wanted.size(), 1);
  EXPECT_EQ(wanted[0][0].toString(), QStringLiteral("rolls/shape"));
  EXPECT_EQ(wanted[0][1].toDouble(), 15);
  timeline_.grab(QStringLiteral("rolls/shape"));
  timeline_.dragBy(-5 * timeline_.pixelsPerMinute());
  EXPECT_EQ(timeline_.movingMinutes(), 10) << "taken up where it was let go";
}

TEST_F(TimelineTest, AStepDroppedWhereItWasIsLeft) {
  QSignalSpy wanted(&timeline_, &Timeline::moveWanted);
  QSignalSpy left(&timeline_, &Timeline::moveLeft);
  timeline_.grab(QStringLiteral("rolls/shape"));
  timeline_.dragBy(timeline_.pixelsPerMinute());
  timeline_.drop();
  EXPECT_EQ(wanted.size(), 0);
  EXPECT_EQ(left.size(), 1);
  EXPECT_TRUE(timeline_.movingId().isEmpty());
}

TEST_F(TimelineTest, AHeldStepLeavesAGhostWhereItStands) {
  const auto ghosts = [&] {
    for (int row = 0; row < timeline_.lanes()->rowCount(); ++row) {
      const QModelIndex index = timeline_.lanes()->index(row, 0);
      if (timeline_.lanes()->data(index, LaneModel::IdRole) == QStringLiteral("cook/ines"))
        return timeline_.lanes()->data(index, LaneModel::GhostsRole).value<Ghosts>().list;
    }
    return QList<Ghost>();
  };
  timeline_.grab(QStringLiteral("rolls/shape"));
  ASSERT_EQ(ghosts().size(), 1);
  EXPECT_EQ(ghosts()[0].start, timeline_.movingStart());
  timeline_.leaveMove();
  EXPECT_TRUE(ghosts().isEmpty());
}

TEST_F(TimelineTest, WhatIsDoneIsNotMoved) {
  link::Replica replica = *testing::sampleReplica();
  v1::Report& report = *replica.progresses[testing::kSampleEvent].add_reports();
  report.set_id("r");
  report.set_dish_id("rolls");
  report.set_step_id("shape");
  report.set_finished(true);
  timeline_.show(std::make_shared<link::Replica>(replica), testing::kSampleEvent);
  timeline_.grab(QStringLiteral("rolls/shape"));
  EXPECT_TRUE(timeline_.movingId().isEmpty());
}

TEST_F(TimelineTest, APreviewShowsTheOtherPlanMarkedAndLeavesWithoutANotice) {
  timeline_.preview(testing::sampleWithStepLater("rolls/shape", 10), true);
  EXPECT_TRUE(timeline_.comparing());
  EXPECT_TRUE(movedMark("cook/ines", "rolls/shape"));
  EXPECT_FALSE(movedMark("cook/ines", "rolls/mix"));
  timeline_.endHighlight();
  EXPECT_TRUE(movedMark("cook/ines", "rolls/shape")) << "marked as long as it is previewed";
  timeline_.preview(nullptr, false);
  EXPECT_FALSE(timeline_.previewing());
  EXPECT_FALSE(movedMark("cook/ines", "rolls/shape"));
  EXPECT_EQ(notices_.size(), 0);
}

TEST_F(TimelineTest, AChangeUnderAPreviewIsToldAndThePreviewStays) {
  timeline_.preview(testing::sampleWithStepLater("rolls/shape", 10), true);
  timeline_.show(testing::sampleWithStepLater("loaf/feed", -60), testing::kSampleEvent,
                 QStringLiteral("Noor"));
  EXPECT_EQ(notices_.size(), 1);
  EXPECT_TRUE(timeline_.comparing());
}

TEST_F(TimelineTest, TheChosenStepIsMovedByKeys) {
  TimelineKeys keys;
  keys.setProperty("timeline", QVariant::fromValue(&timeline_));
  QSignalSpy wanted(&timeline_, &Timeline::moveWanted);
  QSignalSpy left(&timeline_, &Timeline::moveLeft);
  QSignalSpy accepted(&timeline_, &Timeline::moveAccepted);
  const double offset = timeline_.offset();
  EXPECT_FALSE(keys.press(Qt::Key_Return, 0)) << "nothing is held";
  timeline_.choose(QStringLiteral("rolls/shape"));
  EXPECT_TRUE(keys.press(Qt::Key_Right, Qt::ControlModifier));
  EXPECT_TRUE(keys.press(Qt::Key_Right, Qt::ControlModifier | Qt::ShiftModifier));
  EXPECT_TRUE(keys.press(Qt::Key_Left, Qt::ControlModifier));
  EXPECT_EQ(timeline_.movingMinutes(), 30);
  EXPECT_EQ(timeline_.offset(), offset) << "moving a step pans nothing";
  EXPECT_TRUE(keys.press(Qt::Key_Return, 0));
  ASSERT_EQ(wanted.size(), 1);
  EXPECT_EQ(wanted[0][1].toDouble(), 30);
  EXPECT_TRUE(keys.press(Qt::Key_Return, Qt::ControlModifier));
  EXPECT_EQ(accepted.size(), 1);
  EXPECT_TRUE(keys.press(Qt::Key_Escape, 0));
  EXPECT_EQ(left.size(), 1);
  EXPECT_TRUE(timeline_.detailsOpen()) << "Escape leaves the move first, then the details";
}

TEST_F(TimelineTest, EveryKeyDoesWhatItSays) {
  TimelineKeys keys;
  keys.setProperty("timeline", QVariant::fromValue(&timeline_));
  struct Row {
    int key;
    int modifiers;
    bool zooms;
    int direction;  // of the picture: -1 to the left
  };
  for (const Row& row :
       {Row{Qt::Key_Plus, 0, true, 0}, Row{Qt::Key_Minus, 0, true, 0}, Row{Qt::Key_Right, 0, false, -1},
        Row{Qt::Key_Left, 0, false, 1}, Row{Qt::Key_PageDown, 0, false, -1}, Row{Qt::Key_PageUp, 0, false, 1},
        Row{Qt::Key_Right, Qt::ShiftModifier, false, -1}}) {
    timeline_.showNow();
    const double scale = timeline_.pixelsPerMinute();
    const double offset = timeline_.offset();
    EXPECT_TRUE(keys.press(row.key, row.modifiers));
    EXPECT_EQ(timeline_.pixelsPerMinute() != scale, row.zooms) << row.key;
    if (!row.zooms) {
      EXPECT_GT((timeline_.offset() - offset) * row.direction, 0) << row.key;
    }
  }
  EXPECT_TRUE(keys.press(Qt::Key_End, 0));
  const double serving = timeline_.courses()->courses().front().minute;
  EXPECT_NEAR(timeline_.scale().toX(serving), 800, 1);
  EXPECT_TRUE(keys.press(Qt::Key_Home, 0));
  EXPECT_NEAR(nowX(), 200, 1);
  EXPECT_FALSE(keys.press(Qt::Key_A, 0));
  EXPECT_FALSE(keys.press(Qt::Key_Escape, 0)) << "nothing to close";
  timeline_.choose(QStringLiteral("loaf/mix"));
  EXPECT_TRUE(keys.press(Qt::Key_Escape, 0));
  EXPECT_FALSE(timeline_.detailsOpen());
}

}  // namespace
}  // namespace suppertide
