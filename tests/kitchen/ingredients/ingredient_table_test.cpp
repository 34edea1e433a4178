#include "server/kitchen/ingredients/ingredient_table.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

#include "server/kitchen/ingredients/amount_mass.h"
#include "server/kitchen/ingredients/shown_amount.h"

namespace suppertide::kitchen {
namespace {

TEST(IngredientTableTest, HasAtLeastOneHundredAndFiftyWithMasses) {
  int weighed = 0;
  for (const Ingredient& one : ingredients()) weighed += one.measures.empty() ? 0 : 1;
  EXPECT_GE(weighed, 150);
}

TEST(IngredientTableTest, EveryRowIsWhole) {
  std::set<std::string> names;
  for (const Ingredient& one : ingredients()) {
    SCOPED_TRACE(one.name);
    EXPECT_TRUE(names.insert(plainName(one.name)).second) << "twice";
    EXPECT_NE(one.section, ShopSection::kOther);
    EXPECT_FALSE(one.sourceTitle.empty());
    EXPECT_EQ(findIngredient(one.name).ingredient, &one);
    std::set<std::pair<std::string, std::string>> measures;
    for (const Measure& measure : one.measures) {
      EXPECT_GT(measure.grams, 0) << measure.unit;
      EXPECT_TRUE(measures.insert({measure.unit, measure.form}).second)
          << measure.unit << " " << measure.form;
    }
  }
}

TEST(IngredientTableTest, FindsByOtherNamesAndNumbersOnly) {
  EXPECT_EQ(findIngredient("Fresh Carrots").ingredient->name, "carrot");
  EXPECT_EQ(findIngredient("potatoes").ingredient->name, "potato");
  EXPECT_TRUE(findIngredient("sugar").usualKind);
  EXPECT_FALSE(findIngredient("granulated sugar").usualKind);
  EXPECT_EQ(findIngredient("peanut butter cup").ingredient, nullptr);
  EXPECT_EQ(findIngredient("gluten-free flour").ingredient, nullptr);
  EXPECT_EQ(findIngredient("").ingredient, nullptr);
}

TEST(IngredientTableTest, DoesNotScaleOneMeasureFromAnother) {
  const Ingredient& cream = *findIngredient("sour cream").ingredient;
  EXPECT_DOUBLE_EQ(measuredMass(cream, 1, "tbsp", 14.78676478, "")->grams, 12);
  EXPECT_DOUBLE_EQ(measuredMass(cream, 1, "cup", 236.5882365, "")->grams, 230);
  const auto australian = measuredMass(cream, 1, "tbsp", 20, "");
  EXPECT_EQ(australian->way, MassWay::kScaled);
  EXPECT_NEAR(australian->grams, 12 * 20 / 14.78676478125, 1e-9);
}

TEST(ShownAmountTest, SpeaksTheHouseholdsMeasures) {
  EXPECT_EQ(shownMass(281.25, Measures::kMetric), "281 g");
  EXPECT_EQ(shownMass(1520, Measures::kMetric), "1.52 kg");
  EXPECT_EQ(shownMass(1020.6, Measures::kUs), "2 lb 4 oz");
  EXPECT_EQ(shownVolume(532.3, Measures::kUs), "2 1/4 cups");
  EXPECT_EQ(shownVolume(20, Measures::kAustralian), "1 tbsp");
  EXPECT_EQ(shownVolume(1.2, Measures::kUs), "1/4 tsp");
  EXPECT_EQ(shownCount(2.5), "2 1/2");
}

}  // namespace
}  // namespace suppertide::kitchen
