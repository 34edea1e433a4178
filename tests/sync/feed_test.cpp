#include "server/sync/feed.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/support/stored_household.h"

namespace suppertide::sync {
namespace {

using ::testing::ElementsAre;

class FeedTest : public ::testing::Test {
 protected:
  FeedTest() { store_ = storeWithHome(":memory:", options(), clock_); }

  static storage::Store::Options options() {
    storage::Store::Options options;
    options.keepChanges = 200;
    return options;
  }

  // Writes as the queue does: into the store, then told to the hub.
  void write(storage::Put put, bool tell = true) {
    const absl::StatusOr<storage::WriteResult> result = store_->write(writeOf({std::move(put)}));
    ASSERT_TRUE(result.ok()) << result.status();
    if (!tell) return;
    auto change = std::make_shared<storage::Change>();
    change->revision = result->revision;
    change->documents = result->documents;
    hub_.committed(kHome, change);
  }

  Feed feedAfter(std::int64_t after) { return Feed(hub_, *store_, kHome, after); }

  // An item in a word.
  std::string wordFor(const absl::StatusOr<FeedItem>& item) {
    if (!item.ok()) return "error " + std::to_string(static_cast<int>(item.status().code()));
    if (std::holds_alternative<Nothing>(*item)) return "nothing";
    if (std::holds_alternative<Reset>(*item)) return "reset";
    if (const auto* part = std::get_if<SnapshotPart>(&*item))
      return "part of " + std::to_string(part->documents.size());
    if (const auto* bookmark = std::get_if<Bookmark>(&*item))
      return "bookmark " + std::to_string(bookmark->revision);
    return "change " + std::to_string(std::get<std::shared_ptr<const storage::Change>>(*item)->revision);
  }

  // Everything up to Nothing, which is left out.
  std::vector<std::string> drain(Feed& feed) {
    std::vector<std::string> words;
    for (std::string word = wordFor(feed.next()); word != "nothing" && words.size() < 1000;
         word = wordFor(feed.next())) {
      words.push_back(word);
    }
    return words;
  }

  ManualClock clock_{kNoon};
  Hub hub_{4};
  std::unique_ptr<Hub::Subscription> subscription_ = hub_.subscribe(kHome, [] {});
  std::unique_ptr<storage::Store> store_;
};

TEST_F(FeedTest, StartsWithASnapshot) {
  write(put("recipe", "a", "1"));
  Feed feed = feedAfter(0);
  EXPECT_THAT(drain(feed), ElementsAre("reset", "part of 2", "bookmark 2"));
}

TEST_F(FeedTest, GivesALargeSnapshotInParts) {
  for (int i = 0; i < 150; ++i) write(put("recipe", "r" + std::to_string(i), "x"));
  Feed feed = feedAfter(0);
  EXPECT_THAT(drain(feed), ElementsAre("reset", "part of 100", "part of 51", "bookmark 151"));
}

TEST_F(FeedTest, KeepsPartsSmallInBytes) {
  for (int i = 0; i < 3; ++i) write(put("recipe", "r" + std::to_string(i), std::string(400'000, 'x')));
  Feed feed = feedAfter(0);
  EXPECT_THAT(drain(feed), ElementsAre("reset", "part of 2", "part of 1", "part of 1", "bookmark 4"));
}

TEST_F(FeedTest, GoesOnAfterARevisionFromTheLog) {
  for (const char* bytes : {"1", "2", "3"}) write(put("recipe", "a", bytes), false);
  Feed feed = feedAfter(2);
  EXPECT_THAT(drain(feed), ElementsAre("change 3", "change 4", "bookmark 4"));
}

TEST_F(FeedTest, BookmarksAtOnceWhenUpToDate) {
  write(put("recipe", "a", "1"));
  Feed feed = feedAfter(2);
  EXPECT_THAT(drain(feed), ElementsAre("bookmark 2"));
  EXPECT_EQ(wordFor(feed.next()), "nothing");
}

TEST_F(FeedTest, GivesLiveChangesWithoutABookmarkEach) {
  Feed feed = feedAfter(1);
  drain(feed);
  write(put("recipe", "a", "1"));
  write(put("recipe", "a", "2"));
  EXPECT_THAT(drain(feed), ElementsAre("change 2", "change 3"));
}

TEST_F(FeedTest, FeedsOneThatFellBehindFromTheLog) {
  Feed feed = feedAfter(1);
  drain(feed);
  for (int i = 0; i < 70; ++i) write(put("recipe", "a", "x"));
  const std::vector<std::string> words = drain(feed);
  ASSERT_EQ(words.size(), 71u);
  EXPECT_EQ(words.front(), "change 2");
  EXPECT_EQ(words[69], "change 71");
  EXPECT_EQ(words.back(), "bookmark 71");
}

TEST_F(FeedTest, StartsOverWhenTheLogWasTrimmed) {
  for (int i = 0; i < 211; ++i) write(put("recipe", "a", "x"), false);  // up to 212, trimmed to 12
  Feed exactly = feedAfter(12);
  EXPECT_EQ(wordFor(exactly.next()), "change 13");
  Feed behind = feedAfter(11);
  EXPECT_THAT(drain(behind), ElementsAre("reset", "part of 2", "bookmark 212"));
}

TEST_F(FeedTest, StartsOverWhenTrimmedWhileItSlept) {
  Feed feed = feedAfter(1);
  drain(feed);
  for (int i = 0; i < 220; ++i) write(put("recipe", "a", "x"));
  EXPECT_THAT(drain(feed), ElementsAre("reset", "part of 2", "bookmark 221"));
}

TEST_F(FeedTest, RefusesARevisionInTheFutureOnce) {
  for (const std::int64_t after : {2, -1}) {
    Feed feed = feedAfter(after);
    EXPECT_EQ(feed.next().status().code(), absl::StatusCode::kInvalidArgument) << after;
    EXPECT_EQ(wordFor(feed.next()), "nothing");
  }
}

TEST_F(FeedTest, PassesOnThatThereIsNoHousehold) {
  Feed feed(hub_, *store_, "elsewhere", 0);
  EXPECT_EQ(feed.next().status().code(), absl::StatusCode::kNotFound);
}

TEST_F(FeedTest, BookmarksNoFurtherThanItDelivered) {
  Feed feed = feedAfter(1);
  drain(feed);
  write(put("recipe", "a", "1"));
  write(put("recipe", "a", "2"));
  EXPECT_EQ(feed.bookmark().revision, 1);
  EXPECT_EQ(wordFor(feed.next()), "change 2");
  EXPECT_EQ(feed.bookmark().revision, 2);
  Feed fresh = feedAfter(0);
  EXPECT_EQ(wordFor(fresh.next()), "reset");
  EXPECT_EQ(fresh.bookmark().revision, 0);
}

TEST_F(FeedTest, DoesNotGiveAgainWhatItReadBeforeTheHubHeard) {
  Feed feed = feedAfter(1);
  write(put("recipe", "a", "1"), false);
  EXPECT_THAT(drain(feed), ElementsAre("change 2", "bookmark 2"));
  auto late = std::make_shared<storage::Change>();
  late->revision = 2;
  hub_.committed(kHome, late);
  EXPECT_THAT(drain(feed), ElementsAre());
}

}  // namespace
}  // namespace suppertide::sync
