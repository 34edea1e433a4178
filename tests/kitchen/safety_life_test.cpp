#include "server/kitchen/safety_life.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

#include "server/kitchen/units.h"

namespace suppertide::kitchen {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

constexpr RuleSet kHome = RuleSet::kConsumer;
constexpr RuleSet kTrade = RuleSet::kFoodService;
constexpr double kFridgeC = 4;
constexpr double kRoomC = 21;
constexpr double kHour = 60;
constexpr double kDay = 1440;

double fahrenheit(double degrees) {
  return celsiusFromFahrenheit(degrees);
}

// A life told as a test needs it.
class Life {
 public:
  explicit Life(FoodClass food) { life_.food = food; }
  Life& kilograms(double mass) {
    life_.kilograms = mass;
    return *this;
  }
  Life& coolingIn(double minutes) {
    life_.coolingMinutes = minutes;
    return *this;
  }
  Life& then(LifeKind what, double minutes, double celsius) {
    life_.parts.push_back({.what = what, .minutes = minutes, .celsius = celsius});
    return *this;
  }
  Life& thawed(ThawWay way, double minutes, double celsius = kFridgeC) {
    life_.parts.push_back({.what = LifeKind::kThaw, .minutes = minutes, .celsius = celsius, .way = way});
    return *this;
  }
  Life& cooked(double core, double oven = 180, LifeKind what = LifeKind::kCook) {
    life_.parts.push_back(
        {.what = what, .minutes = kHour, .celsius = oven, .coreCelsius = core, .heldSeconds = 300});
    return *this;
  }
  std::vector<Caution> breaches(RuleSet rules) const { return of(rules, Weight::kBreach); }
  std::vector<Caution> cautions(RuleSet rules) const { return of(rules, Weight::kCaution); }
  std::vector<LifeFinding> findings(RuleSet rules) const { return judgeLife(life_, rules); }
  RoomShare share(RuleSet rules) const { return roomShare(life_, rules); }

 private:
  std::vector<Caution> of(RuleSet rules, Weight weight) const {
    std::vector<Caution> found;
    for (const LifeFinding& finding : judgeLife(life_, rules))
      if (finding.weight == weight) found.push_back(finding.finding.caution);
    return found;
  }
  DishLife life_;
};

Life roastedBird() {
  return Life(FoodClass::kPoultry).cooked(fahrenheit(165));
}

TEST(SafetyLifeTest, EveryFoodHasARawAndACookedFridgeLifeUnderBothRuleSets) {
  std::set<std::tuple<FoodClass, bool, RuleSet>> rows;
  for (const FridgeLife& row : fridgeLives()) {
    EXPECT_TRUE(rows.insert({row.food, row.cooked, row.rules}).second);
    EXPECT_FALSE(row.source.title.empty());
  }
  EXPECT_EQ(rows.size(), 4 * (static_cast<std::size_t>(FoodClass::kColdDish) + 1));
}

TEST(SafetyLifeTest, EachFridgeLifeIsKeptToItsLastMinuteAndBrokenByTheNext) {
  for (const FridgeLife& row : fridgeLives()) {
    SCOPED_TRACE(testing::Message() << "food " << static_cast<int>(row.food) << " cooked " << row.cooked);
    const auto kept = [&](double minutes) {
      Life life(row.food);
      if (row.cooked && !isReadyToEat(row.food)) life.cooked(80);
      if (!row.cooked || !isReadyToEat(row.food)) life.then(LifeKind::kKeep, minutes, kFridgeC);
      return life.breaches(row.rules);
    };
    if (row.cooked && isReadyToEat(row.food)) continue;  // raw and ready are one
    EXPECT_THAT(kept(row.days * kDay), IsEmpty());
    EXPECT_THAT(kept(row.days * kDay + 1), ElementsAre(Caution::kKeptTooLong));
  }
}

TEST(SafetyLifeTest, SpellsInTheDangerZoneAddUpOverTheWholeLife) {
  const Life bird = roastedBird()
                        .then(LifeKind::kRest, 20, kRoomC)
                        .then(LifeKind::kStand, 40, 27)  // under an oven's light
                        .then(LifeKind::kTable, 60, kRoomC);
  EXPECT_THAT(bird.breaches(kHome), IsEmpty());
  EXPECT_NEAR(bird.share(kHome).cooked, 1, 1e-9);
  EXPECT_THAT(Life(bird).then(LifeKind::kTable, 1, kRoomC).breaches(kHome),
              ElementsAre(Caution::kTooLongWarm));
  EXPECT_THAT(Life(bird).then(LifeKind::kTable, 120, kRoomC).breaches(kTrade), IsEmpty());
  EXPECT_THAT(Life(bird).then(LifeKind::kTable, 121, kRoomC).breaches(kTrade),
              ElementsAre(Caution::kTooLongWarm));
}

TEST(SafetyLifeTest, ColdTimeBetweenTwoSpellsDoesNotResetTheCount) {
  const Life bird = roastedBird()
                        .then(LifeKind::kStand, 70, kRoomC)
                        .then(LifeKind::kKeep, kDay, kFridgeC)
                        .cooked(fahrenheit(165), 180, LifeKind::kReheat)
                        .then(LifeKind::kTable, 51, kRoomC);
  EXPECT_THAT(bird.breaches(kHome), ElementsAre(Caution::kTooLongWarm));
}

TEST(SafetyLifeTest, CookingThroughBeginsTheCountAnew) {
  const Life roast = Life(FoodClass::kWholeMeat)
                         .then(LifeKind::kStand, 110, kRoomC)
                         .cooked(fahrenheit(145))
                         .then(LifeKind::kRest, 110, kRoomC);
  EXPECT_THAT(roast.breaches(kHome), IsEmpty());
  EXPECT_NEAR(roast.share(kHome).raw, 110.0 / 120, 1e-9);
}

TEST(SafetyLifeTest, AVeryWarmRoomHalvesTheTimeAndMixesByItsShare) {
  const double hot = fahrenheit(91);
  EXPECT_THAT(roastedBird().then(LifeKind::kTable, 60, hot).breaches(kHome), IsEmpty());
  EXPECT_THAT(roastedBird().then(LifeKind::kTable, 61, hot).breaches(kHome),
              ElementsAre(Caution::kTooLongVeryWarm));
  // An hour of two at 21 C leaves half an hour of one at 91 F.
  const auto mixed = [&](double minutes) {
    return roastedBird().then(LifeKind::kStand, 60, kRoomC).then(LifeKind::kTable, minutes, hot);
  };
  EXPECT_THAT(mixed(30).breaches(kHome), IsEmpty());
  EXPECT_THAT(mixed(31).breaches(kHome), ElementsAre(Caution::kTooLongVeryWarm));
}

TEST(SafetyLifeTest, FoodServiceGivesSixHoursToWhatComesFromTheColdAndStaysCool) {
  const auto salad = [](double minutes, double celsius) {
    return Life(FoodClass::kColdDish)
        .then(LifeKind::kKeep, kDay, kFridgeC)
        .then(LifeKind::kTable, minutes, celsius);
  };
  EXPECT_THAT(salad(360, fahrenheit(70)).breaches(kTrade), IsEmpty());
  EXPECT_THAT(salad(361, fahrenheit(70)).breaches(kTrade), ElementsAre(Caution::kTooLongWarm));
  EXPECT_THAT(salad(241, fahrenheit(71)).breaches(kTrade), ElementsAre(Caution::kTooLongWarm));
  EXPECT_THAT(salad(121, fahrenheit(70)).breaches(kHome), ElementsAre(Caution::kTooLongWarm));
}

TEST(SafetyLifeTest, ThawsInTheFridgeForItsMassAndIsCookedInTime) {
  const auto bird = [](double thaw, double wait) {
    return Life(FoodClass::kPoultry)
        .kilograms(16 * 0.45359237)
        .thawed(ThawWay::kFridge, thaw)
        .then(LifeKind::kKeep, wait, kFridgeC)
        .cooked(fahrenheit(165))
        .breaches(kHome);
  };
  EXPECT_THAT(bird(76.8 * kHour, 2 * kDay), IsEmpty());
  EXPECT_THAT(bird(76 * kHour, kDay), ElementsAre(Caution::kNotThawed));
  // Too long raw in the fridge, which is told first, and too long since thawed.
  EXPECT_THAT(bird(96 * kHour, 3 * kDay), ElementsAre(Caution::kKeptTooLong, Caution::kThawedTooLongAgo));
}

TEST(SafetyLifeTest, WhatThawedInWaterIsCookedAtOnce) {
  const auto bird = [](LifeKind what, double minutes) {
    return Life(FoodClass::kPoultry)
        .kilograms(2)
        .thawed(ThawWay::kColdWater, 3 * kHour, 10)
        .then(what, minutes, kRoomC)
        .cooked(fahrenheit(165))
        .breaches(kHome);
  };
  EXPECT_THAT(bird(LifeKind::kStand, 60), ElementsAre(Caution::kCookAtOnce));
  EXPECT_THAT(bird(LifeKind::kHandle, 20), IsEmpty());
}

TEST(SafetyLifeTest, NothingThawsOnTheCounter) {
  EXPECT_THAT(
      Life(FoodClass::kWholeMeat).kilograms(1).thawed(ThawWay::kFridge, 12 * kHour, kRoomC).breaches(kHome),
      ElementsAre(Caution::kThawOnCounter));
}

TEST(SafetyLifeTest, MarinatesColdAndTempersWithinTheRoomTime) {
  const auto steak = [](double marinate, double at, double temper) {
    return Life(FoodClass::kWholeMeat)
        .then(LifeKind::kMarinate, marinate, at)
        .then(LifeKind::kStand, temper, kRoomC)
        .cooked(fahrenheit(145))
        .then(LifeKind::kRest, 5, kRoomC);
  };
  EXPECT_THAT(steak(kDay, kFridgeC, 90).findings(kHome), IsEmpty());
  EXPECT_THAT(steak(30, kRoomC, 60).cautions(kHome), ElementsAre(Caution::kHeldTooWarm));
  EXPECT_THAT(steak(61, kRoomC, 60).breaches(kHome), ElementsAre(Caution::kTooLongWarm));
  EXPECT_THAT(steak(6 * kDay, kFridgeC, 0).breaches(kHome), ElementsAre(Caution::kKeptTooLong));
}

TEST(SafetyLifeTest, EveryFoodIsDoneAtItsEndTemperatureAndNotBelow) {
  for (const EndTemperature& row : endTemperatures()) {
    if (isReadyToEat(row.food)) continue;
    const auto at = [&](double core) {
      DishLife told;
      told.food = row.food;
      told.parts = {{.what = LifeKind::kCook,
                     .minutes = kHour,
                     .celsius = 180,
                     .coreCelsius = core,
                     .heldSeconds = row.heldSeconds},
                    {.what = LifeKind::kRest, .minutes = row.restMinutes, .celsius = kRoomC}};
      return judgeLife(told, row.rules);
    };
    EXPECT_THAT(at(row.celsius), IsEmpty()) << static_cast<int>(row.food);
    const auto below = at(row.celsius - 0.1);
    ASSERT_EQ(below.size(), 1U) << static_cast<int>(row.food);
    EXPECT_EQ(below.front().finding.caution, Caution::kNotDone);
    EXPECT_FALSE(below.front().finding.source.title.empty());
  }
}

TEST(SafetyLifeTest, TheFoodServiceTableLetsARoastEndLowerWhenHeld) {
  DishLife roast;
  roast.food = FoodClass::kWholeMeat;
  roast.kilograms = 6;
  roast.parts = {{.what = LifeKind::kCook,
                  .minutes = 400,
                  .celsius = fahrenheit(250),
                  .coreCelsius = fahrenheit(130),
                  .heldSeconds = 112 * 60}};
  EXPECT_THAT(judgeLife(roast, kTrade), IsEmpty());
  std::vector<Caution> home;
  for (const LifeFinding& found : judgeLife(roast, kHome)) home.push_back(found.finding.caution);
  EXPECT_THAT(home, ElementsAre(Caution::kOvenTooCool, Caution::kNotDone, Caution::kNotRested));
  roast.kilograms = 3;
  ASSERT_EQ(judgeLife(roast, kTrade).size(), 1U);
  EXPECT_EQ(judgeLife(roast, kTrade).front().weight, Weight::kCaution);
}

TEST(SafetyLifeTest, HoldsHotForTwoHoursAtHome) {
  const auto held = [](double minutes, double celsius) {
    return roastedBird().then(LifeKind::kHoldHot, minutes, celsius);
  };
  EXPECT_THAT(held(120, fahrenheit(140)).findings(kHome), IsEmpty());
  EXPECT_THAT(held(121, fahrenheit(140)).breaches(kHome), ElementsAre(Caution::kHeldTooLong));
  EXPECT_THAT(held(121, fahrenheit(140)).breaches(kTrade), IsEmpty());
  EXPECT_THAT(held(121, fahrenheit(140)).cautions(kTrade), ElementsAre(Caution::kHeldTooLong));
  EXPECT_THAT(held(60, fahrenheit(138)).cautions(kHome), ElementsAre(Caution::kHeldTooCool));
  EXPECT_THAT(held(60, fahrenheit(138)).findings(kTrade), IsEmpty());
}

TEST(SafetyLifeTest, AWholeRoastMayBeHeldLowerInFoodService) {
  const Life roast =
      Life(FoodClass::kWholeMeat).cooked(fahrenheit(145)).then(LifeKind::kHoldHot, 60, fahrenheit(131));
  EXPECT_THAT(roast.findings(kTrade), IsEmpty());
  EXPECT_THAT(roast.cautions(kHome), ElementsAre(Caution::kHeldTooCool));
}

TEST(SafetyLifeTest, CoolsInTwoStagesWhenItsPaceIsKnown) {
  const auto stew = [](double pace) {
    return Life(FoodClass::kLeftovers)
        .coolingIn(pace)
        .cooked(95, 120, LifeKind::kReheat)
        .then(LifeKind::kCool, 12 * kHour, 3);
  };
  // From 57.2 to 21.1 C in a fridge at 3 C takes 1.10 time constants.
  EXPECT_THAT(stew(100).breaches(kTrade), IsEmpty());
  EXPECT_THAT(stew(115).breaches(kTrade), ElementsAre(Caution::kCooledTooSlowly));
}

TEST(SafetyLifeTest, ReheatsThroughAndSoonEnough) {
  const auto reheated = [](double core, double minutes) {
    DishLife life;
    life.food = FoodClass::kLeftovers;
    life.parts = {{.what = LifeKind::kKeep, .minutes = kDay, .celsius = kFridgeC},
                  {.what = LifeKind::kReheat, .minutes = minutes, .celsius = 160, .coreCelsius = core}};
    return life;
  };
  EXPECT_THAT(judgeLife(reheated(fahrenheit(165), 120), kTrade), IsEmpty());
  ASSERT_EQ(judgeLife(reheated(fahrenheit(164), 60), kHome).size(), 1U);
  EXPECT_EQ(judgeLife(reheated(fahrenheit(164), 60), kHome).front().finding.caution,
            Caution::kReheatedTooLittle);
  ASSERT_EQ(judgeLife(reheated(fahrenheit(165), 121), kTrade).size(), 1U);
  EXPECT_EQ(judgeLife(reheated(fahrenheit(165), 121), kTrade).front().weight, Weight::kBreach);
  EXPECT_EQ(judgeLife(reheated(fahrenheit(165), 121), kHome).front().weight, Weight::kCaution);
}

TEST(SafetyLifeTest, RawStuffingNeverGoesIntoTheFridge) {
  EXPECT_THAT(Life(FoodClass::kStuffing).then(LifeKind::kKeep, 30, kFridgeC).breaches(kHome),
              ElementsAre(Caution::kKeptTooLong));
}

TEST(SafetyLifeTest, AFindingTellsWhereItsLimitWasPassed) {
  const auto findings =
      roastedBird().then(LifeKind::kRest, 60, kRoomC).then(LifeKind::kTable, 61, kRoomC).findings(kHome);
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_EQ(findings.front().part, 2);
  EXPECT_EQ(findings.front().finding.limit, 120);
  EXPECT_EQ(findings.front().finding.seen, 121);
  EXPECT_FALSE(findings.front().finding.source.title.empty());
}

// ---- limits for planning ----

std::vector<std::pair<PlanLimit, double>> limitsOf(const StepQuestion& question, RuleSet rules) {
  std::vector<std::pair<PlanLimit, double>> pairs;
  for (const MinuteLimit& row : minuteLimits(question, rules)) {
    EXPECT_FALSE(row.source.title.empty());
    pairs.emplace_back(row.what, row.minutes);
  }
  return pairs;
}

TEST(SafetyPlanLimitTest, AnswersForEachKindOfStep) {
  const auto is = [](PlanLimit what, double minutes) {
    return testing::Pair(what, testing::DoubleNear(minutes, 1e-6));
  };
  const double kilos = 16 * 0.45359237;
  EXPECT_THAT(limitsOf({.what = LifeKind::kThaw, .food = FoodClass::kPoultry, .kilograms = kilos}, kHome),
              ElementsAre(is(PlanLimit::kThawLeast, 96 * kHour), is(PlanLimit::kThawedMost, 2 * kDay)));
  EXPECT_THAT(limitsOf({.what = LifeKind::kThaw,
                        .food = FoodClass::kPoultry,
                        .kilograms = kilos,
                        .way = ThawWay::kColdWater},
                       kHome),
              ElementsAre(is(PlanLimit::kThawLeast, 8 * kHour), is(PlanLimit::kThawedMost, 0)));
  EXPECT_THAT(limitsOf({.what = LifeKind::kStand, .celsius = 22}, kHome),
              ElementsAre(is(PlanLimit::kRoomMost, 120)));
  EXPECT_THAT(limitsOf({.what = LifeKind::kStand, .celsius = 33}, kHome),
              ElementsAre(is(PlanLimit::kRoomMost, 60)));
  EXPECT_THAT(limitsOf({.what = LifeKind::kStand, .celsius = 22}, kTrade),
              ElementsAre(is(PlanLimit::kRoomMost, 240)));
  EXPECT_THAT(limitsOf({.what = LifeKind::kKeep, .food = FoodClass::kFish, .celsius = 4}, kHome),
              ElementsAre(is(PlanLimit::kRawFridgeMost, 2 * kDay)));
  EXPECT_THAT(
      limitsOf({.what = LifeKind::kHoldHot, .food = FoodClass::kFish, .cooked = true, .celsius = 65}, kHome),
      ElementsAre(is(PlanLimit::kHotMost, 120)));
  EXPECT_THAT(limitsOf({.what = LifeKind::kCook, .food = FoodClass::kWholeMeat, .celsius = 180}, kHome),
              ElementsAre(is(PlanLimit::kCookedMost, 4 * kDay), is(PlanLimit::kRestLeast, 3)));
  EXPECT_THAT(limitsOf({.what = LifeKind::kCool, .food = FoodClass::kLeftovers, .cooked = true, .celsius = 3},
                       kTrade),
              ElementsAre(is(PlanLimit::kCookedMost, 6 * kDay), is(PlanLimit::kCoolFirstMost, 120),
                          is(PlanLimit::kCoolTotalMost, 360)));
}

TEST(SafetyPlanLimitTest, RoastingOvensHaveALeastTemperature) {
  EXPECT_NEAR(*leastRoastingCelsius(FoodClass::kWholeMeat, kHome), 162.78, 0.01);
  EXPECT_NEAR(*leastRoastingCelsius(FoodClass::kPoultry, kHome), 162.78, 0.01);
  EXPECT_NEAR(*leastRoastingCelsius(FoodClass::kWholeMeat, kTrade), 121.11, 0.01);
  EXPECT_FALSE(leastRoastingCelsius(FoodClass::kPoultry, kTrade));
  EXPECT_FALSE(leastRoastingCelsius(FoodClass::kEggDish, kHome));
  EXPECT_NEAR(roastingLimit(3, false, kTrade).value, 176.67, 0.01);
  EXPECT_NEAR(roastingLimit(3, true, kTrade).value, 162.78, 0.01);
  EXPECT_NEAR(roastingLimit(5, false, kTrade).value, 121.11, 0.01);
}

}  // namespace
}  // namespace suppertide::kitchen
