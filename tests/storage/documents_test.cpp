#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/support/stored_household.h"

namespace suppertide::storage {
namespace {

using ::testing::ElementsAre;

class DocumentsTest : public ::testing::Test {
 protected:
  DocumentsTest() { store_ = storeWithHome(":memory:", options(), clock_); }

  static Store::Options options() {
    Store::Options options;
    options.maxDocuments = 5;
    return options;
  }

  WriteResult written(std::vector<Put> puts) {
    absl::StatusOr<WriteResult> result = store_->write(writeOf(std::move(puts)));
    EXPECT_TRUE(result.ok()) << result.status();
    return result.ok() ? *std::move(result) : WriteResult{};
  }

  absl::StatusCode codeOf(Put put) { return store_->write(writeOf({std::move(put)})).status().code(); }

  std::string bytesOf(const std::string& kind, const std::string& id) {
    const absl::StatusOr<Document> document = store_->get(kHome, {kind, id});
    return document.ok() ? document->bytes : std::string(document.status().message());
  }

  std::vector<std::string> idsOf(const absl::StatusOr<std::vector<Document>>& documents) {
    std::vector<std::string> ids;
    if (documents.ok()) {
      for (const Document& document : *documents) ids.push_back(document.key.id);
    }
    return ids;
  }

  ManualClock clock_{kNoon};
  std::unique_ptr<Store> store_;
};

TEST_F(DocumentsTest, GivesBackWhatWasWritten) {
  const std::string bytes("\0\xFF roast", 8);
  const WriteResult result = written({put("recipe", "roast", bytes)});
  EXPECT_EQ(result.revision, 2);
  EXPECT_TRUE(result.changed);
  const absl::StatusOr<Document> stored = store_->get(kHome, {"recipe", "roast"});
  ASSERT_TRUE(stored.ok()) << stored.status();
  EXPECT_EQ(stored->bytes, bytes);
  EXPECT_EQ(stored->revision, 2);
  EXPECT_EQ(stored->memberId, "ana");
  EXPECT_EQ(stored->createTime, kNoon);
  EXPECT_EQ(stored->etag, result.documents.front().etag);
  EXPECT_FALSE(stored->etag.empty());
}

TEST_F(DocumentsTest, KeepsTheTimeOfMakingWhenChanged) {
  written({put("recipe", "roast", "1")});
  clock_.advance(std::chrono::hours(1));
  const Document changed = written({put("recipe", "roast", "2")}).documents.front();
  EXPECT_EQ(changed.createTime, kNoon);
  EXPECT_EQ(changed.updateTime, kNoon + std::chrono::hours(1));
}

TEST_F(DocumentsTest, WritesAllOfARequestUnderOneRevision) {
  const WriteResult result = written({put("recipe", "roast", "1"), put("event", "sunday", "2")});
  ASSERT_EQ(result.documents.size(), 2u);
  EXPECT_EQ(result.documents[0].key.id, "roast");
  EXPECT_EQ(result.documents[1].key.id, "sunday");
  EXPECT_EQ(result.documents[0].revision, 2);
  EXPECT_EQ(result.documents[1].revision, 2);
  EXPECT_EQ(*store_->revision(kHome), 2);
}

TEST_F(DocumentsTest, WritesNothingOfARequestThatIsRefused) {
  Put second = put("event", "sunday", "2");
  second.expect = Expect::kPresent;
  EXPECT_EQ(store_->write(writeOf({put("recipe", "roast", "1"), second})).status().code(),
            absl::StatusCode::kNotFound);
  EXPECT_FALSE(store_->get(kHome, {"recipe", "roast"}).ok());
  EXPECT_EQ(*store_->revision(kHome), 1);
}

TEST_F(DocumentsTest, RefusesToMakeWhatIsThere) {
  Put making = put("recipe", "roast", "1");
  making.expect = Expect::kAbsent;
  EXPECT_EQ(codeOf(making), absl::StatusCode::kOk);
  EXPECT_EQ(codeOf(making), absl::StatusCode::kAlreadyExists);
}

TEST_F(DocumentsTest, RefusesToChangeWhatIsNotThere) {
  Put change = put("recipe", "roast", "1");
  change.expect = Expect::kPresent;
  EXPECT_EQ(codeOf(change), absl::StatusCode::kNotFound);
}

TEST_F(DocumentsTest, RefusesAStaleEtagAndShowsThePresentDocument) {
  const std::string old = written({put("recipe", "roast", "1")}).documents.front().etag;
  const Document present = written({put("recipe", "roast", std::string("2\0:", 3))}).documents.front();
  Put late = put("recipe", "roast", "3");
  late.etag = old;
  const absl::Status refused = store_->write(writeOf({late})).status();
  EXPECT_EQ(refused.code(), absl::StatusCode::kAborted);
  const std::optional<Document> shown = currentDocument(refused);
  ASSERT_TRUE(shown.has_value());
  EXPECT_EQ(shown->key, present.key);
  EXPECT_EQ(shown->bytes, present.bytes);
  EXPECT_EQ(shown->etag, present.etag);
  EXPECT_EQ(shown->revision, 3);
  EXPECT_EQ(shown->updateTime, kNoon);
  EXPECT_EQ(shown->memberId, "ana");
  EXPECT_FALSE(shown->deleted);
}

TEST_F(DocumentsTest, HasNoPresentDocumentInOtherErrors) {
  EXPECT_FALSE(currentDocument(store_->get(kHome, {"recipe", "none"}).status()).has_value());
  EXPECT_FALSE(currentDocument(absl::AbortedError("otherwise")).has_value());
}

TEST_F(DocumentsTest, AcceptsThePresentEtagOnce) {
  Put change = put("recipe", "roast", "2");
  change.etag = written({put("recipe", "roast", "1")}).documents.front().etag;
  EXPECT_EQ(codeOf(change), absl::StatusCode::kOk);
  EXPECT_EQ(codeOf(change), absl::StatusCode::kAborted);
}

TEST_F(DocumentsTest, LeavesATombstoneThatReadsAsNothing) {
  written({put("recipe", "roast", "1")});
  const WriteResult removed = written({removal("recipe", "roast")});
  EXPECT_TRUE(removed.documents.front().deleted);
  EXPECT_TRUE(removed.documents.front().bytes.empty());
  EXPECT_EQ(removed.revision, 3);
  EXPECT_EQ(store_->get(kHome, {"recipe", "roast"}).status().code(), absl::StatusCode::kNotFound);
  EXPECT_THAT(idsOf(store_->list(kHome, "recipe", "", 10)), ElementsAre());
}

TEST_F(DocumentsTest, ChangesNothingByRemovingWhatIsNotThere) {
  written({put("recipe", "roast", "1")});
  written({removal("recipe", "roast")});
  for (const char* id : {"roast", "never"}) {
    const WriteResult again = written({removal("recipe", id)});
    EXPECT_EQ(again.revision, 3) << id;
    EXPECT_FALSE(again.changed) << id;
    EXPECT_TRUE(again.documents.front().deleted) << id;
  }
}

TEST_F(DocumentsTest, RefusesToRemoveAChangedDocument) {
  Put remove = removal("recipe", "roast");
  remove.etag = written({put("recipe", "roast", "1")}).documents.front().etag;
  written({put("recipe", "roast", "2")});
  EXPECT_EQ(codeOf(remove), absl::StatusCode::kAborted);
  EXPECT_EQ(bytesOf("recipe", "roast"), "2");
}

TEST_F(DocumentsTest, MakesADeletedDocumentAnew) {
  written({put("recipe", "roast", "1")});
  written({removal("recipe", "roast")});
  clock_.advance(std::chrono::hours(1));
  Put making = put("recipe", "roast", "2");
  making.expect = Expect::kAbsent;
  EXPECT_EQ(written({making}).documents.front().createTime, kNoon + std::chrono::hours(1));
}

TEST_F(DocumentsTest, ChecksButKeepsNothingWhenOnlyValidating) {
  WriteRequest request = writeOf({put("recipe", "roast", "1")}, "r1");
  request.validateOnly = true;
  const absl::StatusOr<WriteResult> result = store_->write(request);
  ASSERT_TRUE(result.ok()) << result.status();
  EXPECT_EQ(result->revision, 1);
  EXPECT_FALSE(result->changed);
  EXPECT_EQ(result->documents.front().bytes, "1");
  EXPECT_FALSE(store_->get(kHome, {"recipe", "roast"}).ok());
  request.validateOnly = false;
  EXPECT_FALSE(store_->write(request)->replayed);
  request.puts.front().expect = Expect::kAbsent;
  request.validateOnly = true;
  EXPECT_EQ(store_->write(request).status().code(), absl::StatusCode::kAlreadyExists);
}

TEST_F(DocumentsTest, ListsOneKindByIdInPages) {
  written(
      {put("recipe", "c", "3"), put("recipe", "a", "1"), put("event", "x", "0"), put("recipe", "b", "2")});
  EXPECT_THAT(idsOf(store_->list(kHome, "recipe", "", 2)), ElementsAre("a", "b"));
  EXPECT_THAT(idsOf(store_->list(kHome, "recipe", "b", 2)), ElementsAre("c"));
}

TEST_F(DocumentsTest, TakesASnapshotWithoutTombstones) {
  written({put("recipe", "b", "1"), put("recipe", "a", "2")});
  written({removal("recipe", "b")});
  const absl::StatusOr<Snapshot> snapshot = store_->snapshot(kHome);
  ASSERT_TRUE(snapshot.ok()) << snapshot.status();
  EXPECT_EQ(snapshot->revision, 3);
  EXPECT_THAT(idsOf(snapshot->documents), ElementsAre(kHome, "a"));
}

TEST_F(DocumentsTest, RefusesMoreDocumentsThanAHouseholdMayHold) {
  written({put("recipe", "a", ""), put("recipe", "b", ""), put("recipe", "c", ""), put("recipe", "d", "")});
  EXPECT_EQ(codeOf(put("recipe", "e", "")), absl::StatusCode::kResourceExhausted);
  written({removal("recipe", "a")});
  EXPECT_EQ(codeOf(put("recipe", "e", "")), absl::StatusCode::kOk);
  EXPECT_EQ(codeOf(put("recipe", "e", "again")), absl::StatusCode::kOk);
}

TEST_F(DocumentsTest, KnowsNoOtherHousehold) {
  WriteRequest request = writeOf({put("recipe", "roast", "1")});
  request.householdId = "elsewhere";
  EXPECT_EQ(store_->write(request).status().code(), absl::StatusCode::kNotFound);
  EXPECT_EQ(store_->snapshot("elsewhere").status().code(), absl::StatusCode::kNotFound);
  EXPECT_EQ(store_->revision("elsewhere").status().code(), absl::StatusCode::kNotFound);
  EXPECT_EQ(store_->changesAfter("elsewhere", 0, 1).status().code(), absl::StatusCode::kNotFound);
  EXPECT_EQ(store_->get("elsewhere", {"household", kHome}).status().code(), absl::StatusCode::kNotFound);
}

TEST_F(DocumentsTest, RefusesNamesThatAreNone) {
  EXPECT_EQ(codeOf(put("recipe", "", "1")), absl::StatusCode::kInvalidArgument);
  EXPECT_EQ(codeOf(put("recipe", "a/b", "1")), absl::StatusCode::kInvalidArgument);
  EXPECT_EQ(codeOf(put("re\ncipe", "a", "1")), absl::StatusCode::kInvalidArgument);
  EXPECT_EQ(store_->write(writeOf({put("recipe", "a", "1"), put("recipe", "a", "2")})).status().code(),
            absl::StatusCode::kInvalidArgument);
}

TEST_F(DocumentsTest, GivesEachOfManyItsOwnOutcomeUnderOneCommit) {
  Put refused = put("recipe", "a", "x");
  refused.expect = Expect::kAbsent;
  const auto results = store_->writeAll({writeOf({put("recipe", "a", "1")}), writeOf({refused}),
                                         writeOf({put("recipe", "b", "2"), put("recipe", "a", "3")})});
  ASSERT_EQ(results.size(), 3u);
  EXPECT_EQ(results[0]->revision, 2);
  EXPECT_EQ(results[1].status().code(), absl::StatusCode::kAlreadyExists);
  EXPECT_EQ(results[2]->revision, 3);
  EXPECT_EQ(bytesOf("recipe", "a"), "3");
}

}  // namespace
}  // namespace suppertide::storage
