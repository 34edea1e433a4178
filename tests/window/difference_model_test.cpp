#include "client/ui/difference_model.h"

#include <gtest/gtest.h>

#include <QtTest/qabstractitemmodeltester.h>
#include <QtTest/qsignalspy.h>

#include <random>

namespace suppertide {
namespace {

struct Row {
  QString name;
  int value = 0;
  QString key() const { return name; }
  friend bool operator==(const Row&, const Row&) = default;
};

class WordModel : public DifferenceModel {
 public:
  void set(std::vector<Row> next) { become(rows_, std::move(next)); }
  void set(const QString& letters, int value = 0) {
    std::vector<Row> next;
    for (const QChar letter : letters) next.push_back({letter, value});
    set(std::move(next));
  }
  QString letters() const {
    QString all;
    for (const Row& row : rows_) all += row.name;
    return all;
  }
  int rowCount(const QModelIndex& parent = {}) const override {
    return parent.isValid() ? 0 : static_cast<int>(rows_.size());
  }
  QVariant data(const QModelIndex& index, int role) const override {
    if (role != Qt::DisplayRole) return {};
    return rows_[static_cast<std::size_t>(index.row())].name;
  }

 private:
  std::vector<Row> rows_;
};

class DifferenceModelTest : public ::testing::Test {
 protected:
  WordModel model_;
  QAbstractItemModelTester tester_{&model_, QAbstractItemModelTester::FailureReportingMode::Fatal};
  QSignalSpy inserted_{&model_, &QAbstractItemModel::rowsInserted};
  QSignalSpy removed_{&model_, &QAbstractItemModel::rowsRemoved};
  QSignalSpy moved_{&model_, &QAbstractItemModel::rowsMoved};
  QSignalSpy changed_{&model_, &QAbstractItemModel::dataChanged};
  QSignalSpy reset_{&model_, &QAbstractItemModel::modelReset};
};

TEST_F(DifferenceModelTest, InsertsNeighboursTogether) {
  model_.set(QStringLiteral("adz"));
  EXPECT_EQ(inserted_.size(), 1);
  model_.set(QStringLiteral("abcdz"));
  EXPECT_EQ(inserted_.size(), 2);
  EXPECT_EQ(model_.letters(), QStringLiteral("abcdz"));
  EXPECT_EQ(removed_.size() + moved_.size() + changed_.size() + reset_.size(), 0);
}

TEST_F(DifferenceModelTest, RemovesNeighboursTogether) {
  model_.set(QStringLiteral("abcdz"));
  model_.set(QStringLiteral("az"));
  EXPECT_EQ(removed_.size(), 1);
  EXPECT_EQ(model_.letters(), QStringLiteral("az"));
}

TEST_F(DifferenceModelTest, TellsOneChangeForARunOfRows) {
  model_.set(QStringLiteral("abc"), 1);
  model_.set(QStringLiteral("abc"), 2);
  ASSERT_EQ(changed_.size(), 1);
  EXPECT_EQ(changed_[0][0].toModelIndex().row(), 0);
  EXPECT_EQ(changed_[0][1].toModelIndex().row(), 2);
  model_.set(QStringLiteral("abc"), 2);
  EXPECT_EQ(changed_.size(), 1) << "nothing differs, nothing is told";
}

TEST_F(DifferenceModelTest, MovesARowThatComesEarlier) {
  model_.set(QStringLiteral("abcd"));
  model_.set(QStringLiteral("adbc"));
  EXPECT_EQ(moved_.size(), 1);
  EXPECT_EQ(removed_.size(), 0);
  EXPECT_EQ(model_.letters(), QStringLiteral("adbc"));
}

TEST_F(DifferenceModelTest, TurnsAnyListIntoAnyOtherWithoutAReset) {
  std::minstd_rand random(7);
  for (int round = 0; round < 500; ++round) {
    QString letters;
    for (char c = 'a'; c <= 'p'; ++c) {
      if (random() % 2 == 0)
        letters.insert(static_cast<int>(random() % (letters.size() + 1)), QLatin1Char(c));
    }
    model_.set(letters, static_cast<int>(random() % 2));
    ASSERT_EQ(model_.letters(), letters);
  }
  EXPECT_EQ(reset_.size(), 0);
}

}  // namespace
}  // namespace suppertide
