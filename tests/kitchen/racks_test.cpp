#include "server/kitchen/racks.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <random>

#include "server/kitchen/shelf_search.h"

namespace suppertide::kitchen {
namespace {

constexpr long kPlentySteps = 1'000'000;

Oven oven(std::vector<int> heights, int width, int depth, int shelves = 0) {
  Oven result;
  result.clearHeightsMm = std::move(heights);
  result.shelfWidthMm = width;
  result.shelfDepthMm = depth;
  result.shelfCount = shelves;
  return result;
}

Pan pan(int width, int depth, int height, int count = 1) {
  return {width, depth, height, count};
}

bool overlap(const PanPlace& a, const Pan& ofA, const PanPlace& b, const Pan& ofB) {
  const auto wide = [](const PanPlace& p, const Pan& of) { return p.turned ? of.depthMm : of.widthMm; };
  const auto deep = [](const PanPlace& p, const Pan& of) { return p.turned ? of.widthMm : of.depthMm; };
  return a.xMm < b.xMm + wide(b, ofB) && b.xMm < a.xMm + wide(a, ofA) && a.yMm < b.yMm + deep(b, ofB) &&
         b.yMm < a.yMm + deep(a, ofA);
}

// Checks the answer against the rules, knowing nothing of how it was found.
void expectSound(const Oven& in, const std::vector<Pan>& pans, const RackPlan& plan) {
  std::size_t wanted = 0;
  for (const Pan& p : pans) wanted += static_cast<std::size_t>(p.count);
  ASSERT_EQ(plan.places.size(), wanted);
  std::vector<int> placed(pans.size(), 0);
  std::vector<int> tallest(in.clearHeightsMm.size(), 0);
  for (const PanPlace& a : plan.places) {
    const Pan& of = pans[static_cast<std::size_t>(a.pan)];
    ++placed[static_cast<std::size_t>(a.pan)];
    EXPECT_GE(a.xMm, 0);
    EXPECT_GE(a.yMm, 0);
    EXPECT_LE(a.xMm + (a.turned ? of.depthMm : of.widthMm), in.shelfWidthMm);
    EXPECT_LE(a.yMm + (a.turned ? of.widthMm : of.depthMm), in.shelfDepthMm);
    int& top = tallest[static_cast<std::size_t>(a.position)];
    top = std::max(top, of.heightMm);
    for (const PanPlace& b : plan.places) {
      if (&a == &b || a.position != b.position) continue;
      EXPECT_FALSE(overlap(a, of, b, pans[static_cast<std::size_t>(b.pan)]));
    }
  }
  for (std::size_t i = 0; i < pans.size(); ++i) EXPECT_EQ(placed[i], pans[i].count);
  int shelves = 0;
  for (std::size_t p = 0; p < tallest.size(); ++p) {
    if (tallest[p] == 0) continue;
    ++shelves;
    int clear = 0;
    for (std::size_t q = p; q < tallest.size() && (q == p || tallest[q] == 0); ++q)
      clear += in.clearHeightsMm[q];
    EXPECT_LE(tallest[p], clear) << "position " << p;
  }
  EXPECT_TRUE(in.shelfCount == 0 || shelves <= in.shelfCount) << shelves;
}

TEST(RacksTest, NothingAlwaysFits) {
  EXPECT_TRUE(packRacks(oven({80}, 400, 350), {}).fits());
}

TEST(RacksTest, APanMayBeTurned) {
  const Oven narrow = oven({100}, 300, 500);
  const RackPlan plan = packRacks(narrow, {pan(480, 290, 50)});
  ASSERT_TRUE(plan.fits());
  EXPECT_TRUE(plan.places[0].turned);
}

TEST(RacksTest, ATallRoastTakesSeveralPositions) {
  const Oven four = oven({80, 80, 80, 80}, 450, 370);
  EXPECT_TRUE(fitsRacks(four, {pan(400, 300, 230), pan(400, 300, 60)}));
  EXPECT_FALSE(fitsRacks(four, {pan(400, 300, 230), pan(400, 300, 60, 2)}));
}

TEST(RacksTest, ATallPanFindsTheTallPosition) {
  const Oven uneven = oven({60, 60, 140}, 400, 400);
  EXPECT_TRUE(fitsRacks(uneven, {pan(350, 350, 50, 2), pan(350, 350, 140)}));
}

TEST(RacksTest, ShelvesThatAreMissingHoldNothing) {
  EXPECT_FALSE(fitsRacks(oven({80, 80, 80, 80}, 450, 370, 2), {pan(400, 300, 60, 3)}));
  EXPECT_TRUE(fitsRacks(oven({80, 80, 80, 80}, 450, 370, 3), {pan(400, 300, 60, 3)}));
}

TEST(RacksTest, SaysWhichPanDoesNotFitWithThoseBeforeIt) {
  const Oven one = oven({120}, 450, 370);
  const RackPlan room = packRacks(one, {pan(220, 300, 60), pan(220, 300, 60), pan(100, 100, 50)});
  EXPECT_EQ(room.misfit, Misfit::kNoRoom);
  EXPECT_EQ(room.misfitPan, 2);
  EXPECT_EQ(packRacks(one, {pan(200, 200, 60), pan(460, 300, 60)}).misfit, Misfit::kTooWide);
  EXPECT_EQ(packRacks(one, {pan(200, 200, 60), pan(400, 300, 150)}).misfit, Misfit::kTooTall);
  EXPECT_EQ(packRacks(one, {pan(200, 200, 60), pan(400, 300, 150)}).misfitPan, 1);
  const RackPlan many = packRacks(oven({80, 80}, 450, 370), {pan(80, 80, 40, 10), pan(80, 80, 40, 3)});
  EXPECT_EQ(many.misfit, Misfit::kTooManyPans);
  EXPECT_EQ(many.misfitPan, 1);
}

TEST(RacksTest, AWheelOfFourAroundOneFitsThoughNoStraightCutDividesIt) {
  const Oven tight = oven({100}, 300, 300);
  const std::vector<Pan> wheel = {pan(200, 100, 50, 4), pan(100, 100, 50)};
  const RackPlan plan = packRacks(tight, wheel);
  ASSERT_TRUE(plan.fits());
  expectSound(tight, wheel, plan);
  EXPECT_FALSE(fitsRacks(tight, {pan(200, 100, 50, 4), pan(101, 100, 50)}));
}

std::vector<Pan> randomPans(std::mt19937& random, int most) {
  const auto upTo = [&](int low, int high) { return std::uniform_int_distribution<int>(low, high)(random); };
  std::vector<Pan> pans;
  const int count = upTo(2, most);
  for (int i = 0; i < count; ++i) pans.push_back(pan(upTo(90, 400), upTo(90, 330), upTo(30, 180)));
  return pans;
}

TEST(RacksPropertyTest, AnswersAreSoundAndPartsOfWhatFitsFit) {
  int fitting = 0;
  for (unsigned seed = 1; seed <= 300; ++seed) {
    SCOPED_TRACE(testing::Message() << "seed " << seed);
    std::mt19937 random(seed);
    const Oven five = oven({70, 70, 70, 70, 90}, 450, 370, seed % 3 == 0 ? 3 : 0);
    const std::vector<Pan> pans = randomPans(random, 7);
    const RackPlan plan = packRacks(five, pans);
    EXPECT_EQ(plan.fits(), fitsRacks(five, pans));
    if (!plan.fits()) continue;
    ++fitting;
    expectSound(five, pans, plan);
    for (unsigned mask = 0; mask < (1u << pans.size()); ++mask) {
      std::vector<Pan> part;
      for (std::size_t i = 0; i < pans.size(); ++i) {
        if (mask >> i & 1u) part.push_back(pans[i]);
      }
      EXPECT_TRUE(fitsRacks(five, part)) << "part " << mask;
    }
  }
  EXPECT_GT(fitting, 50);
}

// Every way to put each pan onto one of the shelves, for positions that all pans fit under.
bool fitsSomehow(const Oven& in, const std::vector<Pan>& pans, std::vector<std::vector<Footprint>>& shelves,
                 std::size_t next) {
  if (next == pans.size()) {
    return std::all_of(shelves.begin(), shelves.end(), [&](const std::vector<Footprint>& shelf) {
      long steps = kPlentySteps;
      return shelf.empty() || makeShelfSearch(in.shelfWidthMm, in.shelfDepthMm, shelf)
                                  ->search((1U << shelf.size()) - 1, steps)
                                  .has_value();
    });
  }
  for (std::vector<Footprint>& shelf : shelves) {
    shelf.push_back({pans[next].widthMm, pans[next].depthMm, 1});
    if (fitsSomehow(in, pans, shelves, next + 1)) return true;
    shelf.pop_back();
  }
  return false;
}

TEST(RacksPropertyTest, AgreesWithAllWaysToShareTwoShelves) {
  int fitting = 0;
  for (unsigned seed = 1; seed <= 200; ++seed) {
    SCOPED_TRACE(testing::Message() << "seed " << seed);
    std::mt19937 random(seed);
    const auto upTo = [&](int low, int high) {
      return std::uniform_int_distribution<int>(low, high)(random);
    };
    std::vector<Pan> pans;
    const int count = upTo(4, 7);
    for (int i = 0; i < count; ++i) pans.push_back(pan(upTo(120, 300), upTo(120, 300), 50));
    const Oven two = oven({100, 100}, 450, 370);
    std::vector<std::vector<Footprint>> shelves(2);
    const bool expected = fitsSomehow(two, pans, shelves, 0);
    fitting += expected ? 1 : 0;
    EXPECT_EQ(fitsRacks(two, pans), expected);
  }
  EXPECT_GT(fitting, 40);
  EXPECT_LT(fitting, 190);
}

TEST(RacksPropertyTest, ADozenCutFromOneShelfGoBackOntoIt) {
  // Straight cuts through a shelf: with room to spare they are always found again.
  for (unsigned seed = 1; seed <= 40; ++seed) {
    SCOPED_TRACE(testing::Message() << "seed " << seed);
    std::mt19937 random(seed);
    const auto upTo = [&](int low, int high) {
      return std::uniform_int_distribution<int>(low, high)(random);
    };
    std::vector<Pan> pans;
    for (int row = 0, y = 0; row < 3; ++row) {
      const int deep = row < 2 ? upTo(100, 130) : 370 - y;
      for (int column = 0, x = 0; column < 4; ++column) {
        const int wide = column < 3 ? upTo(90, 120) : 460 - x;
        pans.push_back(pan(wide - 8, deep - 8, 50));
        x += wide;
      }
      y += deep;
    }
    const Oven one = oven({100}, 460, 370);
    const RackPlan plan = packRacks(one, pans);
    ASSERT_TRUE(plan.fits());
    expectSound(one, pans, plan);
  }
}

// Straight cuts through one shelf, each part a little smaller than its place.
std::vector<Pan> cutShelf(std::mt19937& random, int count, int slack) {
  const auto upTo = [&](int low, int high) { return std::uniform_int_distribution<int>(low, high)(random); };
  std::vector<Pan> parts = {pan(460, 370, 50)};
  while (static_cast<int>(parts.size()) < count) {
    const auto largest = std::max_element(parts.begin(), parts.end(), [](const Pan& a, const Pan& b) {
      return a.widthMm * a.depthMm < b.widthMm * b.depthMm;
    });
    Pan other = *largest;
    const bool across = largest->widthMm >= largest->depthMm;
    int& side = across ? largest->widthMm : largest->depthMm;
    const int cut = upTo(side * 3 / 10, side * 7 / 10);
    (across ? other.widthMm : other.depthMm) = side - cut;
    side = cut;
    parts.push_back(other);
  }
  for (Pan& part : parts) {
    part.widthMm -= upTo(0, slack);
    part.depthMm -= upTo(0, slack);
  }
  return parts;
}

TEST(RacksPropertyTest, ADozenThatFillsItsShelvesAlmostWhollyIsFoundARoom) {
  for (unsigned seed = 1; seed <= 60; ++seed) {
    SCOPED_TRACE(testing::Message() << "seed " << seed);
    std::mt19937 random(seed);
    const Oven one = oven({100}, 460, 370);
    const std::vector<Pan> dozen = cutShelf(random, 12, 5);
    const RackPlan plan = packRacks(one, dozen);
    ASSERT_TRUE(plan.fits());
    expectSound(one, dozen, plan);
    const Oven two = oven({100, 100}, 460, 370);
    std::vector<Pan> both = cutShelf(random, 7, 6);
    for (const Pan& part : cutShelf(random, 5, 6)) both.push_back(part);
    std::shuffle(both.begin(), both.end(), random);
    const RackPlan shared = packRacks(two, both);
    ASSERT_TRUE(shared.fits());
    expectSound(two, both, shared);
  }
}

// Pans as they are sold, outer sizes: rectangular, square, round and loaf pans, sheets, and of EN 631-1 GN
// 2/3, 1/2, 1/3, 1/4 and 1/6.
const std::vector<Pan> kPansOfTheTrade = {
    pan(330, 230, 50),  pan(200, 200, 50), pan(230, 230, 50), pan(250, 250, 50), pan(230, 230, 80),
    pan(250, 250, 100), pan(220, 110, 60), pan(230, 130, 80), pan(230, 230, 30), pan(230, 230, 40),
    pan(390, 270, 25),  pan(330, 240, 25), pan(460, 330, 25), pan(354, 325, 40), pan(325, 265, 65),
    pan(325, 176, 65),  pan(325, 176, 40), pan(265, 162, 65), pan(176, 162, 65)};

TEST(RacksPropertyTest, LoadsOfPansOfTheTradeAreAnsweredExactly) {
  const Oven ovens[] = {oven({100, 95, 95, 95}, 460, 370), oven({70, 70, 70, 70, 70}, 460, 370),
                        oven({70, 70, 70, 70, 70}, 460, 370, 2), oven({80, 80, 80, 80, 80}, 610, 430, 2),
                        oven({110, 105}, 390, 320)};
  int fitting = 0;
  int asked = 0;
  for (const Oven& in : ovens)
    for (unsigned seed = 1; seed <= 60; ++seed) {
      SCOPED_TRACE(testing::Message() << "seed " << seed);
      std::mt19937 random(seed);
      const auto upTo = [&](int low, int high) {
        return std::uniform_int_distribution<int>(low, high)(random);
      };
      const std::size_t count = static_cast<std::size_t>(upTo(2, kMostPans));
      std::vector<Pan> load;
      while (load.size() < count) {
        const int most = static_cast<int>(kPansOfTheTrade.size()) - 1;
        const Pan& next = kPansOfTheTrade[static_cast<std::size_t>(upTo(0, most))];
        if (fitsRacks(in, {next})) load.push_back(next);
      }
      const RackPlan plan = packRacks(in, load);
      EXPECT_TRUE(plan.proven);
      ++asked;
      if (!plan.fits()) continue;
      ++fitting;
      expectSound(in, load, plan);
    }
  EXPECT_GT(fitting, asked / 5);
  EXPECT_LT(fitting, asked * 4 / 5);
}

TEST(RacksTest, PansOfOtherHeightsAreAlikeWhereBothStandAnywhere) {
  // Four lie on a shelf: five shelves are enough for eleven, two are not, whichever of them lie there.
  const Oven five = oven({80, 80, 80, 80, 80}, 460, 370);
  std::vector<Pan> tins;
  for (int i = 0; i < 11; ++i) tins.push_back(pan(230, 180 + i % 2, 30 + 4 * i));
  EXPECT_EQ(packRacks(five, tins).misfit, Misfit::kNone);
  const Oven two = oven({80, 80}, 460, 370);
  const RackPlan plan = packRacks(two, tins);
  EXPECT_EQ(plan.misfit, Misfit::kNoRoom);
  EXPECT_TRUE(plan.proven);
}

TEST(RacksTest, SaysWhenThereWasNoTimeForEveryPacking) {
  const Oven one = oven({100}, 460, 370);
  EXPECT_TRUE(packRacks(one, {pan(300, 370, 60), pan(300, 200, 60)}).proven);
  std::mt19937 random(129);
  std::vector<Pan> dozen = cutShelf(random, 12, 5);
  dozen.front().widthMm += 9;
  const RackPlan plan = packRacks(one, dozen);
  EXPECT_EQ(plan.misfit, Misfit::kNoRoom);
  EXPECT_FALSE(plan.proven);
}

TEST(RacksTest, SaysWhichPanWouldFitInstead) {
  const Oven one = oven({120}, 450, 370);
  const std::vector<Pan> pans = {pan(300, 370, 60), pan(300, 200, 60)};
  ASSERT_EQ(packRacks(one, pans).misfitPan, 1);
  const auto smaller = panThatWould(one, pans, 1);
  ASSERT_TRUE(smaller);
  // 150 mm are left beside the first: 200 x 300 shrinks to 150 x 225.
  EXPECT_EQ(smaller->widthMm, 225);
  EXPECT_EQ(smaller->depthMm, 150);
  EXPECT_TRUE(fitsRacks(one, {pans[0], *smaller}));
  EXPECT_FALSE(fitsRacks(one, {pans[0], pan(smaller->widthMm + 5, smaller->depthMm + 4, 60)}));
  EXPECT_FALSE(panThatWould(one, {pan(440, 360, 60), pan(400, 300, 60)}, 1));
  EXPECT_EQ(panThatWould(one, {pan(200, 200, 300)}, 0)->heightMm, 120);
}

TEST(RacksTest, SaysWhichDeeperPanHoldsAsMuchAndFits) {
  const Oven one = oven({120}, 450, 370);
  const std::vector<Pan> pans = {pan(330, 230, 70), pan(250, 300, 70)};
  ASSERT_EQ(packRacks(one, pans).misfitPan, 1);
  const auto deeper = deeperPanThatWould(one, pans, 1, 1.5);
  ASSERT_TRUE(deeper);
  // 220 mm are left beside the first: 250 x 300 shrinks to 220 x 265 and grows by 75000 / 58300.
  EXPECT_EQ(deeper->widthMm, 220);
  EXPECT_EQ(deeper->depthMm, 265);
  EXPECT_EQ(deeper->heightMm, 91);
  EXPECT_TRUE(fitsRacks(one, {pans[0], *deeper}));
  EXPECT_FALSE(deeperPanThatWould(one, pans, 1, 1.25));
  EXPECT_FALSE(deeperPanThatWould(oven({90}, 450, 370), pans, 1, 1.5));
}

}  // namespace
}  // namespace suppertide::kitchen
