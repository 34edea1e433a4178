#include "server/kitchen/safety.h"

#include <gtest/gtest.h>

#include <set>

#include "server/kitchen/units.h"

namespace suppertide::kitchen {
namespace {

constexpr RuleSet kHomeRules = RuleSet::kConsumer;
constexpr RuleSet kTradeRules = RuleSet::kFoodService;

TEST(SafetyTableTest, EveryFoodAndLimitHasOneRowInEachRuleSetWithItsSource) {
  std::set<std::pair<FoodClass, RuleSet>> foods;
  for (const EndTemperature& row : endTemperatures()) {
    EXPECT_TRUE(foods.insert({row.food, row.rules}).second);
    EXPECT_FALSE(row.source.title.empty());
  }
  const auto ofUk = [](const auto& one) { return one.second == RuleSet::kUnitedKingdom; };
  std::erase_if(foods, ofUk);
  EXPECT_EQ(foods.size(), 2 * (static_cast<std::size_t>(FoodClass::kHotHeldPlants) + 1));
  std::set<std::pair<LimitKind, RuleSet>> kinds;
  for (const Limit& row : limits()) {
    EXPECT_TRUE(kinds.insert({row.kind, row.rules}).second);
    EXPECT_FALSE(row.source.title.empty());
  }
  std::erase_if(kinds, ofUk);
  EXPECT_EQ(kinds.size(), 2 * (static_cast<std::size_t>(LimitKind::kSmallRoast) + 1));
}

TEST(SafetyTableTest, WhereTheUnitedKingdomHasNoRowTheConsumersHolds) {
  constexpr RuleSet kUk = RuleSet::kUnitedKingdom;
  EXPECT_EQ(endTemperature(FoodClass::kPoultry, kUk).rules, kUk);
  EXPECT_EQ(endTemperature(FoodClass::kEggDish, kUk).rules, kHomeRules);
  EXPECT_EQ(limit(LimitKind::kColdHold, kUk).rules, kUk);
  EXPECT_EQ(limit(LimitKind::kCoolTotalTime, kUk).rules, kHomeRules);
  EXPECT_EQ(fridgeLife(FoodClass::kFish, false, kUk).rules, kHomeRules);
}

TEST(SafetyTableTest, TheConsumerRulesAreNeverTheLaxerOnes) {
  for (const EndTemperature& row : endTemperatures()) {
    EXPECT_GE(endTemperature(row.food, kHomeRules).celsius, endTemperature(row.food, kTradeRules).celsius);
  }
  EXPECT_LE(limit(LimitKind::kColdHold, kHomeRules).value, limit(LimitKind::kColdHold, kTradeRules).value);
  EXPECT_GE(limit(LimitKind::kHotHold, kHomeRules).value, limit(LimitKind::kHotHold, kTradeRules).value);
  EXPECT_LE(limit(LimitKind::kRoomTime, kHomeRules).value, limit(LimitKind::kRoomTime, kTradeRules).value);
  EXPECT_LE(limit(LimitKind::kKeepDays, kHomeRules).value, limit(LimitKind::kKeepDays, kTradeRules).value);
}

TEST(SafetyTest, AFindingSaysTheLimitAndWhatWasSeen) {
  const Finding found = judgeEnd(FoodClass::kGroundMeat, 69, 0, kHomeRules);
  EXPECT_EQ(found.caution, Caution::kNotDone);
  EXPECT_NEAR(found.limit, 71.1, 0.02);
  EXPECT_EQ(found.seen, 69);
  EXPECT_FALSE(found.source.title.empty());
  EXPECT_TRUE(judgeEnd(FoodClass::kGroundMeat, 69, 0, kTradeRules).safe());
}

TEST(SafetyTest, FoodServiceWantsTheTemperatureHeld) {
  EXPECT_EQ(judgeEnd(FoodClass::kWholeMeat, 63, 0, kTradeRules, 14).caution, Caution::kNotDone);
  EXPECT_TRUE(judgeEnd(FoodClass::kWholeMeat, 63, 0, kTradeRules, 15).safe());
}

TEST(SafetyTest, AConsumerRoastIsNotDoneByHoldingItLonger) {
  EXPECT_FALSE(judgeRoastHeld(60, 600, kHomeRules).safe());
  EXPECT_TRUE(judgeRoastHeld(60, 12, kTradeRules).safe());
  EXPECT_FALSE(judgeRoastHeld(50, 600, kTradeRules).safe());
}

TEST(SafetyTest, DangerZoneMinutesFollowTheStraightLines) {
  // 80 -> 20 in 60 minutes crosses 60 after 20 and stays inside; then 20 -> 0 in 20 leaves at 4.44.
  const std::vector<CorePoint> course = {{0, 80}, {60, 20}, {80, 0}};
  EXPECT_NEAR(minutesInDangerZone(course, kHomeRules), 40 + (20 - 4.4444), 0.01);
  EXPECT_EQ(minutesInDangerZone(std::vector<CorePoint>{{0, 60}, {90, 60}}, kHomeRules), 0);
  EXPECT_EQ(minutesInDangerZone(std::vector<CorePoint>{{0, 59}, {90, 59}}, kHomeRules), 90);
  EXPECT_EQ(minutesInDangerZone(std::vector<CorePoint>{{0, 59}, {90, 59}}, kTradeRules), 0);
  EXPECT_EQ(minutesInDangerZone({}, kHomeRules), 0);
}

TEST(SafetyTest, HoldsAreGoodAtTheirLimits) {
  EXPECT_TRUE(judgeHotHold(60, kHomeRules).safe());
  EXPECT_EQ(judgeHotHold(59.9, kHomeRules).caution, Caution::kHeldTooCool);
  EXPECT_TRUE(judgeColdHold(celsiusFromFahrenheit(40), kHomeRules).safe());
  EXPECT_EQ(judgeColdHold(4.8, kHomeRules).caution, Caution::kHeldTooWarm);
  EXPECT_TRUE(judgeColdHold(4.8, kTradeRules).safe());
}

TEST(SafetyTest, CoolingCountsFromTheHotLimitAndNotFromTheOven) {
  const std::vector<CorePoint> course = {{0, 90}, {100, 57.2}, {215, 20}, {440, 4}};
  EXPECT_TRUE(judgeCooling(course, kTradeRules).safe());
}

TEST(SafetyTest, CoolingThatNeverGetsThereIsJudgedByItsLength) {
  const std::vector<CorePoint> stuck = {{0, 57}, {100, 20}, {400, 9}};
  EXPECT_EQ(judgeCooling(stuck, kTradeRules).caution, Caution::kChilledTooSlowly);
  const std::vector<CorePoint> young = {{0, 57}, {60, 40}};
  EXPECT_TRUE(judgeCooling(young, kTradeRules).safe());
  EXPECT_TRUE(judgeCooling({}, kTradeRules).safe());
}

TEST(SafetyTest, ThawingScalesWithMassAndTheCounterIsNoWay) {
  const HourRange one = thawHours(1, ThawWay::kFridge);
  EXPECT_NEAR(one.least, 10.6, 0.05);
  EXPECT_NEAR(one.most, 13.2, 0.05);
  EXPECT_NEAR(thawHours(3, ThawWay::kFridge).most, 3 * one.most, 1e-9);
  EXPECT_GT(thawHours(1, ThawWay::kCounter).least, thawHours(1, ThawWay::kCounter).most);
  EXPECT_EQ(judgeThawedWait(RawClass::kRedMeat, ThawWay::kCounter, 0).caution, Caution::kThawOnCounter);
}

TEST(SafetyTest, RedMeatWaitsLongerThanPoultryAfterThawing) {
  EXPECT_TRUE(judgeThawedWait(RawClass::kRedMeat, ThawWay::kFridge, 5 * 1440).safe());
  EXPECT_EQ(judgeThawedWait(RawClass::kSeafood, ThawWay::kFridge, 2 * 1440 + 1).caution,
            Caution::kThawedTooLongAgo);
}

TEST(SafetyTest, LeftoversAreReheatedThrough) {
  EXPECT_EQ(judgeReheated(70, kHomeRules).caution, Caution::kReheatedTooLittle);
  EXPECT_TRUE(judgeReheated(74, kHomeRules).safe());
}

}  // namespace
}  // namespace suppertide::kitchen
