#include "server/kitchen/straight_cuts.h"

#include <gtest/gtest.h>

#include <random>

#include "tests/kitchen/apart.h"
#include "tests/kitchen/dice.h"

namespace suppertide::kitchen {
namespace {

void expectAllApart(int width, int depth, const std::vector<Footprint>& prints,
                    const std::vector<Spot>& spots) {
  expectApart(width, depth, prints, spots);
  std::vector<int> counts(prints.size(), 0);
  for (const Spot& spot : spots) ++counts[static_cast<std::size_t>(spot.kind)];
  for (std::size_t k = 0; k < prints.size(); ++k) EXPECT_EQ(counts[k], prints[k].count);
}

// A shelf cut by straight cuts from edge to edge into `count` parts.
std::vector<Footprint> cutShelf(std::mt19937& random, int count) {
  std::vector<Footprint> parts = {{460, 370, 1}};
  while (static_cast<int>(parts.size()) < count) {
    auto largest = std::max_element(parts.begin(), parts.end(), [](const Footprint& a, const Footprint& b) {
      return a.width * a.depth < b.width * b.depth;
    });
    Footprint other = *largest;
    const bool across = largest->width >= largest->depth;
    int& side = across ? largest->width : largest->depth;
    const int cut = side * std::uniform_int_distribution<int>(30, 70)(random) / 100;
    (across ? other.width : other.depth) = side - cut;
    side = cut;
    parts.push_back(other);
  }
  return parts;
}

TEST(StraightCutsTest, PutsEveryCutUpShelfTogetherAgain) {
  for (unsigned seed = 1; seed <= 60; ++seed) {
    SCOPED_TRACE(seed);
    std::mt19937 random(seed);
    const std::vector<Footprint> parts = cutShelf(random, 5 + static_cast<int>(seed % 8));
    long joins = kMostJoins;
    const auto spots = packByStraightCuts(460, 370, parts, joins);
    ASSERT_TRUE(spots.has_value());
    expectAllApart(460, 370, parts, *spots);
    EXPECT_GE(joins, 0);
  }
}

TEST(StraightCutsTest, AlikePansOnADeepShelfLieApart) {
  const std::vector<Footprint> prints = {{150, 115, 8}, {300, 90, 1}};
  long joins = kMostJoins;
  const auto spots = packByStraightCuts(300, 560, prints, joins);
  ASSERT_TRUE(spots.has_value());
  expectAllApart(300, 560, prints, *spots);
}

TEST(StraightCutsTest, FindsNothingWhereNothingFitsOrThereIsNoBudget) {
  long joins = kMostJoins;
  EXPECT_FALSE(packByStraightCuts(300, 300, {{200, 200, 2}}, joins).has_value());
  EXPECT_FALSE(packByStraightCuts(300, 300, {{301, 10, 1}}, joins).has_value());
  joins = 0;
  EXPECT_FALSE(packByStraightCuts(300, 300, {{150, 150, 4}}, joins).has_value());
}

// A slow twin: every straight cut, at every millimetre, with every share of the rectangles on either side.
bool slowCuts(int width, int depth, const std::vector<Footprint>& prints) {
  if (prints.size() == 1) {
    const Footprint& one = prints.front();
    return (one.width <= width && one.depth <= depth) || (one.depth <= width && one.width <= depth);
  }
  for (unsigned mask = 1; mask + 1 < (1U << prints.size()); ++mask) {
    std::vector<Footprint> some;
    std::vector<Footprint> others;
    for (std::size_t i = 0; i < prints.size(); ++i)
      ((mask >> i & 1U) != 0 ? some : others).push_back(prints[i]);
    for (int cut = 1; cut < width; ++cut)
      if (slowCuts(cut, depth, some) && slowCuts(width - cut, depth, others)) return true;
    for (int cut = 1; cut < depth; ++cut)
      if (slowCuts(width, cut, some) && slowCuts(width, depth - cut, others)) return true;
  }
  return false;
}

TEST(StraightCutsTest, AgreesWithTheSlowTwinOnSmallShelves) {
  int yes = 0;
  for (unsigned seed = 1; seed <= 300; ++seed) {
    SCOPED_TRACE(seed);
    const auto [width, depth, prints] = smallShelf(seed, 5, 5);
    if (prints.empty()) continue;
    long joins = kMostJoins;
    const bool expected = slowCuts(width, depth, prints);
    yes += expected ? 1 : 0;
    EXPECT_EQ(packByStraightCuts(width, depth, prints, joins).has_value(), expected);
    EXPECT_GT(joins, 0);
  }
  EXPECT_GT(yes, 60);
  EXPECT_LT(yes, 280);
}

}  // namespace
}  // namespace suppertide::kitchen
