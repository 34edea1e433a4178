#include "server/kitchen/shelf_bounds.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "server/kitchen/shelf_search.h"
#include "tests/kitchen/dice.h"

namespace suppertide::kitchen {
namespace {

constexpr long kPlentySteps = 100'000'000;

TEST(ShelfBoundsTest, CountsWholeWhatNothingCanLieBeside) {
  // Three of 60 x 60 are less than the area of 110 x 110, but no two lie side by side.
  const ShelfBounds bounds(110, 110, {{60, 60, 1}, {60, 60, 1}, {60, 60, 1}});
  EXPECT_TRUE(bounds.isTooMuch(0b11));
  EXPECT_TRUE(bounds.isTooMuch(0b111));
  EXPECT_FALSE(bounds.isTooMuch(0b1));
  EXPECT_FALSE(bounds.isTooMuch(0));
  EXPECT_FALSE(ShelfBounds(120, 60, {{60, 60, 1}, {60, 60, 1}}).isTooMuch(0b11));
}

TEST(ShelfBoundsTest, CountsTheAreaOfThoseAskedAboutAlone) {
  const ShelfBounds bounds(100, 100, {{100, 50, 1}, {100, 40, 1}, {30, 10, 1}, {100, 11, 1}});
  EXPECT_FALSE(bounds.isTooMuch(0b0111));
  EXPECT_TRUE(bounds.isTooMuch(0b1011)) << "10 100 of 10 000 square millimetres";
}

// Any set that an exact search lays is not refused; and some that it does not lay are.
TEST(ShelfBoundsPropertyTest, RefusesNothingThatFits) {
  int refused = 0;
  int fitting = 0;
  for (unsigned seed = 1; seed <= 400; ++seed) {
    SCOPED_TRACE(testing::Message() << "seed " << seed);
    const SmallShelf shelf = smallShelf(seed, 7, 5);
    if (shelf.prints.empty()) continue;
    bool allLieAlone = true;
    for (const Footprint& print : shelf.prints)
      allLieAlone = allLieAlone && std::max(print.width, print.depth) <= std::max(shelf.width, shelf.depth) &&
                    std::min(print.width, print.depth) <= std::min(shelf.width, shelf.depth);
    if (!allLieAlone) continue;
    const ShelfBounds bounds(shelf.width, shelf.depth, shelf.prints);
    const auto search = makeShelfSearch(shelf.width, shelf.depth, shelf.prints);
    for (std::uint32_t set = 1; set < 1U << shelf.prints.size(); ++set) {
      long steps = kPlentySteps;
      const bool fits = search->search(set, steps).has_value();
      ASSERT_GT(steps, 0);
      const bool tooMuch = bounds.isTooMuch(set);
      EXPECT_FALSE(fits && tooMuch) << "set " << set;
      refused += tooMuch ? 1 : 0;
      fitting += fits ? 1 : 0;
    }
  }
  EXPECT_GT(refused, 20);
  EXPECT_GT(fitting, 1000);
}

}  // namespace
}  // namespace suppertide::kitchen
