#include <gtest/gtest.h>

#include "tests/storage/store_fixture.h"

namespace suppertide::storage {
namespace {

class StoreTest : public testing::Test {
 protected:
  StoreTest() : store_(file_.open()) { found(*store_); }
  absl::StatusOr<WriteResult> write(const WriteRequest& request) { return store_->write(request); }
  std::string bytesOf(const std::string& id) {
    const auto document = store_->get(kHouse, {"recipe", id});
    return document.ok() ? document->bytes : "(none)";
  }

  StoreFile file_;
  std::unique_ptr<Store> store_;
};

TEST_F(StoreTest, KeepsWhatWasWrittenOverReopening) {
  const auto made = write(putting("r1", "a", "one"));
  ASSERT_TRUE(made.ok()) << made.status();
  store_.reset();
  store_ = file_.open();
  const auto read = store_->get(kHouse, {"recipe", "a"});
  ASSERT_TRUE(read.ok()) << read.status();
  EXPECT_EQ(read->bytes, "one");
  EXPECT_EQ(read->etag, made->documents[0].etag);
  EXPECT_EQ(read->memberId, "ana");
  EXPECT_EQ(read->updateTime, file_.clock().now());
}

TEST_F(StoreTest, RaisesTheRevisionByOneForEachWrite) {
  const auto first = write(putting("r1", "a", "one"));
  const auto second = write(putting("r2", "b", "two"));
  EXPECT_EQ(second->revision, first->revision + 1);
  EXPECT_EQ(*store_->revision(kHouse), second->revision);
}

TEST_F(StoreTest, AnswersARepeatWithItsFirstOutcomeAlsoAfterReopening) {
  const auto first = write(putting("r1", "a", "one", Expect::kAbsent));
  store_.reset();
  store_ = file_.open();
  const auto again = write(putting("r1", "a", "one", Expect::kAbsent));
  ASSERT_TRUE(again.ok()) << again.status();
  EXPECT_TRUE(again->replayed);
  EXPECT_EQ(again->revision, first->revision);
  EXPECT_EQ(*store_->revision(kHouse), first->revision);
}

TEST_F(StoreTest, RefusesARequestIdUsedForSomethingElse) {
  ASSERT_TRUE(write(putting("r1", "a", "one")).ok());
  EXPECT_EQ(write(putting("r1", "a", "two")).status().code(), absl::StatusCode::kInvalidArgument);
  EXPECT_EQ(bytesOf("a"), "one");
}

TEST_F(StoreTest, RefusesAStaleEtagWithTheCurrentDocument) {
  const auto first = write(putting("r1", "a", "one"));
  ASSERT_TRUE(write(putting("r2", "a", "two", Expect::kPresent, first->documents[0].etag)).ok());
  const auto stale = write(putting("r3", "a", "three", Expect::kPresent, first->documents[0].etag));
  EXPECT_EQ(stale.status().code(), absl::StatusCode::kAborted);
  const auto current = currentDocument(stale.status());
  ASSERT_TRUE(current);
  EXPECT_EQ(current->bytes, "two");
}

TEST_F(StoreTest, HoldsToWhatIsExpected) {
  EXPECT_EQ(write(putting("r1", "a", "one", Expect::kPresent)).status().code(), absl::StatusCode::kNotFound);
  ASSERT_TRUE(write(putting("r2", "a", "one", Expect::kAbsent)).ok());
  EXPECT_EQ(write(putting("r3", "a", "two", Expect::kAbsent)).status().code(),
            absl::StatusCode::kAlreadyExists);
}

TEST_F(StoreTest, WritesAllOfARequestOrNothing) {
  WriteRequest request = putting("r1", "a", "one");
  request.puts.push_back({{"recipe", "b"}, "two", Expect::kPresent, "", false});
  EXPECT_FALSE(write(request).ok());
  EXPECT_EQ(bytesOf("a"), "(none)");
}

TEST_F(StoreTest, ValidateOnlyChangesNothingAndKeepsTheRequestIdFree) {
  WriteRequest request = putting("r1", "a", "one");
  request.validateOnly = true;
  ASSERT_TRUE(write(request).ok());
  EXPECT_EQ(bytesOf("a"), "(none)");
  EXPECT_FALSE(write(putting("r1", "a", "one"))->replayed);
}

TEST_F(StoreTest, OneFailingRequestLeavesTheOthersOfItsCommit) {
  const auto results = store_->writeAll(
      {putting("r1", "a", "one"), putting("r2", "b", "x", Expect::kPresent), putting("r3", "c", "three")});
  EXPECT_TRUE(results[0].ok());
  EXPECT_FALSE(results[1].ok());
  EXPECT_TRUE(results[2].ok());
  EXPECT_EQ(bytesOf("a"), "one");
  EXPECT_EQ(bytesOf("c"), "three");
}

TEST_F(StoreTest, LeavesATombstoneThatReadsAsNothing) {
  ASSERT_TRUE(write(putting("r1", "a", "one")).ok());
  const auto gone = write(removing("r2", "a"));
  ASSERT_TRUE(gone.ok());
  EXPECT_EQ(bytesOf("a"), "(none)");
  EXPECT_TRUE(store_->list(kHouse, "recipe", "", 10)->empty());
  const auto page = store_->changesAfter(kHouse, gone->revision - 1, 10);
  ASSERT_EQ(page->changes.size(), 1u);
  EXPECT_TRUE(page->changes[0].documents[0].deleted);
}

TEST_F(StoreTest, RemovingWhatIsNotThereChangesNothing) {
  const std::int64_t before = *store_->revision(kHouse);
  const auto gone = write(removing("r1", "a"));
  ASSERT_TRUE(gone.ok());
  EXPECT_FALSE(gone->changed);
  EXPECT_EQ(*store_->revision(kHouse), before);
}

TEST_F(StoreTest, ListsByIdAfterAnId) {
  for (const char* id : {"c", "a", "b"}) ASSERT_TRUE(write(putting(id, id, id)).ok());
  const auto rest = store_->list(kHouse, "recipe", "a", 1);
  ASSERT_EQ(rest->size(), 1u);
  EXPECT_EQ(rest->front().key.id, "b");
}

TEST_F(StoreTest, TellsChangesInOrderAndWhole) {
  const std::int64_t before = *store_->revision(kHouse);
  WriteRequest both = putting("r1", "a", "one");
  both.puts.push_back({{"recipe", "b"}, "two", Expect::kAnything, "", false});
  ASSERT_TRUE(write(both).ok());
  ASSERT_TRUE(write(putting("r2", "a", "three")).ok());
  const auto page = store_->changesAfter(kHouse, before, 10);
  ASSERT_EQ(page->changes.size(), 2u);
  EXPECT_EQ(page->changes[0].documents.size(), 2u);
  EXPECT_EQ(page->changes[0].documents[0].bytes, "one");
  EXPECT_EQ(page->changes[1].revision, before + 2);
}

TEST_F(StoreTest, SaysWhenTheLogNoLongerReachesBack) {
  store_.reset();
  Store::Options options;
  options.keepChanges = 3;
  store_ = file_.open(options);
  for (int i = 0; i < 10; ++i)
    ASSERT_TRUE(write(putting("r" + std::to_string(i), "a", std::to_string(i))).ok());
  EXPECT_TRUE(store_->changesAfter(kHouse, 1, 10)->trimmed);
  const std::int64_t now = *store_->revision(kHouse);
  const auto page = store_->changesAfter(kHouse, now - 2, 10);
  EXPECT_FALSE(page->trimmed);
  EXPECT_EQ(page->changes.size(), 2u);
}

TEST_F(StoreTest, RefusesMoreDocumentsThanAHouseholdMayHave) {
  store_.reset();
  Store::Options options;
  options.maxDocuments = 2;
  store_ = file_.open(options);
  ASSERT_TRUE(write(putting("r1", "a", "one")).ok());
  EXPECT_EQ(write(putting("r2", "b", "two")).status().code(), absl::StatusCode::kResourceExhausted);
}

TEST_F(StoreTest, DoesNotShowOneHouseholdToAnother) {
  ASSERT_TRUE(write(putting("r1", "a", "one")).ok());
  EXPECT_EQ(store_->get("other", {"recipe", "a"}).status().code(), absl::StatusCode::kNotFound);
  WriteRequest foreign = putting("r2", "a", "two");
  foreign.householdId = "other";
  EXPECT_EQ(write(foreign).status().code(), absl::StatusCode::kNotFound);
}

}  // namespace
}  // namespace suppertide::storage
