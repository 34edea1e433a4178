#include "server/kitchen/shelf_search.h"

#include <gtest/gtest.h>

#include <bit>

#include "tests/kitchen/apart.h"
#include "tests/kitchen/dice.h"

namespace suppertide::kitchen {
namespace {

constexpr long kEnoughSteps = 1'000'000;

bool foundAlone(int width, int depth, const std::vector<Footprint>& prints) {
  std::uint32_t all = 0;
  for (const Footprint& print : prints)
    for (int i = 0; i < print.count; ++i) all = all << 1 | 1;
  long steps = kEnoughSteps;
  const bool found = makeShelfSearch(width, depth, prints)->search(all, steps).has_value();
  EXPECT_GT(steps, 0);
  return found;
}

// A slow twin on a coarse grid: tries every place of every pan, in the order given.
bool slowFits(std::vector<std::vector<bool>>& grid, const std::vector<Footprint>& left, std::size_t next) {
  if (next == left.size()) return true;
  const int width = static_cast<int>(grid.size());
  const int depth = static_cast<int>(grid[0].size());
  for (bool turned : {false, true}) {
    const int wide = turned ? left[next].depth : left[next].width;
    const int deep = turned ? left[next].width : left[next].depth;
    for (int x = 0; x + wide <= width; ++x) {
      for (int y = 0; y + deep <= depth; ++y) {
        bool free = true;
        for (int i = x; i < x + wide && free; ++i) {
          for (int j = y; j < y + deep && free; ++j)
            free = !grid[static_cast<std::size_t>(i)][static_cast<std::size_t>(j)];
        }
        if (!free) continue;
        const auto paint = [&](bool value) {
          for (int i = x; i < x + wide; ++i) {
            for (int j = y; j < y + deep; ++j)
              grid[static_cast<std::size_t>(i)][static_cast<std::size_t>(j)] = value;
          }
        };
        paint(true);
        if (slowFits(grid, left, next + 1)) return true;
        paint(false);
      }
    }
  }
  return false;
}

TEST(ShelfSearchPropertyTest, AgreesWithTheSlowTwinOnSmallShelves) {
  int yes = 0;
  for (unsigned seed = 1; seed <= 1500; ++seed) {
    SCOPED_TRACE(testing::Message() << "seed " << seed);
    const auto [width, depth, prints] = smallShelf(seed, 6, 4);
    std::vector<std::vector<bool>> grid(static_cast<std::size_t>(width),
                                        std::vector<bool>(static_cast<std::size_t>(depth)));
    const bool expected = slowFits(grid, prints, 0);
    yes += expected ? 1 : 0;
    if (prints.empty()) continue;
    EXPECT_EQ(foundAlone(width, depth, prints), expected);
  }
  EXPECT_GT(yes, 300);
  EXPECT_LT(yes, 1400);
}

TEST(ShelfSearchPropertyTest, WhatWasFoundOutForSomePansSpoilsNoAnswerAboutOthers) {
  int yes = 0;
  int asked = 0;
  for (unsigned seed = 1; seed <= 60; ++seed) {
    SCOPED_TRACE(testing::Message() << "seed " << seed);
    Dice dice(seed);
    std::vector<Footprint> prints;
    for (int i = 0; i < 8; ++i) prints.push_back({dice.upTo(10, 24), dice.upTo(10, 24), 1});
    const auto shared = makeShelfSearch(46, 37, prints);
    for (std::uint32_t some = 1; some < 1U << prints.size(); ++some) {
      if (std::popcount(some) < 4 || std::popcount(some) > 6) continue;
      std::vector<Footprint> chosen;
      for (std::size_t i = 0; i < prints.size(); ++i)
        if ((some >> i & 1U) != 0) chosen.push_back(prints[i]);
      long steps = kEnoughSteps;
      const auto spots = shared->search(some, steps);
      if (spots) expectApart(46, 37, prints, *spots);
      EXPECT_EQ(spots.has_value(), foundAlone(46, 37, chosen)) << some;
      yes += spots ? 1 : 0;
      ++asked;
    }
  }
  EXPECT_GT(yes, asked / 10);
  EXPECT_LT(yes, asked * 9 / 10);
}

TEST(ShelfSearchTest, PansAlikeNeedNoMoreStepsThanTheyMust) {
  // Seven of eight places: no room for the eighth, whichever of them that is.
  long steps = kEnoughSteps;
  EXPECT_FALSE(makeShelfSearch(400, 200, {{100, 100, 7}, {101, 100, 1}})->search(0xFF, steps).has_value());
  EXPECT_GT(steps, kEnoughSteps - 2'000);
}

TEST(ShelfSearchTest, SaysWhenItsStepsRanOut) {
  long steps = 3;
  EXPECT_FALSE(makeShelfSearch(300, 300, {{200, 100, 4}, {100, 100, 1}})->search(0x1F, steps).has_value());
  EXPECT_EQ(steps, 0);
}

TEST(ShelfSearchTest, WideShelvesAreSearchedToo) {
  long steps = kEnoughSteps;
  const std::vector<Footprint> wheel = {{1200, 600, 4}, {600, 600, 1}};
  const auto spots = makeShelfSearch(1800, 1800, wheel)->search(0x1F, steps);
  ASSERT_TRUE(spots.has_value());
  EXPECT_EQ(spots->size(), 5u);
  expectApart(1800, 1800, wheel, *spots);
}

TEST(ShelfSearchTest, DeclinesWhatIsBeyondIt) {
  EXPECT_EQ(makeShelfSearch(300, 300, {{10, 10, kMostSearched + 1}}), nullptr);
  EXPECT_EQ(makeShelfSearch(kWidestShelf + 1, 300, {{10, 10, 1}}), nullptr);
}

}  // namespace
}  // namespace suppertide::kitchen
