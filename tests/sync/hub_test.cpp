#include "server/sync/hub.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <atomic>
#include <thread>

namespace suppertide::sync {
namespace {

using ::testing::ElementsAre;

std::shared_ptr<const storage::Change> change(std::int64_t revision) {
  auto change = std::make_shared<storage::Change>();
  change->revision = revision;
  return change;
}

class HubTest : public ::testing::Test {
 protected:
  void commit(std::initializer_list<std::int64_t> revisions) {
    for (const std::int64_t revision : revisions) hub_.committed("home", change(revision));
  }

  // The revisions after `after`, or -1 alone when they are not at hand.
  std::vector<std::int64_t> after(std::int64_t after) {
    const Hub::Recent recent = hub_.recentAfter("home", after);
    if (!recent.atHand) return {-1};
    std::vector<std::int64_t> revisions;
    for (const auto& each : recent.changes) revisions.push_back(each->revision);
    return revisions;
  }

  Hub hub_{3};
  int woken_ = 0;
  std::unique_ptr<Hub::Subscription> subscription_ = hub_.subscribe("home", [this] { ++woken_; });
};

TEST_F(HubTest, WakesEveryWatcherOfTheHousehold) {
  int others = 0;
  int elsewhere = 0;
  const auto second = hub_.subscribe("home", [&] { ++others; });
  const auto third = hub_.subscribe("elsewhere", [&] { ++elsewhere; });
  commit({5, 6});
  EXPECT_EQ(woken_, 2);
  EXPECT_EQ(others, 2);
  EXPECT_EQ(elsewhere, 0);
}

TEST_F(HubTest, WakesNobodyWhoLeft) {
  const auto other = hub_.subscribe("home", [] {});
  commit({5});
  subscription_.reset();
  commit({6});
  EXPECT_EQ(woken_, 1);
}

TEST_F(HubTest, HasTheLastChangesAtHand) {
  commit({5, 6, 7});
  EXPECT_THAT(after(4), ElementsAre(5, 6, 7));
  EXPECT_THAT(after(6), ElementsAre(7));
  EXPECT_THAT(after(7), ElementsAre());
  EXPECT_THAT(after(9), ElementsAre());
}

TEST_F(HubTest, SendsThoseFurtherBackToTheLog) {
  EXPECT_THAT(after(4), ElementsAre(-1));
  commit({5, 6, 7, 8});
  EXPECT_THAT(after(4), ElementsAre(-1));
  EXPECT_THAT(after(5), ElementsAre(6, 7, 8));
}

TEST_F(HubTest, SendsEveryoneToTheLogAfterAGap) {
  commit({5, 7});
  EXPECT_THAT(after(5), ElementsAre(-1));
  EXPECT_THAT(after(6), ElementsAre(7));
}

TEST_F(HubTest, KeepsAChangeOnceThoughToldTwice) {
  commit({5, 6, 6, 5});
  EXPECT_THAT(after(4), ElementsAre(5, 6));
}

TEST_F(HubTest, KeepsNothingForAHouseholdNobodyWatches) {
  commit({5});
  subscription_.reset();
  EXPECT_THAT(after(4), ElementsAre(-1));
  commit({6});
  EXPECT_THAT(after(5), ElementsAre(-1));
}

TEST_F(HubTest, HoldsNoLockWhileWaking) {
  std::vector<std::int64_t> seen;
  const auto reader = hub_.subscribe("home", [&] {
    seen = after(4);
    const auto another = hub_.subscribe("home", [] {});
  });
  commit({5});
  EXPECT_THAT(seen, ElementsAre(5));
}

TEST_F(HubTest, LetsASubscriptionOutliveIt) {
  auto hub = std::make_unique<Hub>();
  const auto subscription = hub->subscribe("home", [] {});
  hub.reset();
}

// A wake that ran after its subscription ended would write to what is gone: the
// flag shows it here, and the sanitizers show the race.
TEST(HubThreadsTest, CallsNobodyAfterTheirSubscriptionEnded) {
  Hub hub;
  std::atomic<bool> stop = false;
  std::jthread writer([&] {
    for (std::int64_t revision = 1; !stop; ++revision) hub.committed("home", change(revision));
  });
  for (int i = 0; i < 2000; ++i) {
    auto alive = std::make_unique<bool>(true);
    bool late = false;
    auto subscription = hub.subscribe("home", [&late, gone = alive.get()] { late = late || !*gone; });
    std::this_thread::yield();
    subscription.reset();
    *alive = false;
    EXPECT_FALSE(late);
  }
  stop = true;
}

TEST(HubThreadsTest, WaitsForACallUnderWayBeforeASubscriptionEnds) {
  Hub hub;
  std::atomic<bool> inside = false;
  std::atomic<bool> finished = false;
  auto subscription = hub.subscribe("home", [&] {
    inside = true;
    inside.notify_one();
    for (int i = 0; i < 10'000; ++i) std::this_thread::yield();
    finished = true;
  });
  const std::jthread writer([&] { hub.committed("home", change(1)); });
  inside.wait(false);
  subscription.reset();
  EXPECT_TRUE(finished);
}

}  // namespace
}  // namespace suppertide::sync
