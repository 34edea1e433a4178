#include "server/kitchen/ingredients/line.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace suppertide::kitchen {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;
using testing::Optional;

IngredientLine us(const char* text) {
  return readLine(text, Measures::kUs);
}
IngredientLine metric(const char* text) {
  return readLine(text, Measures::kMetric);
}
std::string nameOf(const IngredientLine& line) {
  return line.ingredient == nullptr ? "" : line.ingredient->name;
}

TEST(IngredientLineTest, ReadsCupsOfFlourSiftedAfterMeasuring) {
  const IngredientLine line = us("2 1/4 cups flour, sifted");
  EXPECT_THAT(line.quantity, Optional(2.25));
  EXPECT_EQ(line.unit, "cup");
  EXPECT_EQ(nameOf(line), "all-purpose flour");
  EXPECT_EQ(line.form, "sifted");
  ASSERT_TRUE(line.grams);
  EXPECT_NEAR(*line.grams, 281.25, 1e-9);
  EXPECT_EQ(line.massSource, "USDA SR 20081");
  EXPECT_THAT(line.doubts, ElementsAre(Doubt::kMeasuresDiffer, Doubt::kUsualKindTaken));
}

TEST(IngredientLineTest, WeighsSiftedFlourAsSifted) {
  const IngredientLine line = us("2 1/4 cups sifted all-purpose flour");
  EXPECT_EQ(line.form, "sifted");
  EXPECT_NEAR(*line.grams, 2.25 * 115, 1e-9);
  EXPECT_TRUE(line.has(Doubt::kMassFromMemory));
}

TEST(IngredientLineTest, ReadsADecimalCommaInDecilitres) {
  const IngredientLine line = metric("1,5 dl cream");
  EXPECT_THAT(line.quantity, Optional(1.5));
  EXPECT_THAT(line.millilitres, Optional(150.0));
  EXPECT_EQ(nameOf(line), "heavy cream");
  ASSERT_TRUE(line.grams);
  EXPECT_NEAR(*line.grams, 150 * 238 / 236.5882365, 1e-6);
  EXPECT_TRUE(line.has(Doubt::kUsualKindTaken));
  EXPECT_TRUE(line.has(Doubt::kMassScaled));
}

TEST(IngredientLineTest, ReadsEggsBySize) {
  const IngredientLine line = us("3 large eggs");
  EXPECT_THAT(line.count, Optional(3.0));
  EXPECT_EQ(nameOf(line), "egg");
  EXPECT_NEAR(*line.grams, 150, 1e-9);
  EXPECT_THAT(line.doubts, IsEmpty());
  EXPECT_THAT(us("3 eggs").doubts, ElementsAre(Doubt::kSizeTaken));
}

TEST(IngredientLineTest, LeavesAPinchUnmeasured) {
  const IngredientLine line = us("a pinch of salt");
  EXPECT_EQ(nameOf(line), "table salt");
  EXPECT_EQ(line.unit, "pinch");
  EXPECT_FALSE(line.grams);
  EXPECT_THAT(line.doubts, ElementsAre(Doubt::kVagueAmount, Doubt::kUsualKindTaken));
}

TEST(IngredientLineTest, ReadsHalfAPoundOfSoftenedButter) {
  const IngredientLine line = us("½ lb butter, softened");
  EXPECT_EQ(line.unit, "lb");
  EXPECT_EQ(line.note, "softened");
  EXPECT_NEAR(*line.grams, 226.796185, 1e-9);
  EXPECT_EQ(line.massSource, "scale");
}

TEST(IngredientLineTest, DoesNotGuessAnUnsaidForm) {
  const IngredientLine line = us("1 cup brown sugar");
  EXPECT_FALSE(line.grams);
  EXPECT_TRUE(line.millilitres);
  EXPECT_TRUE(line.has(Doubt::kMassNotKnown));
  EXPECT_NEAR(*us("3/4 cup packed brown sugar").grams, 165, 1e-9);
  EXPECT_NEAR(*us("3/4 cup brown sugar, packed").grams, 165, 1e-9);
}

TEST(IngredientLineTest, TakesTheFormSaidLaterOnlyWithADoubt) {
  const IngredientLine line = us("1 cup pecans, chopped");
  EXPECT_NEAR(*line.grams, 109, 1e-9);
  EXPECT_TRUE(line.has(Doubt::kMassScaled));
  EXPECT_FALSE(us("1 cup chopped pecans").has(Doubt::kMassScaled));
}

TEST(IngredientLineTest, DoesNotTakeOneFlourForAnother) {
  const IngredientLine line = us("1 cup tapioca flour");
  EXPECT_EQ(line.ingredient, nullptr);
  EXPECT_EQ(line.name, "tapioca flour");
  EXPECT_FALSE(line.grams);
  EXPECT_TRUE(line.has(Doubt::kIngredientNotKnown));
  EXPECT_EQ(nameOf(us("1 cup buckwheat flour")), "buckwheat flour");
}

TEST(IngredientLineTest, MeasuresByTheKitchenOfItsCook) {
  EXPECT_NEAR(*readLine("1 cup milk", Measures::kAustralian).millilitres, 250, 1e-9);
  EXPECT_NEAR(*readLine("2 tbsp honey", Measures::kAustralian).millilitres, 40, 1e-9);
  EXPECT_NEAR(*readLine("1 pint milk", Measures::kImperial).millilitres, 568.26125, 1e-9);
  EXPECT_NEAR(*us("1 pint milk").millilitres, 473.176473, 1e-6);
  EXPECT_TRUE(us("1 cup milk").has(Doubt::kMeasuresDiffer));
  EXPECT_FALSE(metric("2 dl milk").has(Doubt::kMeasuresDiffer));
}

TEST(IngredientLineTest, ReadsPacksRangesAndAlternatives) {
  EXPECT_NEAR(*metric("2 x 400 g canned tomatoes").grams, 800, 1e-9);
  EXPECT_NEAR(*us("1 (14 oz) can chickpeas").grams, 14 * 28.349523125, 1e-9);
  const IngredientLine range = us("2-3 cloves garlic");
  EXPECT_THAT(range.quantity, Optional(2.0));
  EXPECT_THAT(range.mostQuantity, Optional(3.0));
  EXPECT_NEAR(*range.grams, 6, 1e-9);
  EXPECT_TRUE(us("1 tbsp butter or margarine").has(Doubt::kAlternative));
  EXPECT_EQ(nameOf(us("1 tbsp butter or margarine")), "unsalted butter");
}

TEST(IngredientLineTest, MarksACommaBeforeThreeFigures) {
  const IngredientLine line = metric("1,500 g potatoes");
  EXPECT_THAT(line.grams, Optional(1500.0));
  EXPECT_TRUE(line.has(Doubt::kComma));
  EXPECT_THAT(metric("0,250 kg butter").grams, Optional(250.0));
}

TEST(IngredientLineTest, MarksAPointBeforeThreeFigures) {
  const IngredientLine line = metric("1.500 g potatoes");
  EXPECT_THAT(line.grams, Optional(1500.0)) << "no scale shows a thousandth of a gram";
  EXPECT_TRUE(line.has(Doubt::kComma));
  EXPECT_FALSE(metric("1.5 kg potatoes").has(Doubt::kComma));
  EXPECT_FALSE(metric("0.125 l milk").has(Doubt::kComma));
}

TEST(IngredientLineTest, TakesThreeFiguresForDecimalsOfALargeUnit) {
  for (const char* text : {"1,250 kg potatoes", "1.250 kg potatoes"}) {
    EXPECT_THAT(metric(text).grams, Optional(1250.0)) << text;
    EXPECT_TRUE(metric(text).has(Doubt::kComma)) << text;
  }
  EXPECT_THAT(metric("1,250 l milk").millilitres, Optional(1250.0));
  EXPECT_THAT(metric("1,500 peppercorns").count, Optional(1500.0)) << "no unit: thousands";
}

TEST(IngredientLineTest, TellsSpoonsByTheCaseOfTheirLetter) {
  EXPECT_EQ(us("1 T sugar").unit, "tbsp");
  EXPECT_EQ(us("1 t sugar").unit, "tsp");
  EXPECT_EQ(us("1 turnip").unit, "");
  EXPECT_EQ(nameOf(us("1 turnip")), "turnip");
}

TEST(IngredientLineTest, DoubtsALineWithoutSense) {
  EXPECT_THAT(us("  ").doubts, ElementsAre(Doubt::kEmpty));
  EXPECT_THAT(us("salt").doubts, ElementsAre(Doubt::kNoQuantity, Doubt::kUsualKindTaken));
  EXPECT_TRUE(us("\xff\xfe ,,, ((").has(Doubt::kIngredientNotKnown));
  EXPECT_FALSE(us("1/0 cup milk").grams);
}

}  // namespace
}  // namespace suppertide::kitchen
