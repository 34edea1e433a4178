#include "server/kitchen/places.h"

#include <gtest/gtest.h>

#include <set>

namespace suppertide::kitchen {
namespace {

TEST(PlaceTest, TemperatureRunsStraightBetweenHoursAndRepeatsDaily) {
  Place counter{.id = "counter", .kind = PlaceKind::kCounter, .hourlyCelsius = std::vector<double>(24, 20.0)};
  counter.hourlyCelsius[13] = 24;
  EXPECT_DOUBLE_EQ(celsiusAt(counter, 13 * 60), 24);
  EXPECT_DOUBLE_EQ(celsiusAt(counter, 12 * 60 + 30), 22);
  EXPECT_DOUBLE_EQ(celsiusAt(counter, 13 * 60 + 15 + 1440), 23);
  EXPECT_DOUBLE_EQ(celsiusAt(counter, 13 * 60 - 1440), 24);
  counter.hourlyCelsius[0] = 18;
  EXPECT_DOUBLE_EQ(celsiusAt(counter, 23 * 60 + 30), 19);
}

TEST(PlaceTest, OneTemperatureHoldsAlways) {
  const Place fridge{.id = "fridge", .kind = PlaceKind::kFridge, .hourlyCelsius = {4}};
  EXPECT_TRUE(check(fridge).ok());
  EXPECT_EQ(celsiusAt(fridge, 777), 4);
}

TEST(PlaceTest, RefusesAWarmFridgeAndAHalfDay) {
  EXPECT_FALSE(check({.id = "f", .kind = PlaceKind::kFridge, .hourlyCelsius = {15}}).ok());
  EXPECT_FALSE(
      check({.id = "c", .kind = PlaceKind::kCounter, .hourlyCelsius = std::vector<double>(12, 20.0)}).ok());
  EXPECT_FALSE(check({.id = "c", .kind = PlaceKind::kCounter, .hourlyCelsius = {}}).ok());
  EXPECT_FALSE(check({.id = "c", .kind = PlaceKind::kCounter, .hourlyCelsius = {20}, .litres = -1}).ok());
}

TEST(PlaceTest, UsualTemperaturesPassTheirOwnCheck) {
  for (PlaceKind kind : {PlaceKind::kCounter, PlaceKind::kProofer, PlaceKind::kOvenLight, PlaceKind::kFridge,
                         PlaceKind::kFreezer, PlaceKind::kCellar}) {
    EXPECT_TRUE(check({.id = "p", .kind = kind, .hourlyCelsius = {usualCelsius(kind)}}).ok());
  }
}

TEST(HoldLimitTest, EveryRowIsInOrderUniqueAndHasASource) {
  std::set<std::pair<DishKind, HoldManner>> seen;
  for (const HoldLimit& row : holdLimits()) {
    EXPECT_TRUE(seen.insert({row.dish, row.manner}).second);
    EXPECT_LE(row.firstMinutes, row.bestMinutes);
    EXPECT_LE(row.bestMinutes, row.mostMinutes);
    EXPECT_FALSE(row.source.title.empty());
  }
}

TEST(HoldLimitTest, AFrozenDessertIsNotHeldHot) {
  EXPECT_FALSE(holdLimit(DishKind::kFrozenDessert, HoldManner::kHot));
  EXPECT_EQ(holdLimit(DishKind::kVegetables, HoldManner::kHot)->mostMinutes, 30);
  EXPECT_EQ(holdLimit(DishKind::kMash, HoldManner::kHot)->mostMinutes, 60);
}

}  // namespace
}  // namespace suppertide::kitchen
