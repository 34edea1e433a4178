// The models of lanes and steps: which stand as bars, and updates that arrive as differences.
#include <gtest/gtest.h>

#include <QtTest/qabstractitemmodeltester.h>
#include <QtTest/qsignalspy.h>

#include "client/timeline/lane_model.h"

namespace suppertide {
namespace {

StepRow step(const QString& id, double start, double length) {
  StepRow row;
  row.id = id;
  row.title = id;
  row.start = start;
  row.length = length;
  return row;
}

// The steps that stand as bars of their own, by name.
QStringList bars(const QAbstractItemModel& model) {
  QStringList all;
  for (int row = 0; row < model.rowCount(); ++row)
    if (model.data(model.index(row, 0), StepModel::ShownRole).toBool())
      all << model.data(model.index(row, 0), StepModel::IdRole).toString();
  all.sort();
  return all;
}

class StepModelTest : public ::testing::Test {
 protected:
  StepModel model_;
  QAbstractItemModelTester tester_{&model_, QAbstractItemModelTester::FailureReportingMode::Fatal};
  QSignalSpy inserted_{&model_, &QAbstractItemModel::rowsInserted};
  QSignalSpy removed_{&model_, &QAbstractItemModel::rowsRemoved};
  QSignalSpy changed_{&model_, &QAbstractItemModel::dataChanged};
  QSignalSpy reset_{&model_, &QAbstractItemModel::modelReset};
};

// A pixel a minute: words need 72 minutes of room.
BarView viewOf(double start, double limit) {
  return {start, limit, 1};
}

TEST_F(StepModelTest, BarsAreTheStepsInViewWithRoomForTheirWords) {
  StepRow brief = step(QStringLiteral("brief"), 100, 5);
  StepRow roomy = step(QStringLiteral("roomy"), 120, 5);
  roomy.roomAfter = 100;
  model_.setSteps(
      {step(QStringLiteral("long"), 0, 1000), brief, roomy, step(QStringLiteral("far"), 3000, 100)});
  EXPECT_EQ(model_.rowCount(), 0) << "no view yet";
  model_.setView(viewOf(100, 200));
  EXPECT_EQ(bars(model_), (QStringList{QStringLiteral("long"), QStringLiteral("roomy")}));
  model_.setView(viewOf(2950, 3100));
  EXPECT_EQ(bars(model_), (QStringList{QStringLiteral("far")}));
}

TEST_F(StepModelTest, PlacesAreTakenAnewAndNeverRemoved) {
  model_.setSteps({step(QStringLiteral("a"), 0, 100), step(QStringLiteral("b"), 1000, 100),
                   step(QStringLiteral("c"), 2000, 100)});
  model_.setView(viewOf(0, 100));
  inserted_.clear();
  model_.setView(viewOf(1000, 1100));
  EXPECT_EQ(bars(model_), (QStringList{QStringLiteral("b")}));
  model_.setView(viewOf(500, 600));
  EXPECT_EQ(bars(model_), QStringList());
  model_.setView(viewOf(2000, 2100));
  EXPECT_EQ(bars(model_), (QStringList{QStringLiteral("c")}));
  EXPECT_EQ(model_.rowCount(), 1) << "one delegate served all three";
  EXPECT_EQ(inserted_.size() + removed_.size() + reset_.size(), 0);
}

TEST_F(StepModelTest, AFrameMakesNoMoreBarsThanItMay) {
  std::vector<StepRow> steps;
  for (int i = 0; i < 10; ++i) steps.push_back(step(QString::number(i), i * 100, 90));
  model_.setSteps(steps);
  EXPECT_EQ(model_.setView(viewOf(0, 1000), 4), 4);
  EXPECT_FALSE(model_.complete());
  EXPECT_EQ(model_.setView(viewOf(0, 1000), 4), 4);
  EXPECT_EQ(model_.setView(viewOf(0, 1000), 4), 2);
  EXPECT_TRUE(model_.complete());
  EXPECT_EQ(bars(model_).size(), 10);
}

TEST_F(StepModelTest, WhatIsKeptOrHeldIsABarWhereverItIs) {
  model_.setSteps({step(QStringLiteral("a"), 0, 5), step(QStringLiteral("b"), 20, 5),
                   step(QStringLiteral("c"), 5000, 5)});
  model_.setView(viewOf(0, 100));
  EXPECT_EQ(bars(model_), QStringList());
  model_.setKept({QStringLiteral("c")});
  EXPECT_GE(model_.hold(QStringLiteral("a")), 0);
  EXPECT_EQ(bars(model_), (QStringList{QStringLiteral("a"), QStringLiteral("c")}));
  EXPECT_GE(model_.hold(QStringLiteral("b")), 0);
  EXPECT_EQ(bars(model_), (QStringList{QStringLiteral("b"), QStringLiteral("c")}));
  EXPECT_EQ(model_.hold(QStringLiteral("none")), -1);
}

TEST_F(StepModelTest, IsWalkedInTheOrderOfTimeAndFoundByPlace) {
  StepRow below = step(QStringLiteral("below"), 22, 10);
  below.subRow = 1;
  model_.setSteps({step(QStringLiteral("a"), 0, 10), step(QStringLiteral("b"), 20, 10), below,
                   step(QStringLiteral("c"), 300, 10)});
  model_.setView(viewOf(15, 200));
  EXPECT_EQ(model_.neighbour(QStringLiteral("b"), 1), QStringLiteral("below"));
  EXPECT_EQ(model_.neighbour(QStringLiteral("a"), -1), QString());
  EXPECT_EQ(model_.neighbour(QStringLiteral("c"), 1), QString());
  EXPECT_EQ(model_.firstInView(1), QStringLiteral("b"));
  EXPECT_EQ(model_.firstInView(-1), QStringLiteral("below"));
  EXPECT_EQ(model_.stepNear(12, 0, 22), QStringLiteral("a")) << "the nearest of two";
  EXPECT_EQ(model_.stepNear(25, 1, 22), QStringLiteral("below"));
  EXPECT_EQ(model_.stepNear(100, 0, 22), QString());
}

TEST_F(StepModelTest, AMovedStepIsOneChangeOfOneRow) {
  model_.setView(viewOf(0, 300));
  model_.setSteps({step(QStringLiteral("a"), 0, 100), step(QStringLiteral("b"), 100, 100),
                   step(QStringLiteral("c"), 200, 100)});
  inserted_.clear();
  model_.setSteps({step(QStringLiteral("a"), 0, 100), step(QStringLiteral("b"), 105, 100),
                   step(QStringLiteral("c"), 200, 100)});
  ASSERT_EQ(changed_.size(), 1);
  EXPECT_EQ(changed_[0][0].toModelIndex().row(), 1);
  EXPECT_EQ(inserted_.size() + removed_.size() + reset_.size(), 0);
  EXPECT_EQ(model_.data(model_.index(1, 0), StepModel::StartRole).toDouble(), 105);
}

TEST_F(StepModelTest, EveryRoleThatADelegateAsksForHasAValue) {
  model_.setView(viewOf(0, 100));
  model_.setSteps({step(QStringLiteral("a"), 0, 100)});
  const auto roles = model_.roleNames();
  for (auto role = roles.begin(); role != roles.end(); ++role)
    EXPECT_TRUE(model_.data(model_.index(0, 0), role.key()).isValid()) << role.value().toStdString();
}

Lane lane(const QString& id, std::vector<StepRow> steps) {
  Lane made;
  made.id = id;
  made.title = id;
  made.steps = std::move(steps);
  return made;
}

class LaneModelTest : public ::testing::Test {
 protected:
  LaneModel model_;
  QAbstractItemModelTester tester_{&model_, QAbstractItemModelTester::FailureReportingMode::Fatal};
  QSignalSpy inserted_{&model_, &QAbstractItemModel::rowsInserted};
  QSignalSpy removed_{&model_, &QAbstractItemModel::rowsRemoved};
  QSignalSpy changed_{&model_, &QAbstractItemModel::dataChanged};
  QSignalSpy reset_{&model_, &QAbstractItemModel::modelReset};
};

TEST_F(LaneModelTest, KeepsALanesStepModelThroughEveryUpdate) {
  model_.setView(viewOf(0, 100));
  model_.setLanes({lane(QStringLiteral("cook/ines"), {step(QStringLiteral("a"), 0, 100)}),
                   lane(QStringLiteral("oven/large"), {step(QStringLiteral("a"), 0, 100)})});
  StepModel* const steps = model_.steps(QStringLiteral("cook/ines"));
  ASSERT_NE(steps, nullptr);
  QSignalSpy stepsReset(steps, &QAbstractItemModel::modelReset);
  QSignalSpy stepsChanged(steps, &QAbstractItemModel::dataChanged);
  model_.setLanes({lane(QStringLiteral("cook/ines"), {step(QStringLiteral("a"), 5, 100)}),
                   lane(QStringLiteral("cook/noor"), {}), lane(QStringLiteral("oven/large"), {})});
  EXPECT_EQ(model_.steps(QStringLiteral("cook/ines")), steps);
  EXPECT_EQ(stepsChanged.size(), 1);
  EXPECT_EQ(stepsReset.size(), 0);
  EXPECT_EQ(inserted_.size(), 2) << "once at first, once for the new cook";
  EXPECT_EQ(changed_.size(), 0) << "what changed is inside the lanes";
  EXPECT_EQ(reset_.size(), 0);
}

TEST_F(LaneModelTest, ALaneThatGrowsTellsItsHeightOnly) {
  model_.setView(viewOf(0, 100));
  Lane small = lane(QStringLiteral("cook/ines"), {step(QStringLiteral("a"), 0, 100)});
  model_.setLanes({small, lane(QStringLiteral("cook/noor"), {})});
  small.subRowCount = 2;
  model_.setLanes({small, lane(QStringLiteral("cook/noor"), {})});
  ASSERT_EQ(changed_.size(), 1);
  EXPECT_EQ(changed_[0][1].toModelIndex().row(), 0);
}

TEST_F(LaneModelTest, ALaneThatIsGoneTakesItsStepsWithIt) {
  model_.setLanes({lane(QStringLiteral("a"), {}), lane(QStringLiteral("b"), {})});
  model_.setLanes({lane(QStringLiteral("b"), {})});
  EXPECT_EQ(removed_.size(), 1);
  EXPECT_EQ(model_.steps(QStringLiteral("a")), nullptr);
  EXPECT_NE(model_.steps(QStringLiteral("b")), nullptr);
}

}  // namespace
}  // namespace suppertide
