#include <gtest/gtest.h>

#include "tests/support/stored_household.h"
#include "tests/support/temp_dir.h"

namespace suppertide::storage {
namespace {

class RequestsTest : public ::testing::Test {
 protected:
  RequestsTest() { reopen(); }

  void reopen() {
    const bool first = store_ == nullptr;
    store_.reset();
    store_ = first ? storeWithHome(dir_.file("data"), options_, clock_)
                   : openStore(dir_.file("data"), options_, clock_);
  }

  static Store::Options fewKept() {
    Store::Options options = quickOptions();
    options.keepChanges = 3;
    return options;
  }

  TempDir dir_;
  ManualClock clock_{kNoon};
  Store::Options options_ = fewKept();
  std::unique_ptr<Store> store_;
};

TEST_F(RequestsTest, GivesARepeatItsFirstOutcome) {
  const WriteRequest request = writeOf({put("recipe", "a", "1")}, "r1");
  const absl::StatusOr<WriteResult> first = store_->write(request);
  const absl::StatusOr<WriteResult> second = store_->write(request);
  ASSERT_TRUE(second.ok()) << second.status();
  EXPECT_FALSE(first->replayed);
  EXPECT_TRUE(second->replayed);
  EXPECT_FALSE(second->changed);
  EXPECT_EQ(second->revision, first->revision);
  EXPECT_EQ(second->documents.front().etag, first->documents.front().etag);
  EXPECT_EQ(*store_->revision(kHome), 2);
}

TEST_F(RequestsTest, RemembersAfterReopening) {
  const WriteRequest request = writeOf({put("recipe", "a", "1")}, "r1");
  ASSERT_TRUE(store_->write(request).ok());
  reopen();
  const absl::StatusOr<WriteResult> again = store_->write(request);
  ASSERT_TRUE(again.ok()) << again.status();
  EXPECT_TRUE(again->replayed);
  EXPECT_EQ(*store_->revision(kHome), 2);
}

TEST_F(RequestsTest, ShowsDocumentsAsTheyAreNow) {
  const WriteRequest request = writeOf({put("recipe", "a", "1"), put("recipe", "b", "1")}, "r1");
  ASSERT_TRUE(store_->write(request).ok());
  ASSERT_TRUE(store_->write(writeOf({put("recipe", "a", "2"), removal("recipe", "b")})).ok());
  const absl::StatusOr<WriteResult> again = store_->write(request);
  ASSERT_TRUE(again.ok()) << again.status();
  EXPECT_EQ(again->documents[0].bytes, "2");
  EXPECT_TRUE(again->documents[1].deleted);
}

TEST_F(RequestsTest, ShowsTheDocumentsOfTheFirstRequestNotOfTheRepeat) {
  ASSERT_TRUE(store_->write(writeOf({put("recipe", "made-first", "1")}, "r1")).ok());
  const absl::StatusOr<WriteResult> again = store_->write(writeOf({put("recipe", "made-again", "1")}, "r1"));
  ASSERT_TRUE(again.ok()) << again.status();
  EXPECT_EQ(again->documents.front().key.id, "made-first");
  EXPECT_FALSE(store_->get(kHome, {"recipe", "made-again"}).ok());
}

TEST_F(RequestsTest, RefusesARequestIdUsedForSomethingElse) {
  WriteRequest request = writeOf({put("recipe", "a", "1")}, "r1");
  ASSERT_TRUE(store_->write(request).ok());
  request.fingerprint = "something else";
  EXPECT_EQ(store_->write(request).status().code(), absl::StatusCode::kInvalidArgument);
}

TEST_F(RequestsTest, DoesNotRemoveAgainWhatWasMadeMeanwhile) {
  const WriteRequest request = writeOf({removal("recipe", "a")}, "r1");
  ASSERT_TRUE(store_->write(request).ok());
  ASSERT_TRUE(store_->write(writeOf({put("recipe", "a", "1")})).ok());
  EXPECT_TRUE(store_->write(request)->replayed);
  EXPECT_TRUE(store_->get(kHome, {"recipe", "a"}).ok());
}

TEST_F(RequestsTest, LetsARefusedRequestBeSentAgain) {
  Put change = put("recipe", "a", "1");
  change.expect = Expect::kPresent;
  EXPECT_FALSE(store_->write(writeOf({change}, "r1")).ok());
  ASSERT_TRUE(store_->write(writeOf({put("recipe", "a", "0")})).ok());
  const absl::StatusOr<WriteResult> again = store_->write(writeOf({change}, "r1"));
  ASSERT_TRUE(again.ok()) << again.status();
  EXPECT_FALSE(again->replayed);
}

TEST_F(RequestsTest, ReplaysWithinOneCommit) {
  const WriteRequest request = writeOf({put("recipe", "a", "1")}, "r1");
  const auto results = store_->writeAll({request, request});
  EXPECT_FALSE(results[0]->replayed);
  EXPECT_TRUE(results[1]->replayed);
  EXPECT_EQ(*store_->revision(kHome), 2);
}

TEST_F(RequestsTest, ForgetsTheOldestAlsoWhenNothingChanges) {
  for (const char* id : {"r1", "r2", "r3", "r4"}) {
    ASSERT_TRUE(store_->write(writeOf({removal("recipe", "never")}, id)).ok());
  }
  EXPECT_FALSE(store_->write(writeOf({removal("recipe", "never")}, "r1"))->replayed);
  EXPECT_TRUE(store_->write(writeOf({removal("recipe", "never")}, "r4"))->replayed);
}

}  // namespace
}  // namespace suppertide::storage
