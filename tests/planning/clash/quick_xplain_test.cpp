#include "server/planning/clash/quick_xplain.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>

#include "tests/support/dice.h"

namespace suppertide::planning {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;
using Ints = std::vector<int>;

bool hasAll(const Ints& all, const Ints& wanted) {
  return std::all_of(wanted.begin(), wanted.end(),
                     [&](int one) { return std::find(all.begin(), all.end(), one) != all.end(); });
}

Ints upTo(int count) {
  Ints items(static_cast<std::size_t>(count));
  std::iota(items.begin(), items.end(), 0);
  return items;
}

TEST(QuickXplainTest, FindsTheOnlyConflict) {
  QuickXplain<int> search([](const Ints& items) { return hasAll(items, {3, 11}); });
  EXPECT_THAT(search.explain({}, upTo(20)), ElementsAre(3, 11));
}

TEST(QuickXplainTest, LeavesOutLaterItemsFirst) {
  QuickXplain<int> search([](const Ints& items) {
    return hasAll(items, {1, 2}) || hasAll(items, {2, 7}) || hasAll(items, {8});
  });
  EXPECT_THAT(search.explain({}, upTo(10)), ElementsAre(1, 2));
}

TEST(QuickXplainTest, IsEmptyWhenTheBackgroundConflictsAlone) {
  QuickXplain<int> search([](const Ints& items) { return hasAll(items, {100}); });
  EXPECT_THAT(search.explain({100}, upTo(5)), IsEmpty());
}

TEST(QuickXplainTest, AnyOfItsItemsIsNeeded) {
  for (std::uint64_t seed = 1; seed <= 100; ++seed) {
    SCOPED_TRACE(seed);
    Dice dice(seed);
    std::vector<Ints> conflicts;
    for (int c = dice.between(1, 6); c > 0; --c) {
      Ints conflict;
      for (int k = dice.between(1, 4); k > 0; --k) conflict.push_back(dice.between(0, 29));
      conflicts.push_back(conflict);
    }
    const auto conflict = [&](const Ints& items) {
      return std::any_of(conflicts.begin(), conflicts.end(), [&](const Ints& c) { return hasAll(items, c); });
    };
    const Ints core = QuickXplain<int>(conflict).explain({}, upTo(30));
    EXPECT_TRUE(conflict(core));
    for (std::size_t k = 0; k < core.size(); ++k) {
      Ints without = core;
      without.erase(without.begin() + static_cast<std::ptrdiff_t>(k));
      EXPECT_FALSE(conflict(without)) << core[k];
    }
  }
}

}  // namespace
}  // namespace suppertide::planning
