#include "server/sync/hub.h"

#include <gtest/gtest.h>

#include <atomic>
#include <thread>

namespace suppertide::sync {
namespace {

std::shared_ptr<const storage::Change> change(std::int64_t revision) {
  auto made = std::make_shared<storage::Change>();
  made->revision = revision;
  return made;
}

TEST(HubTest, WakesTheWatchersOfThatHouseholdOnly) {
  Hub hub;
  int here = 0;
  int there = 0;
  const auto a = hub.subscribe("a", [&] { ++here; });
  const auto b = hub.subscribe("b", [&] { ++there; });
  hub.committed("a", change(1));
  EXPECT_EQ(here, 1);
  EXPECT_EQ(there, 0);
}

TEST(HubTest, DoesNotWakeAfterTheSubscriptionIsGone) {
  Hub hub;
  std::atomic<bool> gone{false};
  std::atomic<int> late{0};
  std::atomic<bool> stop{false};
  std::thread writer([&] {
    for (std::int64_t revision = 1; !stop; ++revision) hub.committed("a", change(revision));
  });
  for (int round = 0; round < 200; ++round) {
    gone = false;
    auto subscription = hub.subscribe("a", [&] {
      if (gone) ++late;
    });
    subscription.reset();
    gone = true;
  }
  stop = true;
  writer.join();
  EXPECT_EQ(late, 0);
}

TEST(HubTest, HasRecentChangesAtHandWhileSomebodyWatches) {
  Hub hub(4);
  const auto watcher = hub.subscribe("a", [] {});
  for (std::int64_t revision = 1; revision <= 6; ++revision) hub.committed("a", change(revision));
  const auto recent = hub.recentAfter("a", 4);
  ASSERT_TRUE(recent.atHand);
  ASSERT_EQ(recent.changes.size(), 2u);
  EXPECT_EQ(recent.changes[0]->revision, 5);
  EXPECT_FALSE(hub.recentAfter("a", 1).atHand);
}

}  // namespace
}  // namespace suppertide::sync
