#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

#include "server/storage/inspection.h"
#include "tests/support/stored_household.h"
#include "tests/support/temp_dir.h"

namespace suppertide::storage {
namespace {

using ::testing::ElementsAre;

class ChangeLogTest : public ::testing::Test {
 protected:
  ChangeLogTest() { store_ = storeWithHome(":memory:", options(), clock_); }

  static Store::Options options() {
    Store::Options options;
    options.keepChanges = 4;
    return options;
  }

  void write(std::vector<Put> puts) { ASSERT_TRUE(store_->write(writeOf(std::move(puts))).ok()); }

  std::vector<std::int64_t> revisionsAfter(std::int64_t after, int limit = 100) {
    const absl::StatusOr<ChangePage> page = store_->changesAfter(kHome, after, limit);
    EXPECT_TRUE(page.ok()) << page.status();
    EXPECT_FALSE(page->trimmed);
    std::vector<std::int64_t> revisions;
    for (const Change& change : page->changes) revisions.push_back(change.revision);
    return revisions;
  }

  ManualClock clock_{kNoon};
  std::unique_ptr<Store> store_;
};

TEST_F(ChangeLogTest, TellsAWriteWhole) {
  write({put("recipe", "b", "1"), put("recipe", "a", "2")});
  write({removal("recipe", "a")});
  const absl::StatusOr<ChangePage> page = store_->changesAfter(kHome, 1, 100);
  ASSERT_TRUE(page.ok()) << page.status();
  ASSERT_EQ(page->changes.size(), 2u);
  const Change& first = page->changes[0];
  EXPECT_EQ(first.revision, 2);
  EXPECT_EQ(first.memberId, "ana");
  EXPECT_EQ(first.commitTime, kNoon);
  ASSERT_EQ(first.documents.size(), 2u);
  EXPECT_EQ(first.documents[0].key.id, "b");
  EXPECT_EQ(first.documents[1].bytes, "2");
  EXPECT_EQ(first.documents[1].revision, 2);
  EXPECT_TRUE(page->changes[1].documents[0].deleted);
}

TEST_F(ChangeLogTest, KeepsOldContentsOfADocument) {
  write({put("recipe", "a", "1")});
  write({put("recipe", "a", "2")});
  const absl::StatusOr<ChangePage> page = store_->changesAfter(kHome, 1, 100);
  EXPECT_EQ(page->changes[0].documents[0].bytes, "1");
  EXPECT_EQ(page->changes[1].documents[0].bytes, "2");
}

TEST_F(ChangeLogTest, LeavesOutWhatChangedNothing) {
  write({removal("recipe", "never")});
  EXPECT_THAT(revisionsAfter(1), ElementsAre());
  write({removal("recipe", "never"), put("recipe", "a", "1")});
  EXPECT_EQ(store_->changesAfter(kHome, 1, 100)->changes[0].documents.size(), 1u);
}

TEST_F(ChangeLogTest, GivesPagesAfterARevision) {
  for (const char* bytes : {"1", "2", "3"}) write({put("recipe", "a", bytes)});
  EXPECT_THAT(revisionsAfter(1, 2), ElementsAre(2, 3));
  EXPECT_THAT(revisionsAfter(3, 2), ElementsAre(4));
  EXPECT_THAT(revisionsAfter(4), ElementsAre());
}

TEST_F(ChangeLogTest, IsTrimmedToTheLastRevisions) {
  for (int i = 0; i < 6; ++i) write({put("recipe", "a", std::to_string(i))});  // up to revision 7
  EXPECT_TRUE(store_->changesAfter(kHome, 2, 100)->trimmed);
  EXPECT_THAT(revisionsAfter(3), ElementsAre(4, 5, 6, 7));
}

// A long log is trimmed by a sixteenth at once, and never shorter than it is to be.
TEST(LongLogTest, IsTrimmedSomeChangesAtOnce) {
  ManualClock clock(kNoon);
  Store::Options options;
  options.keepChanges = 64;
  const auto store = storeWithHome(":memory:", options, clock);
  std::set<std::int64_t> lengths;
  for (int i = 0; i < 200; ++i) {
    ASSERT_TRUE(store->write(writeOf({put("recipe", "a", std::to_string(i))})).ok());
    const std::int64_t last = *store->revision(kHome);
    std::int64_t kept = 0;
    while (kept < last && !store->changesAfter(kHome, last - kept - 1, 1)->trimmed) ++kept;
    if (last > 100) lengths.insert(kept);
  }
  EXPECT_EQ(lengths, (std::set<std::int64_t>{64, 65, 66, 67}));
}

// Plans are large and many: a log of fixed length would grow without end.
TEST(HeavyLogTest, IsTrimmedToItsWeightButKeepsTheLastForWatchers) {
  ManualClock clock(kNoon);
  Store::Options options;
  options.keepLogBytes = 10'000;
  options.keepAtLeast = 3;
  TempDir dir;
  const auto store = storeWithHome(dir.file("data"), options, clock);
  for (int i = 0; i < 30; ++i)
    ASSERT_TRUE(store->write(writeOf({put("plan", "p", std::string(1000, 'p'))})).ok());
  const std::int64_t last = *store->revision(kHome);
  EXPECT_TRUE(store->changesAfter(kHome, last - 11, 100)->trimmed);
  EXPECT_FALSE(store->changesAfter(kHome, last - 6, 100)->trimmed);
  for (int i = 0; i < 5; ++i)
    ASSERT_TRUE(store->write(writeOf({put("plan", "p", std::string(50'000, 'p'))})).ok());
  EXPECT_FALSE(store->changesAfter(kHome, last + 2, 100)->trimmed)
      << "the last three stay, whatever they weigh";
  EXPECT_TRUE(store->changesAfter(kHome, last + 1, 100)->trimmed);
  const auto inspection = inspect(dir.file("data"));
  ASSERT_TRUE(inspection.ok()) << inspection.status();
  EXPECT_TRUE(inspection->damages.empty()) << inspection->damages.front();
}

TEST_F(ChangeLogTest, KeepsTombstonesUntilTrimmed) {
  write({put("recipe", "a", "1")});
  write({removal("recipe", "a")});  // revision 3
  const auto tombstone = [&] {
    return store_->write(writeOf({removal("recipe", "a")}))->documents[0].revision;
  };
  for (int i = 0; i < 3; ++i) write({put("recipe", "b", "1")});
  EXPECT_EQ(tombstone(), 3);
  write({put("recipe", "b", "2")});
  EXPECT_EQ(tombstone(), 0);
}

TEST_F(ChangeLogTest, BeginsWithTheHousehold) {
  EXPECT_THAT(revisionsAfter(0), ElementsAre(1));
}

}  // namespace
}  // namespace suppertide::storage
