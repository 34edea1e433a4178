// The validators themselves: each must see its promise broken.
#include "tests/support/watch_recorder.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace suppertide {
namespace {

using ::testing::IsEmpty;
using ::testing::SizeIs;

storage::Document document(std::int64_t revision) {
  storage::Document document;
  document.key = {"recipe", "a"};
  document.bytes = std::to_string(revision);
  document.revision = revision;
  return document;
}

std::shared_ptr<const storage::Change> change(std::int64_t revision) {
  auto change = std::make_shared<storage::Change>();
  change->revision = revision;
  change->documents = {document(revision)};
  return change;
}

class WatchRecorderTest : public ::testing::Test {
 protected:
  void change(std::int64_t revision) { recorder_.take(suppertide::change(revision)); }
  void bookmark(std::int64_t revision) { recorder_.take(sync::Bookmark{revision}); }
  void snapshotAt(std::int64_t revision) {
    recorder_.take(sync::Reset{});
    recorder_.take(sync::SnapshotPart{{document(revision)}});
    bookmark(revision);
  }

  const Changes committed_ = {suppertide::change(1), suppertide::change(2), suppertide::change(3),
                              suppertide::change(4)};
  WatchRecorder recorder_;
  WatchValidator validator_{recorder_, committed_};
};

TEST_F(WatchRecorderTest, FindsNothingWrongWithAGoodWatch) {
  recorder_.begin(0);
  snapshotAt(2);
  change(3);
  recorder_.begin(3);
  change(4);
  bookmark(4);
  recorder_.begin(4);
  bookmark(4);
  EXPECT_THAT(validator_.all(), IsEmpty());
  EXPECT_EQ(recorder_.revision(), 4);
}

TEST_F(WatchRecorderTest, SeesARevisionGoingBack) {
  recorder_.begin(0);
  snapshotAt(1);
  change(3);
  change(2);
  EXPECT_THAT(validator_.ordered(), SizeIs(1));
}

TEST_F(WatchRecorderTest, SeesAChangeThatComesTwice) {
  recorder_.begin(0);
  snapshotAt(1);
  change(2);
  recorder_.begin(1);
  change(2);
  EXPECT_THAT(validator_.unique(), SizeIs(1));
}

TEST_F(WatchRecorderTest, SeesHalfAChange) {
  recorder_.begin(0);
  snapshotAt(1);
  auto half = std::make_shared<storage::Change>(*suppertide::change(2));
  half->documents.clear();
  recorder_.take(std::shared_ptr<const storage::Change>(half));
  change(5);
  EXPECT_THAT(validator_.atomic(), SizeIs(2));
}

TEST_F(WatchRecorderTest, SeesAGap) {
  recorder_.begin(0);
  snapshotAt(1);
  change(3);
  bookmark(4);
  EXPECT_THAT(validator_.reliable(), SizeIs(2));
}

TEST_F(WatchRecorderTest, SeesAStreamThatGoesOnElsewhere) {
  recorder_.begin(0);
  snapshotAt(1);
  recorder_.begin(1);
  change(3);
  recorder_.begin(0);
  change(4);
  EXPECT_THAT(validator_.resumable(), SizeIs(2));
}

TEST_F(WatchRecorderTest, SeesABookmarkWithoutWhatItPromises) {
  recorder_.begin(0);
  recorder_.take(sync::Reset{});
  bookmark(2);
  recorder_.begin(0);
  snapshotAt(3);
  bookmark(5);
  EXPECT_THAT(validator_.bookmarkable(), SizeIs(2));
}

}  // namespace
}  // namespace suppertide
