#include "client/ui/record_model.h"

#include <gtest/gtest.h>

#include <QtTest/qabstractitemmodeltester.h>
#include <QtTest/qsignalspy.h>

namespace suppertide {
namespace {

Record record(const char* id, int value) {
  return {{QStringLiteral("id"), QString::fromUtf8(id)}, {QStringLiteral("value"), value}};
}

class RecordModelTest : public ::testing::Test {
 protected:
  RecordModel model_{std::vector<const char*>{"id", "value"}};
  QAbstractItemModelTester tester_{&model_, QAbstractItemModelTester::FailureReportingMode::Fatal};
  QSignalSpy counted_{&model_, &RecordModel::countChanged};
};

TEST_F(RecordModelTest, FieldsAreRoles) {
  model_.setRecords({record("a", 1)});
  const auto roles = model_.roleNames();
  ASSERT_EQ(roles.size(), 2);
  EXPECT_EQ(model_.data(model_.index(0), roles.key("value")).toInt(), 1);
  EXPECT_EQ(model_.value(0, QStringLiteral("id")).toString().toStdString(), "a");
  EXPECT_FALSE(model_.value(0, QStringLiteral("other")).isValid());
  EXPECT_FALSE(model_.value(1, QStringLiteral("id")).isValid());
}

TEST_F(RecordModelTest, AChangedFieldKeepsItsRow) {
  model_.setRecords({record("a", 1), record("b", 2)});
  QSignalSpy changed(&model_, &QAbstractItemModel::dataChanged);
  QSignalSpy inserted(&model_, &QAbstractItemModel::rowsInserted);
  model_.setRecords({record("a", 1), record("b", 3)});
  ASSERT_EQ(changed.size(), 1);
  EXPECT_EQ(changed.front().front().toModelIndex().row(), 1);
  EXPECT_EQ(inserted.size(), 0);
}

TEST_F(RecordModelTest, TellsItsCountOnlyWhenItChanges) {
  model_.setRecords({record("a", 1)});
  model_.setRecords({record("b", 1)});
  EXPECT_EQ(counted_.size(), 1);
  EXPECT_EQ(model_.rowOf(QStringLiteral("b")), 0);
  EXPECT_EQ(model_.rowOf(QStringLiteral("a")), -1);
}

}  // namespace
}  // namespace suppertide
