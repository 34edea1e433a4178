// Random edits, several watchers that are cut off and come back, and the six promises.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <atomic>
#include <thread>

#include "server/storage/write_queue.h"
#include "server/sync/feed.h"
#include "tests/support/dice.h"
#include "tests/support/stored_household.h"
#include "tests/support/watch_recorder.h"

namespace suppertide::sync {
namespace {

using ::testing::IsEmpty;

storage::Store::Options shortLog() {
  storage::Store::Options options;
  options.keepChanges = 12;
  return options;
}

storage::WriteRequest randomWrite(Dice& dice) {
  std::vector<storage::Put> puts;
  const int first = dice.between(0, 9);
  for (int i = 0; i < dice.between(1, 3); ++i) {
    const std::string id = "r" + std::to_string((first + i) % 10);
    puts.push_back(dice.chance(25) ? removal("recipe", id)
                                   : put("recipe", id, std::to_string(dice.between(0, 999))));
  }
  return writeOf(std::move(puts));
}

// A client that comes back where it left off, or now and then with nothing.
class Client {
 public:
  Client(Hub& hub, storage::Store& store, std::function<void()> wake)
      : hub_(hub), store_(store), wake_(std::move(wake)) {}

  void connect(bool fromNothing) {
    cut();
    const std::int64_t after = fromNothing ? 0 : recorder_.revision();
    recorder_.begin(after);
    subscription_ = hub_.subscribe(kHome, wake_);
    feed_ = std::make_unique<Feed>(hub_, store_, kHome, after);
  }
  void cut() {
    feed_.reset();
    subscription_.reset();
  }
  bool connected() const { return feed_ != nullptr; }
  // False when there was nothing to take.
  bool takeOne() {
    const absl::StatusOr<FeedItem> item = feed_->next();
    EXPECT_TRUE(item.ok()) << item.status();
    if (!item.ok() || std::holds_alternative<Nothing>(*item)) return false;
    recorder_.take(*item);
    return true;
  }
  void bookmark() { recorder_.take(feed_->bookmark()); }
  const WatchRecorder& recorder() const { return recorder_; }

 private:
  Hub& hub_;
  storage::Store& store_;
  const std::function<void()> wake_;
  WatchRecorder recorder_;
  std::unique_ptr<Hub::Subscription> subscription_;
  std::unique_ptr<Feed> feed_;
};

void expectPromisesKept(const Client& client, const Changes& committed) {
  EXPECT_THAT(WatchValidator(client.recorder(), committed).all(), IsEmpty());
  EXPECT_EQ(client.recorder().revision(), std::ssize(committed));
  Replica truth;
  for (const auto& change : committed) apply(*change, truth);
  EXPECT_EQ(client.recorder().replica().size(), truth.size());
}

// The change that made the household comes before any queue.
Changes firstChange(storage::Store& store) {
  return {std::make_shared<const storage::Change>(store.changesAfter(kHome, 0, 1)->changes.front())};
}

// One step of a client whose moves the dice decide.
void move(Client& client, Dice& dice) {
  if (!client.connected()) {
    client.connect(dice.chance(10));
  } else if (dice.chance(5)) {
    client.cut();
  } else if (!client.takeOne() && dice.chance(30)) {
    client.bookmark();
  }
}

void runInTurns(std::uint64_t seed) {
  Dice dice(seed);
  ManualClock clock(kNoon);
  Hub hub(5);
  const auto store = storeWithHome(":memory:", shortLog(), clock);
  Changes committed = firstChange(*store);
  std::vector<std::unique_ptr<Client>> clients;
  for (int i = 0; i < 4; ++i) clients.push_back(std::make_unique<Client>(hub, *store, [] {}));
  for (int step = 0; step < 400; ++step) {
    if (dice.chance(25)) {
      // The queue's thread is joined with it, so its change is known before the next step.
      storage::WriteQueue queue(*store,
                                [&](const std::string& id, std::shared_ptr<const storage::Change> change) {
                                  committed.push_back(change);
                                  hub.committed(id, std::move(change));
                                });
      queue.submit(randomWrite(dice),
                   [](const absl::StatusOr<storage::WriteResult>& r) { EXPECT_TRUE(r.ok()); });
    }
    move(*clients[static_cast<std::size_t>(dice.between(0, 3))], dice);
  }
  for (const auto& client : clients) {
    if (!client->connected()) client->connect(false);
    while (client->takeOne()) {
    }
    client->bookmark();
    expectPromisesKept(*client, committed);
  }
}

TEST(TrafficTest, KeepsTheSixPromisesThroughCuts) {
  for (std::uint64_t seed = 1; seed <= 100; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    runInTurns(seed);
    if (::testing::Test::HasFailure()) return;
  }
}

// A client on a thread of its own: sleeps until woken, is cut now and then, and
// leaves when everything was written and taken.
void live(Client& client, std::atomic<int>& wakes, std::atomic<bool>& written, std::uint64_t seed) {
  Dice dice(seed);
  client.connect(false);
  for (;;) {
    const int seen = wakes;
    const bool last = written;
    if (dice.chance(3)) client.connect(dice.chance(10));
    while (client.takeOne()) {
    }
    if (last) break;
    wakes.wait(seen);
  }
  client.bookmark();
}

TEST(TrafficTest, KeepsTheSixPromisesBetweenThreads) {
  ManualClock clock(kNoon);
  Hub hub(5);  // outlives the queue, which calls it
  const auto store = storeWithHome(":memory:", shortLog(), clock);
  Changes committed = firstChange(*store);
  std::atomic<bool> written = false;
  std::atomic<int> wakes = 0;
  const auto wake = [&] {
    ++wakes;
    wakes.notify_all();
  };
  std::vector<std::unique_ptr<Client>> clients;
  std::vector<std::jthread> threads;
  for (int i = 0; i < 3; ++i) clients.push_back(std::make_unique<Client>(hub, *store, wake));
  for (std::uint64_t seed = 1; const auto& client : clients) {
    threads.emplace_back([&, seed, &its = *client] { live(its, wakes, written, seed); });
    ++seed;
  }
  {
    storage::WriteQueue queue(*store,
                              [&](const std::string& id, std::shared_ptr<const storage::Change> change) {
                                committed.push_back(change);
                                hub.committed(id, std::move(change));
                              });
    std::vector<std::jthread> writers;
    for (std::uint64_t seed = 11; seed <= 12; ++seed) {
      writers.emplace_back([&queue, seed] {
        Dice dice(seed);
        for (int i = 0; i < 500; ++i) queue.submit(randomWrite(dice), [](const auto&) {});
      });
    }
  }
  written = true;
  wake();
  threads.clear();
  for (const auto& client : clients) expectPromisesKept(*client, committed);
}

}  // namespace
}  // namespace suppertide::sync
