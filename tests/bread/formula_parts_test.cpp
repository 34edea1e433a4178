#include "server/bread/formula_parts.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <random>

namespace suppertide::bread {
namespace {

using ::testing::HasSubstr;

std::vector<Ingredient> overall() {
  Ingredient rye = usual("wholemeal rye", Role::kFlour, 20);
  rye.wholeGrainShare = 1;
  return {usual("strong flour", Role::kFlour, 80), rye,
          usual("water", Role::kLiquid, 70),       usual("salt", Role::kSalt, 2),
          usual("fresh yeast", Role::kYeast, 0.6), usual("linseed", Role::kOther, 8)};
}

PrefermentPart poolish() {
  return {"poolish", 30, 1.0, 0, 0.2, 0};
}

SoakerPart linseedSoaker() {
  return {"linseed soaker", {{"linseed", 0}, {"wholemeal rye", 5}}, 12, 0.3};
}

double percentOf(const Formula& mix, const std::string& name) {
  for (const Ingredient& line : mix.ingredients())
    if (line.name == name) return line.percent;
  return -1;
}

TEST(FormulaPartsTest, APoolishTakesFlourWaterAndYeastOutOfTheLines) {
  const auto split = splitFormula(overall(), {{}, {poolish()}, {}});
  ASSERT_TRUE(split.ok()) << split.status();
  EXPECT_NEAR(percentOf(split->mix, "strong flour"), 50, 1e-9);
  EXPECT_NEAR(percentOf(split->mix, "water"), 40, 1e-9);
  EXPECT_NEAR(percentOf(split->mix, "fresh yeast"), 0.54, 1e-9);
  EXPECT_NEAR(percentOf(split->mix, "poolish"), 60.06, 1e-9);
  ASSERT_EQ(split->parts.size(), 1u);
  EXPECT_EQ(split->parts[0].lines.size(), 3u);
  EXPECT_NEAR(split->mix.prefermentedFlourShare(), 0.3, 1e-12);
  EXPECT_NEAR(split->mix.levainFlourShare(), 0, 1e-12);
  EXPECT_NEAR(split->mix.compressedYeastPercent(), 0.6, 1e-9);
  EXPECT_NEAR(split->mix.addedYeastPercent(), 0.54, 1e-9);
}

TEST(FormulaPartsTest, LevainPoolishAndOldDoughGoTogether) {
  const PrefermentPart old = {"old dough", 15, 0.65, 0, 0.6, 2};
  const auto split =
      splitFormula(overall(), {LevainPart{0.1, 1.25, 0.5}, {poolish(), old}, {linseedSoaker()}});
  ASSERT_TRUE(split.ok()) << split.status();
  EXPECT_NEAR(split->mix.prefermentedFlourShare(), 0.3 + 0.15 + 0.1 * 1.806 / 2.25, 1e-9);
  EXPECT_NEAR(split->mix.prefermentShare(), (60.06 + 15 * 1.676) / 180.6, 1e-3);
}

TEST(FormulaPartsTest, ASoakersWaterCountsInTheHydration) {
  const auto split = splitFormula(overall(), {{}, {}, {linseedSoaker()}});
  ASSERT_TRUE(split.ok()) << split.status();
  EXPECT_NEAR(split->mix.hydration(), 0.70, 1e-12);
  EXPECT_NEAR(split->mix.soakedWaterPercent(), 12, 1e-9);
  EXPECT_NEAR(percentOf(split->mix, "linseed"), 0, 1e-12);
  EXPECT_NEAR(percentOf(split->mix, "linseed soaker"), 8 + 5 + 12 + 0.3, 1e-9);
  EXPECT_NEAR(split->mix.wholeGrainShare(), 0.2, 1e-12);
  EXPECT_NEAR(split->mix.prefermentedFlourShare(), 0, 1e-12);
}

TEST(FormulaPartsTest, SaysWhichLineIsTooLittleForWhichPart) {
  PrefermentPart wet = poolish();
  wet.hydration = 3;
  EXPECT_THAT(std::string(splitFormula(overall(), {{}, {wet}, {}}).status().message()),
              HasSubstr("water: 70.00 % is less than the 90.00 % that the poolish needs"));
  PrefermentPart lively = poolish();
  lively.yeastPercent = 2.5;
  EXPECT_THAT(std::string(splitFormula(overall(), {{}, {lively}, {}}).status().message()),
              HasSubstr("fresh yeast: 0.60 % is less than the 0.75 %"));
  SoakerPart lost = linseedSoaker();
  lost.soaked[0].line = "poppy";
  lost.soaked[0].percent = 3;
  EXPECT_THAT(std::string(splitFormula(overall(), {{}, {}, {lost}}).status().message()),
              HasSubstr("poppy: 0.00 % is less than the 3.00 % that the linseed soaker needs"));
}

// Whatever is taken ahead, the whole dough holds what the overall formula says.
TEST(FormulaPartsTest, PartsChangeNoSum) {
  const Formula whole = *Formula::fromPercents(overall());
  for (std::uint64_t seed = 1; seed <= 500; ++seed) {
    SCOPED_TRACE(seed);
    std::mt19937_64 random(seed);
    const auto share = [&](double most) { return std::uniform_real_distribution<double>(0, most)(random); };
    FormulaParts parts;
    if (share(1) < 0.5) parts.levain = LevainPart{share(0.15), 0.5 + share(1), share(1)};
    for (int k = 0; k < 2; ++k)
      if (share(1) < 0.6)
        parts.preferments.push_back({"preferment", share(20), 0.5 + share(0.5), 0, share(1.2), share(2)});
    if (share(1) < 0.6) parts.soakers.push_back({"soaker", {{"linseed", 0}}, share(12), share(0.4)});
    const auto split = splitFormula(overall(), parts);
    if (!split.ok()) continue;  // too little of a line, said by name
    EXPECT_NEAR(split->mix.totalPercent(), whole.totalPercent(), 1e-9);
    EXPECT_NEAR(split->mix.hydration(), whole.hydration(), 1e-9);
    EXPECT_NEAR(split->mix.wholeGrainShare(), whole.wholeGrainShare(), 1e-9);
    EXPECT_NEAR(split->mix.saltPercent(), whole.saltPercent(), 1e-9);
    EXPECT_NEAR(split->mix.compressedYeastPercent(), whole.compressedYeastPercent(), 1e-9);
  }
}

}  // namespace
}  // namespace suppertide::bread
