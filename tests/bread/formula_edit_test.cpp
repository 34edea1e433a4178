#include "server/bread/formula_edit.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <limits>
#include <numeric>
#include <random>

namespace suppertide::bread {
namespace {

using ::testing::HasSubstr;

Making loaf() {
  return {{usual("strong flour", Role::kFlour, 80), usual("rye", Role::kFlour, 20),
           usual("water", Role::kLiquid, 70), usual("salt", Role::kSalt, 2)},
          1720};
}

TEST(FormulaEditTest, KnowsTheGramsOfEveryLine) {
  EXPECT_THAT(gramsOf(loaf()), testing::Pointwise(testing::DoubleNear(1e-9), {800., 200., 700., 20.}));
}

TEST(FormulaEditTest, APercentageKeepsTheFloursMass) {
  const auto wetter = withPercent(loaf(), "water", 75);
  ASSERT_TRUE(wetter.ok()) << wetter.status();
  EXPECT_NEAR(wetter->doughGrams, 1770, 1e-9);
  EXPECT_NEAR(flourGrams(*wetter), 1000, 1e-9);
}

TEST(FormulaEditTest, AFloursPercentageMakesTheOthersGiveWay) {
  const auto more = withPercent(loaf(), "rye", 30);
  ASSERT_TRUE(more.ok()) << more.status();
  EXPECT_NEAR(more->lines[0].percent, 70, 1e-12);
  EXPECT_NEAR(more->doughGrams, 1720, 1e-9);
}

TEST(FormulaEditTest, GramsKeepAllOtherGrams) {
  const auto more = withGrams(loaf(), "strong flour", 900);
  ASSERT_TRUE(more.ok()) << more.status();
  EXPECT_THAT(gramsOf(*more), testing::Pointwise(testing::DoubleNear(1e-9), {900., 200., 700., 20.}));
  EXPECT_NEAR(more->lines[2].percent, 700. / 1100 * 100, 1e-9);
}

TEST(FormulaEditTest, LinesComeAndGo) {
  const auto seeded = withLine(loaf(), usual("seeds", Role::kOther, 10));
  ASSERT_TRUE(seeded.ok()) << seeded.status();
  EXPECT_NEAR(seeded->doughGrams, 1820, 1e-9);
  const auto plain = without(*seeded, "rye");
  ASSERT_TRUE(plain.ok()) << plain.status();
  EXPECT_NEAR(plain->lines[0].percent, 100, 1e-9);
  EXPECT_EQ(plain->lines.size(), 4u);
}

TEST(FormulaEditTest, RefusesWhatMakesNoFormulaAndNamesTheLine) {
  const auto text = [](const absl::StatusOr<Making>& changed) {
    return std::string(changed.status().message());
  };
  EXPECT_THAT(text(withPercent(loaf(), "spelt", 5)), HasSubstr("spelt: there is no such line"));
  EXPECT_THAT(text(withPercent(loaf(), "rye", 120)), HasSubstr("rye: 120 % is more than all flour"));
  EXPECT_THAT(text(withPercent(loaf(), "water", -5)), HasSubstr("water: amount -5 is not 0 or more"));
  EXPECT_THAT(text(withGrams(loaf(), "salt", std::numeric_limits<double>::infinity())), HasSubstr("salt"));
  Making one = loaf();
  one.lines.erase(one.lines.begin());
  one.lines[0].percent = 100;
  EXPECT_THAT(text(withPercent(one, "rye", 50)), HasSubstr("the only flour"));
  EXPECT_THAT(text(withGrams(one, "rye", 0)), HasSubstr("no flour would be left"));
  EXPECT_THAT(text(withLine(loaf(), usual("rye", Role::kFlour, 5))), HasSubstr("already"));
}

Making randomMaking(std::mt19937_64& random) {
  std::uniform_real_distribution<double> share(0, 1);
  Making making;
  const int flours = 1 + static_cast<int>(3 * share(random));
  double left = 100;
  for (int k = 0; k < flours; ++k) {
    const double percent = k + 1 == flours ? left : left * share(random);
    making.lines.push_back(usual("flour " + std::to_string(k), Role::kFlour, percent));
    left -= percent;
  }
  for (const Role role : {Role::kLiquid, Role::kFat, Role::kSugar, Role::kSalt, Role::kEgg, Role::kOther})
    if (share(random) < 0.7)
      making.lines.push_back(usual("line " + std::to_string(making.lines.size()), role, 80 * share(random)));
  making.doughGrams = 100 + 5000 * share(random);
  return making;
}

double floursOf(const Making& making) {
  double sum = 0;
  for (const Ingredient& line : making.lines)
    if (line.role == Role::kFlour) sum += line.percent;
  return sum;
}

// Typing back what is shown changes no bit, in grams and in percentages.
TEST(FormulaEditPropertyTest, WhatIsShownTypedBackChangesNothing) {
  for (std::uint64_t seed = 1; seed <= 500; ++seed) {
    SCOPED_TRACE(seed);
    std::mt19937_64 random(seed);
    const Making making = randomMaking(random);
    Making same = making;
    for (std::size_t i = 0; i < making.lines.size(); ++i) {
      same = *withGrams(same, making.lines[i].name, shownGrams(gramsOf(same)[i]));
      same = *withPercent(same, making.lines[i].name, shownPercent(same.lines[i].percent));
    }
    EXPECT_EQ(same.doughGrams, making.doughGrams);
    for (std::size_t i = 0; i < making.lines.size(); ++i)
      EXPECT_EQ(same.lines[i].percent, making.lines[i].percent);
  }
}

// Any chain of edits leaves a formula; an edit and its contrary in the same unit is no change.
TEST(FormulaEditPropertyTest, EditsUndoThemselvesAndKeepTheFlourAt100) {
  for (std::uint64_t seed = 1; seed <= 500; ++seed) {
    SCOPED_TRACE(seed);
    std::mt19937_64 random(seed);
    std::uniform_real_distribution<double> share(0, 1);
    Making making = randomMaking(random);
    for (int round = 0; round < 6; ++round) {
      const std::size_t at =
          std::min(making.lines.size() - 1,
                   static_cast<std::size_t>(share(random) * static_cast<double>(making.lines.size())));
      const std::string name = making.lines[at].name;
      const bool inGrams = share(random) < 0.5;
      const double before = inGrams ? gramsOf(making)[at] : making.lines[at].percent;
      const auto changed = inGrams ? withGrams(making, name, before * (0.5 + share(random)) + 0.37)
                                   : withPercent(making, name, before * (0.2 + 0.7 * share(random)) + 0.0137);
      if (!changed.ok()) continue;
      EXPECT_NEAR(floursOf(*changed), 100, 1e-9);
      const auto back = inGrams ? withGrams(*changed, name, before) : withPercent(*changed, name, before);
      ASSERT_TRUE(back.ok()) << back.status();
      // Where the old value is shown as the new one is, there was no change to undo.
      const bool tooNear = inGrams ? shownGrams(gramsOf(*changed)[at]) == before
                                   : shownPercent(changed->lines[at].percent) == before;
      if (!tooNear) {
        EXPECT_NEAR(back->doughGrams, making.doughGrams, 1e-9 * making.doughGrams);
        for (std::size_t i = 0; i < making.lines.size(); ++i)
          EXPECT_NEAR(back->lines[i].percent, making.lines[i].percent, 1e-9 * (1 + making.lines[i].percent));
      }
      making = *changed;
    }
  }
}

}  // namespace
}  // namespace suppertide::bread
