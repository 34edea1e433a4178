// The six promises of a watch, each checked on random traffic with cuts.
#include "server/sync/feed.h"

#include <gtest/gtest.h>

#include <map>
#include <random>

#include "tests/storage/store_fixture.h"

namespace suppertide::sync {
namespace {

using storage::kHouse;

// A watcher as a client would be: it keeps a copy, loses its stream now and then
// and comes back after the last revision it applied.
class Watcher {
 public:
  Watcher(Hub& hub, storage::Store& store) : hub_(hub), store_(store) { connect(); }

  void connect() { feed_ = std::make_unique<Feed>(hub_, store_, kHouse, applied_); }

  // Takes at most `most` items; false when there is nothing more.
  bool take(int most) {
    for (int i = 0; i < most; ++i) {
      const auto item = feed_->next();
      EXPECT_TRUE(item.ok()) << item.status();
      if (!item.ok() || std::holds_alternative<Nothing>(*item)) return false;
      apply(*item);
    }
    return true;
  }

  const std::map<std::string, std::string>& copy() const { return copy_; }
  std::int64_t applied() const { return applied_; }

 private:
  void apply(const FeedItem& item) {
    if (std::holds_alternative<Reset>(item)) {
      copy_.clear();
      inSnapshot_ = true;
    } else if (const auto* part = std::get_if<SnapshotPart>(&item)) {
      EXPECT_TRUE(inSnapshot_) << "a snapshot without a reset";
      for (const auto& document : part->documents)
        copy_[document.key.kind + "/" + document.key.id] = document.bytes;
    } else if (const auto* bookmark = std::get_if<Bookmark>(&item)) {
      // Bookmarkable: nothing up to it may come later; ordered: it never goes back.
      EXPECT_GE(bookmark->revision, applied_);
      if (!inSnapshot_) {
        EXPECT_EQ(bookmark->revision, applied_) << "a bookmark overtook a change";
      }
      applied_ = bookmark->revision;
      inSnapshot_ = false;
    } else {
      const auto& change = *std::get<std::shared_ptr<const storage::Change>>(item);
      EXPECT_FALSE(inSnapshot_) << "a change inside a snapshot";
      EXPECT_EQ(change.revision, applied_ + 1)
          << "ordered, unique and reliable: each revision once, none left out";
      applied_ = change.revision;
      EXPECT_EQ(change.documents.size(), 2u) << "atomic: a commit comes whole";
      for (const auto& document : change.documents) {
        const std::string key = document.key.kind + "/" + document.key.id;
        if (document.deleted)
          copy_.erase(key);
        else
          copy_[key] = document.bytes;
      }
    }
  }

  Hub& hub_;
  storage::Store& store_;
  std::unique_ptr<Feed> feed_;
  std::map<std::string, std::string> copy_;
  std::int64_t applied_ = 0;
  bool inSnapshot_ = false;
};

std::map<std::string, std::string> truth(storage::Store& store) {
  std::map<std::string, std::string> all;
  const auto snapshot = store.snapshot(kHouse);
  EXPECT_TRUE(snapshot.ok());
  for (const auto& document : snapshot->documents)
    all[document.key.kind + "/" + document.key.id] = document.bytes;
  return all;
}

class Traffic {
 public:
  explicit Traffic(std::int64_t keepChanges) {
    storage::Store::Options options;
    options.keepChanges = keepChanges;
    store_ = file_.open(options);
    storage::found(*store_);
  }

  storage::Store& store() { return *store_; }
  Hub& hub() { return hub_; }

  // Writes or removes two documents in one commit, and tells the hub.
  void write(std::mt19937& random) {
    const std::string name = "r" + std::to_string(++count_);
    storage::WriteRequest request = storage::putting(name, "x" + std::to_string(random() % 5), name);
    request.puts.push_back({{"recipe", "y" + name}, name, storage::Expect::kAnything, "", false});
    if (count_ > 1 && random() % 4 == 0) {
      request.puts[1].key.id = "yr" + std::to_string(count_ - 1);
      request.puts[1].remove = true;
      if (!store_->get(kHouse, request.puts[1].key).ok())
        request.puts[1] = {{"recipe", "y" + name}, name, storage::Expect::kAnything, "", false};
    }
    const auto made = store_->write(request);
    ASSERT_TRUE(made.ok()) << made.status();
    const auto page = store_->changesAfter(kHouse, made->revision - 1, 1);
    ASSERT_EQ(page->changes.size(), 1u);
    hub_.committed(kHouse, std::make_shared<storage::Change>(page->changes[0]));
  }

 private:
  storage::StoreFile file_;
  std::unique_ptr<storage::Store> store_;
  Hub hub_{8};
  int count_ = 0;
};

void run(std::int64_t keepChanges, unsigned seed) {
  SCOPED_TRACE("seed " + std::to_string(seed));
  std::mt19937 random(seed);
  Traffic traffic(keepChanges);
  std::vector<Watcher> watchers;
  for (int i = 0; i < 4; ++i) watchers.emplace_back(traffic.hub(), traffic.store());
  for (int round = 0; round < 150; ++round) {
    traffic.write(random);
    for (Watcher& watcher : watchers) {
      if (random() % 10 == 0) watcher.connect();  // resumable
      if (random() % 3 == 0) watcher.take(static_cast<int>(random() % 6));
    }
  }
  for (Watcher& watcher : watchers) {
    while (watcher.take(100)) {
    }
    EXPECT_EQ(watcher.applied(), *traffic.store().revision(kHouse));
    EXPECT_EQ(watcher.copy(), truth(traffic.store()));
  }
}

TEST(FeedTest, KeepsItsPromisesThroughCutsAndSlowReading) {
  for (unsigned seed = 1; seed <= 4; ++seed) run(20'000, seed);
}

TEST(FeedTest, KeepsItsPromisesWhenTheLogIsTrimmedUnderASlowReader) {
  for (unsigned seed = 1; seed <= 4; ++seed) run(10, seed);
}

TEST(FeedTest, RefusesARevisionInTheFuture) {
  Traffic traffic(100);
  Feed feed(traffic.hub(), traffic.store(), kHouse, 1000);
  EXPECT_EQ(feed.next().status().code(), absl::StatusCode::kInvalidArgument);
}

TEST(FeedTest, BookmarksAtWhatWasDelivered) {
  Traffic traffic(100);
  std::mt19937 random(1);
  Watcher watcher(traffic.hub(), traffic.store());
  traffic.write(random);
  while (watcher.take(10)) {
  }
  EXPECT_EQ(watcher.applied(), *traffic.store().revision(kHouse));
}

}  // namespace
}  // namespace suppertide::sync
