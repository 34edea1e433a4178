// The models of lanes and steps: windows, and updates that arrive as differences.
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

QStringList ids(const QAbstractItemModel& model) {
  QStringList all;
  for (int row = 0; row < model.rowCount(); ++row)
    all << model.data(model.index(row, 0), StepModel::IdRole).toString();
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

TEST_F(StepModelTest, HoldsOnlyTheStepsThatTouchTheWindow) {
  model_.setSteps({step(QStringLiteral("long"), 0, 1000), step(QStringLiteral("a"), 10, 5),
                   step(QStringLiteral("b"), 100, 20), step(QStringLiteral("c"), 300, 20)});
  EXPECT_EQ(model_.rowCount(), 0) << "no window yet";
  model_.setWindow(100, 200);
  EXPECT_EQ(ids(model_), (QStringList{QStringLiteral("long"), QStringLiteral("b")}));
  model_.setWindow(118, 301);
  EXPECT_EQ(ids(model_), (QStringList{QStringLiteral("long"), QStringLiteral("b"), QStringLiteral("c")}));
  model_.setWindow(500, 600);
  EXPECT_EQ(ids(model_), (QStringList{QStringLiteral("long")})) << "a long step reaches into it";
  model_.setWindow(2000, 2100);
  EXPECT_EQ(model_.rowCount(), 0);
}

TEST_F(StepModelTest, ScrollingTellsOnlyWhatComesAndGoes) {
  model_.setSteps({step(QStringLiteral("a"), 0, 10), step(QStringLiteral("b"), 20, 10),
                   step(QStringLiteral("c"), 40, 10)});
  model_.setWindow(0, 35);
  inserted_.clear();
  model_.setWindow(15, 60);
  EXPECT_EQ(ids(model_), (QStringList{QStringLiteral("b"), QStringLiteral("c")}));
  EXPECT_EQ(inserted_.size(), 1);
  EXPECT_EQ(removed_.size(), 1);
  EXPECT_EQ(changed_.size() + reset_.size(), 0);
}

TEST_F(StepModelTest, AMovedStepIsOneChangeOfOneRow) {
  model_.setWindow(0, 100);
  model_.setSteps({step(QStringLiteral("a"), 0, 10), step(QStringLiteral("b"), 20, 10),
                   step(QStringLiteral("c"), 40, 10)});
  inserted_.clear();
  model_.setSteps({step(QStringLiteral("a"), 0, 10), step(QStringLiteral("b"), 25, 10),
                   step(QStringLiteral("c"), 40, 10)});
  ASSERT_EQ(changed_.size(), 1);
  EXPECT_EQ(changed_[0][0].toModelIndex().row(), 1);
  EXPECT_EQ(inserted_.size() + removed_.size() + reset_.size(), 0);
  EXPECT_EQ(model_.data(model_.index(1, 0), StepModel::StartRole).toDouble(), 25);
}

TEST_F(StepModelTest, EveryRoleThatADelegateAsksForHasAValue) {
  model_.setWindow(0, 100);
  model_.setSteps({step(QStringLiteral("a"), 0, 10)});
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
  model_.setWindow(0, 100);
  model_.setLanes({lane(QStringLiteral("cook/ines"), {step(QStringLiteral("a"), 0, 10)}),
                   lane(QStringLiteral("oven/large"), {step(QStringLiteral("a"), 0, 10)})});
  StepModel* const steps = model_.steps(QStringLiteral("cook/ines"));
  ASSERT_NE(steps, nullptr);
  QSignalSpy stepsReset(steps, &QAbstractItemModel::modelReset);
  QSignalSpy stepsChanged(steps, &QAbstractItemModel::dataChanged);
  model_.setLanes({lane(QStringLiteral("cook/ines"), {step(QStringLiteral("a"), 5, 10)}),
                   lane(QStringLiteral("cook/noor"), {}), lane(QStringLiteral("oven/large"), {})});
  EXPECT_EQ(model_.steps(QStringLiteral("cook/ines")), steps);
  EXPECT_EQ(stepsChanged.size(), 1);
  EXPECT_EQ(stepsReset.size(), 0);
  EXPECT_EQ(inserted_.size(), 2) << "once at first, once for the new cook";
  EXPECT_EQ(changed_.size(), 0) << "what changed is inside the lanes";
  EXPECT_EQ(reset_.size(), 0);
}

TEST_F(LaneModelTest, ALaneThatGrowsTellsItsHeightOnly) {
  model_.setWindow(0, 100);
  Lane small = lane(QStringLiteral("cook/ines"), {step(QStringLiteral("a"), 0, 10)});
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
