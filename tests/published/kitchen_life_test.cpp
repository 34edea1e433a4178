// A whole roast from freezer to table against published numbers, and the rows on
// ovens and safety that a dish meets on its way: one row a claim, as in kitchen_published_test.cpp.
#include <chrono>
#include <cmath>
#include <functional>
#include <vector>

#include "server/kitchen/oven.h"
#include "server/kitchen/roast_chart.h"
#include "server/kitchen/safety_life.h"
#include "server/kitchen/units.h"
#include "tests/published/kitchen_rows.h"

namespace suppertide::kitchen {
namespace {

using namespace std::chrono_literals;
using WholeMinutes = std::chrono::minutes;

const char* kCode401AsAdopted = "FDA Food Code 3-401.11 (Minnesota 4626.0340)";
const char* kCode501 = "FDA Food Code 3-501.16, 3-501.19";
const char* kStorage = "FoodSafety.gov, Cold Food Storage Chart";

// Local wall-clock time in New York around 2026-11-26, with no clock change in between.
using Local = std::chrono::sys_time<WholeMinutes>;
Local at(int day, WholeMinutes time) {
  return std::chrono::sys_days(2026y / 11 / day) + time;
}

// Sixteen pounds of turkey, unstuffed, served on Thursday 2026-11-26 at 17:00 after 20
// minutes of rest and 15 of carving.
class SixteenPoundTurkey {
 public:
  Local serve = at(26, 17h);
  Local outBy() const { return serve - 35min; }
  Local latestIn() const { return outBy() - WholeMinutes(static_cast<int>(roast_.mostMinutes)); }
  Local earliestReady() const { return latestIn() + WholeMinutes(static_cast<int>(roast_.leastMinutes)); }
  Local thawBy(ThawWay way) const { return latestIn() - wholeMinutes(thawHours(kilograms_, way).most); }
  Local thawNotBefore() const {
    const DayRange days = thawedDays(RawClass::kPoultry, ThawWay::kFridge);
    return latestIn() - days.most * 24h - wholeMinutes(thawHours(kilograms_, ThawWay::kFridge).least);
  }
  double ovenCelsius() const { return roast_.ovenCelsius; }

  // The bird's life when it thaws from `thawStart` at the fast rate and waits in the fridge.
  std::vector<LifeFinding> judged(Local thawStart) const {
    const double thaw = thawHours(kilograms_, ThawWay::kFridge).least * 60;
    const double wait = static_cast<double>((latestIn() - thawStart).count()) - thaw;
    DishLife life;
    life.food = FoodClass::kPoultry;
    life.kilograms = kilograms_;
    life.parts = {{.what = LifeKind::kThaw, .minutes = thaw, .celsius = 4},
                  {.what = LifeKind::kKeep, .minutes = wait, .celsius = 4},
                  {.what = LifeKind::kCook,
                   .minutes = roast_.mostMinutes,
                   .celsius = roast_.ovenCelsius,
                   .coreCelsius = celsius(165)},
                  {.what = LifeKind::kRest, .minutes = 20, .celsius = 21},
                  {.what = LifeKind::kHandle, .minutes = 15, .celsius = 21},
                  {.what = LifeKind::kTable, .minutes = 60, .celsius = 21}};
    return judgeLife(life, kHome);
  }

 private:
  static WholeMinutes wholeMinutes(double hours) {
    return WholeMinutes(static_cast<int>(std::lround(hours * 60)));
  }
  double kilograms_ = 16 * gramsPer(MassUnit::kPound) / 1000;
  RoastTime roast_ = *roastTime(Cut::kTurkey, kilograms_);
};

// Computed from the charts: FSIS roasting and thawing times, two days' wait after thawing.
TEST(KitchenLifeTest, AWholeTurkeyDinnerHasTheTimesOfTheCharts) {
  const SixteenPoundTurkey bird;
  EXPECT_EQ(bird.outBy(), at(26, 16h + 25min));
  EXPECT_EQ(bird.latestIn(), at(26, 12h + 10min));
  EXPECT_EQ(bird.earliestReady(), at(26, 15h + 55min));
  EXPECT_EQ(bird.outBy() - bird.earliestReady(), 30min);
  EXPECT_EQ(bird.thawBy(ThawWay::kFridge), at(22, 12h + 10min));
  EXPECT_EQ(bird.thawNotBefore(), at(21, 7h + 22min));
  EXPECT_EQ(bird.thawBy(ThawWay::kColdWater), at(26, 4h + 10min));
  EXPECT_NEAR(bird.ovenCelsius(), celsius(325), 1e-9);
}

TEST(KitchenLifeTest, ThatTurkeyIsSafeFromItsEarliestThawOnAndNotBefore) {
  const SixteenPoundTurkey bird;
  EXPECT_TRUE(bird.judged(bird.thawNotBefore()).empty());
  EXPECT_TRUE(bird.judged(bird.thawBy(ThawWay::kFridge)).empty());
  const auto tooEarly = bird.judged(bird.thawNotBefore() - 1min);
  ASSERT_FALSE(tooEarly.empty());
  EXPECT_EQ(tooEarly.front().weight, Weight::kBreach);
}

TEST(KitchenLifeTest, SafetyRowsOnTheWay) {
  const auto room = [](double fahrenheit, bool fromCold, RuleSet rules) {
    return [=] { return roomLimit(celsius(fahrenheit), fromCold, rules).value; };
  };
  const auto hot = [](double fahrenheit, FoodClass food, RuleSet rules) {
    return [=] { return keepsHot(celsius(fahrenheit), food, rules) ? 1.0 : 0.0; };
  };
  const auto days = [](FoodClass food, bool cooked, RuleSet rules) {
    return [=] { return fridgeLife(food, cooked, rules).days; };
  };
  const auto oven = [](double kilograms, bool fan) {
    return [=] { return fahrenheitFromCelsius(roastingLimit(kilograms, fan, kTrade).value); };
  };
  checkRows({
      {"out at home, minutes", "USDA FSIS, Danger Zone", "excerpt", 120, 0, room(72, false, kHome)},
      {"out at home above 90 F", "USDA FSIS, Danger Zone", "excerpt", 60, 0, room(91, false, kHome)},
      {"out, food service", kCode501, "excerpt", 240, 0, room(72, false, kTrade)},
      {"out from the cold at 70 F, food service", kCode501, "excerpt", 360, 0, room(70, true, kTrade)},
      {"out from the cold at 71 F, food service", kCode501, "excerpt", 240, 0, room(71, true, kTrade)},
      {"whole roast held at 130 F, food service", kCode501, "excerpt", 1, 0,
       hot(130, FoodClass::kWholeMeat, kTrade)},
      {"bird held at 130 F, food service", kCode501, "excerpt", 0, 0, hot(130, FoodClass::kPoultry, kTrade)},
      {"whole roast held at 138 F, at home", "USDA FSIS, Danger Zone", "excerpt", 0, 0,
       hot(138, FoodClass::kWholeMeat, kHome)},
      {"raw poultry in the fridge, days", kStorage, "excerpt", 2, 0, days(FoodClass::kPoultry, false, kHome)},
      {"raw roasts in the fridge, days", kStorage, "excerpt", 5, 0,
       days(FoodClass::kWholeMeat, false, kHome)},
      {"cooked poultry at home, days", kStorage, "excerpt", 4, 0, days(FoodClass::kPoultry, true, kHome)},
      {"raw stuffing in the fridge", "USDA FSIS, Stuffing and Food Safety", "excerpt", 0, 0,
       days(FoodClass::kStuffing, false, kHome)},
      {"still oven for a roast below 10 lb", kCode401AsAdopted, "excerpt", 350, 1e-6, oven(4, false)},
      {"fan oven for a roast below 10 lb", kCode401AsAdopted, "excerpt", 325, 1e-6, oven(4, true)},
      {"oven for a roast of 10 lb", kCode401AsAdopted, "excerpt", 250, 1e-6, oven(4.5359237, false)},
      {"roasting oven at home", "FoodSafety.gov, Meat and Poultry Roasting Charts", "excerpt", 325, 1e-6,
       [] { return fahrenheitFromCelsius(*leastRoastingCelsius(FoodClass::kWholeMeat, kHome)); }},
      {"poultry, days after thawing", kThawing, "excerpt", 2, 0,
       [] { return thawedDays(RawClass::kPoultry, ThawWay::kFridge).most; }},
      {"red meat, days after thawing", kThawing, "excerpt", 5, 0,
       [] { return thawedDays(RawClass::kRedMeat, ThawWay::kFridge).most; }},
      {"heated again for a hot hold within, food service, minutes", "FDA Food Code 3-403.11", "excerpt", 120,
       0, [] { return limit(LimitKind::kReheatTime, kTrade).value; }},
  });
}

// No measured series of a home oven was found; these are bands, and the owner's readings replace the curve.
TEST(KitchenLifeTest, OvenRows) {
  const ThermalCurve usual;
  const auto band = [](double value, double low, double high) {
    return value >= low && value <= high ? 1.0 : 0.0;
  };
  const char* memory = "electric ovens of 60 to 70 l, from memory";
  checkRows({
      {"20 to 180 C in 8 to 12 min and up to 10 min for the walls", memory, "memory", 1, 0,
       [&] { return band(*minutesBetween(usual, 20, 180, Door::kClosed), 8, 22); }},
      {"20 to 230 C in 13 to 18 min and up to 10 min for the walls", memory, "memory", 1, 0,
       [&] { return band(*minutesBetween(usual, 20, 230, Door::kClosed), 13, 28); }},
      {"200 to 100 C with the door ajar in about 10 min", "trade pages", "excerpt", 1, 0,
       [&] { return band(*minutesBetween(usual, 200, 100, Door::kAjar), 8, 12); }},
      {"the same with the door closed in an hour or more", "trade pages", "excerpt", 1, 0,
       [&] { return band(*minutesBetween(usual, 200, 100, Door::kClosed), 60, 120); }},
      {"door open for a minute at 350 F: about 100 F lost", "McGee, measured", "secondary", 1, 0,
       [&] { return band(doorDropKelvin(usual, celsius(350), 1) * 1.8, 99.5, 140); }},
  });
}

}  // namespace
}  // namespace suppertide::kitchen
