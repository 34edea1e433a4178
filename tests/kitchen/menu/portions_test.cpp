#include "server/kitchen/menu/portions.h"

#include <gtest/gtest.h>

namespace suppertide::kitchen {
namespace {

PortionDish dish(const std::string& name, const std::string& part, double grams) {
  return {name, {{part, {AmountKind::kGrams, grams}, {}}}, 0, 0};
}

TEST(PortionsTest, KnowsAGuideForFewDishesAndMakesUpNone) {
  EXPECT_TRUE(guidesOf(dish("Gratin", "potatoes", 2000)).empty());
  EXPECT_TRUE(guidesOf(dish("Turkey stock", "turkey wings", 900)).empty());
  ASSERT_EQ(guidesOf(dish("Roast turkey", "turkey, thawed", 5500)).size(), 2u);
  ASSERT_EQ(guidesOf(dish("Mashed potatoes", "potatoes", 2500)).size(), 1u);
  EXPECT_TRUE(guidesOf(dish("Hamburger", "hamburger buns", 2500)).empty()) << "ham is a word of its own";
}

TEST(PortionsTest, CallsOnlyFarAmountsFar) {
  const auto turkey = guidesOf(dish("Roast turkey", "turkey", 6000)).front();
  EXPECT_EQ(judgeAmount(turkey, 12), Enough::kYes);
  EXPECT_EQ(judgeAmount(turkey, 30), Enough::kFarTooLittle);
  EXPECT_EQ(judgeAmount(turkey, 4), Enough::kFarTooMuch);
  EXPECT_EQ(judgeAmount(turkey, 0), Enough::kYes) << "nobody is invited yet";
}

TEST(PortionsTest, TellsWhatStuffingTheBirdTakesWhoeverEats) {
  const auto guides = guidesOf(dish("Stuffed turkey", "turkey", 5500));
  ASSERT_EQ(guides.size(), 3u);
  EXPECT_TRUE(guides[2].guide.inAll);
  EXPECT_EQ(guides[2].amount.kind, AmountKind::kSome);
  EXPECT_EQ(judgeAmount(guides[2], 12), Enough::kYes);
}

TEST(PortionsTest, CountsRollsAndNotLoaves) {
  PortionDish rolls{"Rolls", {}, 24, 58};
  ASSERT_EQ(guidesOf(rolls).size(), 1u);
  EXPECT_EQ(guidesOf(rolls).front().amount.value, 24);
  rolls.pieceGrams = 880;
  EXPECT_TRUE(guidesOf(rolls).empty());
}

TEST(PortionsTest, AddsUpTheMenuByWhatThingsHold) {
  PortionDish trout{"Trout", {{"lake fillet", {AmountKind::kGrams, 1500}, {"fish"}}}, 0, 0};
  const auto all = guidesOfMenu({trout, dish("Pork", "pork shoulder, boned", 2500), {"Loaf", {}, 2, 900}});
  ASSERT_EQ(all.size(), 2u);
  EXPECT_EQ(all[0].amount.value, 4000);
  EXPECT_EQ(all[1].amount.value, 1800);
}

}  // namespace
}  // namespace suppertide::kitchen
