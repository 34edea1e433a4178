#include "server/kitchen/menu/shopping.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <map>
#include <string>

namespace suppertide::kitchen {
namespace {

using testing::IsEmpty;
using testing::SizeIs;

Use grams(const char* name, double value, int day = 0) {
  return {"dish", name, {AmountKind::kGrams, value}, day};
}
Use millilitres(const char* name, double value) {
  return {"dish", name, {AmountKind::kMillilitres, value}, 0};
}
Use pieces(const char* name, double value) {
  return {"dish", name, {AmountKind::kPieces, value}, 0};
}

TEST(ShoppingListTest, MergesDishesByDaySectionAndName) {
  const auto list = shoppingList({grams("carrots, peeled", 400, 2), grams("carrot", 100, 1),
                                  grams("salmon", 900, 1), grams("apples", 50, 1)},
                                 {});
  ASSERT_THAT(list, SizeIs(3));
  EXPECT_EQ(list[0].name, "apples") << "the cook's word where there is one";
  EXPECT_EQ(list[1].name, "carrot");
  EXPECT_DOUBLE_EQ(list[1].toBuy.value, 500);
  EXPECT_EQ(list[1].day, 1);
  EXPECT_THAT(list[1].uses, SizeIs(2));
  EXPECT_EQ(list[2].name, "salmon");
}

TEST(ShoppingListTest, JoinsVolumesToMassesOnlyByMeasuredEntries) {
  auto list = shoppingList({grams("honey", 100), millilitres("honey", 236.5882365)}, {});
  ASSERT_THAT(list, SizeIs(1));
  EXPECT_NEAR(list[0].needed.value, 439, 1e-6);
  list = shoppingList({grams("brown sugar", 100), millilitres("brown sugar", 200)}, {});
  EXPECT_THAT(list, SizeIs(2));
  list = shoppingList({grams("spruce syrup", 100), millilitres("spruce syrup", 200)}, {});
  EXPECT_THAT(list, SizeIs(2));
}

TEST(ShoppingListTest, TakesOffWhatIsAtHandOnce) {
  const std::vector<Stock> stock = {{"Eggs", {AmountKind::kPieces, 4}},
                                    {"sugar", {AmountKind::kGrams, 5000}}};
  const auto list = shoppingList({pieces("eggs", 5.5), grams("sugar", 200)}, stock);
  ASSERT_THAT(list, SizeIs(2));
  EXPECT_EQ(list[0].name, "eggs");
  EXPECT_DOUBLE_EQ(list[0].atHand.value, 4);
  EXPECT_DOUBLE_EQ(list[0].toBuy.value, 2) << "one and a half eggs are two";
  EXPECT_DOUBLE_EQ(list[1].toBuy.value, 0);
  EXPECT_DOUBLE_EQ(list[1].atHand.value, 200);
}

TEST(ShoppingListTest, CountsWhatIsAtHandHoweverItIsMeasured) {
  const std::vector<Stock> stock = {{"onions", {AmountKind::kGrams, 500}},
                                    {"carrots", {AmountKind::kPieces, 2}},
                                    {"eggs", {AmountKind::kGrams, 100}},
                                    {"honey", {AmountKind::kGrams, 339}},
                                    {"spruce syrup", {AmountKind::kGrams, 500}}};
  const auto list = shoppingList({pieces("onions", 2), grams("carrots", 200), pieces("eggs", 3),
                                  millilitres("honey", 2 * 236.5882365), millilitres("spruce syrup", 50)},
                                 stock);
  std::map<std::string, double> toBuy;
  for (const ShoppingLine& line : list) toBuy[line.name] = line.toBuy.value;
  ASSERT_THAT(toBuy, SizeIs(5));
  EXPECT_DOUBLE_EQ(toBuy["onions"], 0);
  EXPECT_NEAR(toBuy["carrots"], 200 - 2 * 61, 1e-9) << "middling ones, SR 11124";
  EXPECT_DOUBLE_EQ(toBuy["eggs"], 1);
  EXPECT_NEAR(toBuy["honey"], 236.5882365, 0.1) << "339 g a cup, SR 19296";
  EXPECT_DOUBLE_EQ(toBuy["spruce syrup"], 50) << "nobody knows how heavy it is";
}

TEST(ShoppingListTest, WhatIsAtHandGoesFirstToTheLineThatMeasuresItAlike) {
  std::vector<Use> uses = {pieces("onions", 3), grams("onions", 300, 1)};
  const auto list = shoppingList(uses, {{"onions", {AmountKind::kGrams, 300}}});
  ASSERT_THAT(list, SizeIs(2));
  ASSERT_EQ(list[0].needed.kind, AmountKind::kPieces) << "used a day sooner";
  EXPECT_DOUBLE_EQ(list[0].toBuy.value, 3);
  EXPECT_DOUBLE_EQ(list[1].toBuy.value, 0);
}

TEST(ShoppingListTest, WhatIsStillToBuyComesInWholePacks) {
  const std::vector<Pack> packs = {{"butter", {AmountKind::kGrams, 250}}};
  const auto list = shoppingList({grams("butter", 432), grams("sugar", 300)}, {}, packs);
  ASSERT_THAT(list, SizeIs(2));
  EXPECT_DOUBLE_EQ(list[0].toBuy.value, 500);
  EXPECT_DOUBLE_EQ(stillToBuy(list[0], 432), 0) << "all that is needed, whatever packs it came in";
  EXPECT_DOUBLE_EQ(stillToBuy(list[0], 200), 250);
  EXPECT_DOUBLE_EQ(stillToBuy(list[0], 100), 500);
  EXPECT_DOUBLE_EQ(stillToBuy(list[1], 240), 60);
}

TEST(ShoppingListTest, BuysEggsByTheCartonWhoeverWeighsThem) {
  const auto list = shoppingList({pieces("eggs", 5), grams("egg", 170)}, {});
  ASSERT_THAT(list, SizeIs(1));
  EXPECT_EQ(list[0].name, "eggs, large");
  EXPECT_DOUBLE_EQ(list[0].toBuy.value, 9) << "8.4 of 50 g";
  const auto weighed = shoppingList({grams("egg", 167)}, {});
  ASSERT_THAT(weighed, SizeIs(1));
  EXPECT_EQ(weighed[0].toBuy.kind, AmountKind::kPieces);
  EXPECT_DOUBLE_EQ(weighed[0].toBuy.value, 4);
}

TEST(ShoppingListTest, WhatItIsForIsNotWhatIsBought) {
  const auto list = shoppingList({grams("butter for the filling", 120), grams("butter", 80)}, {});
  ASSERT_THAT(list, SizeIs(1));
  EXPECT_DOUBLE_EQ(list[0].toBuy.value, 200);
}

TEST(ShoppingListTest, AnotherNameIsNoChange) {
  const auto before = shoppingList({grams("bread flour", 400), grams("strong white flour", 100)}, {});
  const auto after = shoppingList({grams("strong white flour", 500)}, {});
  EXPECT_THAT(changesOf(before, after), IsEmpty());
}

TEST(ShoppingListTest, MeasuredOtherwiseIsOneChange) {
  const auto changes =
      changesOf(shoppingList({pieces("onions", 2)}, {}), shoppingList({grams("onions", 300)}, {}));
  ASSERT_THAT(changes, SizeIs(1));
  EXPECT_EQ(changes[0].before->value, 2);
  EXPECT_EQ(changes[0].after->kind, AmountKind::kGrams);
}

TEST(ShoppingListTest, BuysNoWaterAndKeepsWhatIsToTaste) {
  const auto list = shoppingList({grams("cold water", 700), {"dish", "nutmeg", {}, 0}}, {});
  ASSERT_THAT(list, SizeIs(1));
  EXPECT_EQ(list[0].toBuy.kind, AmountKind::kSome);
}

TEST(ShoppingListTest, TellsWhatAChangeOfTheMenuBuys) {
  const auto before = shoppingList({grams("carrots", 400), grams("pork", 1000)}, {});
  const auto after = shoppingList({grams("carrots", 600), grams("cod", 900)}, {});
  const auto changes = changesOf(before, after);
  ASSERT_THAT(changes, SizeIs(3));
  EXPECT_EQ(changes[0].name, "carrots");
  EXPECT_DOUBLE_EQ(changes[0].before->value, 400);
  EXPECT_DOUBLE_EQ(changes[0].after->value, 600);
  EXPECT_FALSE(changes[1].before);
  EXPECT_FALSE(changes[2].after);
  EXPECT_THAT(changesOf(before, before), IsEmpty());
}

}  // namespace
}  // namespace suppertide::kitchen
