#include "server/bread/formula_parts.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <limits>

namespace suppertide::bread {
namespace {

using ::testing::HasSubstr;

Ingredient levain(double percent, double hydration = 1.0, double wholeGrain = 0) {
  Ingredient ingredient = usual("levain", Role::kLevain, percent);
  ingredient.hydration = hydration;
  ingredient.wholeGrainShare = wholeGrain;
  return ingredient;
}

std::vector<Ingredient> rolls() {
  return {
      usual("flour", Role::kFlour, 81), usual("water", Role::kLiquid, 39), levain(38),
      usual("egg", Role::kEgg, 15),     usual("butter", Role::kFat, 15),   usual("sugar", Role::kSugar, 10),
      usual("salt", Role::kSalt, 2)};
}

std::string refusalOf(std::vector<Ingredient> ingredients) {
  const auto formula = Formula::fromPercents(std::move(ingredients));
  EXPECT_EQ(formula.status().code(), absl::StatusCode::kInvalidArgument);
  return std::string(formula.status().message());
}

TEST(FormulaTest, CountsTheLevainsFlourAndWater) {
  const Formula formula = *Formula::fromPercents(rolls());
  EXPECT_NEAR(formula.totalPercent(), 200, 1e-12);
  EXPECT_NEAR(formula.prefermentedFlourShare(), 0.19, 1e-12);
  EXPECT_NEAR(formula.levainShare(), 0.19, 1e-12);
  // 39 water, 19 in the levain, 15 * 0.75 in egg, 15 * 0.16 in butter.
  EXPECT_NEAR(formula.hydration(), 0.39 + 0.19 + 0.1125 + 0.024, 1e-12);
  EXPECT_NEAR(formula.fatPercent(), 15 * 0.84, 1e-12);
}

TEST(FormulaTest, CountsTheWaterInMilk) {
  Ingredient milk = usual("milk", Role::kLiquid, 60);
  milk.waterShare = kMilkWaterShare;
  const Formula formula = *Formula::fromPercents({usual("flour", Role::kFlour, 100), milk});
  EXPECT_NEAR(formula.hydration(), 0.522, 1e-12);
}

TEST(FormulaTest, CountsSaltInsideOtherIngredients) {
  Ingredient butter = usual("salted butter", Role::kFat, 20);
  butter.saltShare = 0.015;
  const Formula formula =
      *Formula::fromPercents({usual("flour", Role::kFlour, 100), butter, usual("salt", Role::kSalt, 1.8)});
  EXPECT_NEAR(formula.saltPercent(), 2.1, 1e-12);
}

TEST(FormulaTest, KnowsTheShareOfWholeGrainOverFlourAndLevain) {
  Ingredient whole = usual("whole wheat", Role::kFlour, 20);
  whole.wholeGrainShare = 1;
  const Formula formula =
      *Formula::fromPercents({usual("flour", Role::kFlour, 60), whole, levain(40, 1, 0.5)});
  EXPECT_NEAR(formula.wholeGrainShare(), 0.30, 1e-12);
}

TEST(FormulaTest, CountsDryYeastAsCompressed) {
  Ingredient instant = usual("instant yeast", Role::kYeast, 0.5);
  instant.yeastForm = YeastForm::kInstant;
  const Formula formula = *Formula::fromPercents({usual("flour", Role::kFlour, 100), instant});
  EXPECT_DOUBLE_EQ(formula.compressedYeastPercent(), 1.5);
}

TEST(FormulaTest, ScalesToDoughFlourAndPieces) {
  const Formula formula = *Formula::fromPercents(rolls());
  EXPECT_NEAR((*formula.gramsForDough(1000))[0].grams, 405, 1e-9);
  EXPECT_NEAR((*formula.gramsForFlour(500))[2].grams, 190, 1e-9);
  const auto pieces = *formula.gramsForPieces(12, 60, 0.1);
  double sum = 0;
  for (const Weighed& weighed : pieces) sum += weighed.grams;
  EXPECT_NEAR(sum, 800, 1e-9);
}

TEST(FormulaTest, SplitsALevainOutOfAnOverallFormula) {
  std::vector<Ingredient> overall = {usual("flour", Role::kFlour, 100), usual("liquid", Role::kLiquid, 58),
                                     usual("egg", Role::kEgg, 15),      usual("butter", Role::kFat, 15),
                                     usual("sugar", Role::kSugar, 10),  usual("salt", Role::kSalt, 2)};
  const auto formula = splitFormula(overall, {LevainPart{0.19, 1, 0}, {}, {}});
  ASSERT_TRUE(formula.ok()) << formula.status();
  const auto grams = *formula->mix.gramsForDough(1000);
  EXPECT_NEAR(grams[0].grams, 405, 1e-9);
  EXPECT_NEAR(grams[1].grams, 195, 1e-9);
  EXPECT_NEAR(grams.back().grams, 190, 1e-9);
}

TEST(FormulaTest, TakesALevainsWholeGrainFromTheWholeGrainFlour) {
  Ingredient whole = usual("whole wheat", Role::kFlour, 20);
  whole.wholeGrainShare = 1;
  const auto formula =
      splitFormula({usual("flour", Role::kFlour, 80), whole, usual("water", Role::kLiquid, 70)},
                   {LevainPart{0.2, 1, 0.5}, {}, {}});
  ASSERT_TRUE(formula.ok()) << formula.status();
  EXPECT_NEAR(formula->mix.wholeGrainShare(), 0.20, 1e-12);
  EXPECT_NEAR(formula->mix.ingredients()[1].percent, 20 - 8.5, 1e-12);
}

TEST(FormulaTest, RefusesALevainThatNeedsMoreWaterThanThereIs) {
  const auto formula = splitFormula({usual("flour", Role::kFlour, 100), usual("water", Role::kLiquid, 10)},
                                    {LevainPart{0.3, 1, 0}, {}, {}});
  EXPECT_THAT(std::string(formula.status().message()), HasSubstr("water: 10.00 % is less than the 16.50 %"));
}

TEST(FormulaTest, RefusesFloursThatDoNotAddUpAndSaysByHowMuch) {
  auto ingredients = rolls();
  ingredients[0].percent = 77;
  EXPECT_THAT(refusalOf(ingredients), HasSubstr("4.00 % too little"));
  ingredients[0].percent = 85;
  EXPECT_THAT(refusalOf(ingredients), HasSubstr("4.00 % too much"));
}

TEST(FormulaTest, RefusesANegativeAmountByName) {
  auto ingredients = rolls();
  ingredients[6].percent = -2;
  EXPECT_THAT(refusalOf(ingredients), HasSubstr("salt: amount -2"));
  ingredients[6].percent = std::numeric_limits<double>::quiet_NaN();
  EXPECT_THAT(refusalOf(ingredients), HasSubstr("salt: amount nan"));
}

TEST(FormulaTest, RefusesSharesThatCannotBe) {
  auto ingredients = rolls();
  ingredients[1].waterShare = 1.2;
  EXPECT_THAT(refusalOf(ingredients), HasSubstr("water: water share 1.2"));
  ingredients = rolls();
  ingredients[4].saltShare = 0.9;
  EXPECT_THAT(refusalOf(ingredients), HasSubstr("butter: water, salt and sugar are 1.06"));
}

TEST(FormulaTest, RefusesALevainWithoutWaterAndAFormulaWithoutFlour) {
  EXPECT_THAT(refusalOf({usual("flour", Role::kFlour, 81), levain(38, 0)}),
              HasSubstr("levain: hydration 0 is not above 0"));
  EXPECT_THAT(refusalOf({usual("water", Role::kLiquid, 60)}), HasSubstr("there is no flour"));
}

TEST(FormulaTest, RefusesToScaleToNothing) {
  const Formula formula = *Formula::fromPercents(rolls());
  EXPECT_FALSE(formula.gramsForFlour(0).ok());
  EXPECT_FALSE(formula.gramsForDough(-5).ok());
  EXPECT_FALSE(formula.gramsForPieces(0, 60).ok());
  EXPECT_FALSE(formula.gramsForPieces(12, 60, 1).ok());
}

}  // namespace
}  // namespace suppertide::bread
