// Kitchen values against published ones: one row a claim, with its source and how it was read.
//
// Marks: "read" in the source itself; "excerpt", read in an excerpt or public
// reprint; "memory"; "computed" from exact definitions or from such rows.
// Judgements are rows too: 1 is safe or fits, 0 is not.
#include <cmath>
#include <functional>
#include <limits>
#include <string>
#include <vector>

#include "server/kitchen/bake_tolerance.h"
#include "server/kitchen/conduction.h"
#include "server/kitchen/eggs.h"
#include "server/kitchen/oven.h"
#include "server/kitchen/racks.h"
#include "server/kitchen/roast_chart.h"
#include "server/kitchen/safety.h"
#include "server/kitchen/units.h"
#include "tests/published/kitchen_rows.h"

namespace suppertide::kitchen {
namespace {

const double kFixed = std::numeric_limits<double>::infinity();

const char* kExact = "exact definition";
const char* kMinimum = "USDA FSIS, Safe Minimum Internal Temperature Chart";
const char* kLabel = "21 CFR 101.9(b)(5)(viii)";
const char* kGasMarks = "Sizes, gas mark (reference work)";
const char* kCharts = "FoodSafety.gov, Meat and Poultry Roasting Charts";
const char* kDangerZone = "USDA FSIS, Danger Zone";
const char* kCooling = "FDA Food Code 3-501.14";
const char* kCode401 = "FDA Food Code 3-401.11";
const char* kPhysics = "Jin, Wang, Wang 2021, AIP Advances 11:115316";
const char* kConduction = "textbook conduction (Berk, Food Process Engineering and Technology)";
const char* kGastronorm = "EN 631-1";

double pounds(double count) {
  return count * gramsPer(MassUnit::kPound) / 1000;
}
TEST(KitchenPublishedTest, Temperatures) {
  checkRows({
      {"165 F", kExact, "computed", 73.89, 0.005, [] { return celsius(165); }},
      {"145 F", kExact, "computed", 62.78, 0.005, [] { return celsius(145); }},
      {"325 F", kExact, "computed", 162.78, 0.005, [] { return celsius(325); }},
      {"180 C", kExact, "computed", 356, 0, [] { return fahrenheitFromCelsius(180); }},
      {"-40 F", kExact, "computed", -40, 0, [] { return celsius(-40); }},
      {"25 F more", kExact, "computed", 13.89, 0.005, [] { return kelvinFromFahrenheitDifference(25); }},
      {"gas mark 4", kGasMarks, "excerpt", 350, 0, [] { return *fahrenheitFromGasMark(4); }},
      {"gas mark 7", kGasMarks, "excerpt", 425, 0, [] { return *fahrenheitFromGasMark(7); }},
      {"gas mark 1/2", kGasMarks, "excerpt", 250, 0, [] { return *fahrenheitFromGasMark(0.5); }},
      {"165 F is shown as 74 C", kCode401, "excerpt", 74, 0, [] { return shownAtLeast(celsius(165)); }},
  });
}

TEST(KitchenPublishedTest, Measures) {
  using enum VolumeUnit;
  checkRows({
      {"US cup", kExact, "computed", 236.5882365, 1e-7, [] { return millilitresPer(kUsCup); }},
      {"label cup", kLabel, "excerpt", 240, 0, [] { return millilitresPer(kLabelCup); }},
      {"tablespoon", kExact, "computed", 14.78676478, 1e-7, [] { return millilitresPer(kUsTablespoon); }},
      {"teaspoon", kExact, "computed", 4.92892159, 1e-7, [] { return millilitresPer(kUsTeaspoon); }},
      {"imperial pint", kExact, "computed", 568.26125, 0, [] { return millilitresPer(kImperialPint); }},
      {"pound", kExact, "computed", 453.59237, 0, [] { return gramsPer(MassUnit::kPound); }},
      {"ounce", kExact, "computed", 28.349523125, 0, [] { return gramsPer(MassUnit::kOunce); }},
      {"1/3 cup in tablespoons", kExact, "computed", 16.0 / 3, 0,
       [] { return convertVolume(1.0 / 3, kUsCup, kUsTablespoon); }},
      {"1/3 cup in teaspoons", kExact, "computed", 16, 0,
       [] { return convertVolume(1.0 / 3, kUsCup, kUsTeaspoon); }},
      {"metric cup in Australian tablespoons", "Australian standard measures", "excerpt", 12.5, 0,
       [] { return convertVolume(1, kMetricCup, kAustralianTablespoon); }},
      {"13x9 over 8x8 pan, area", kExact, "computed", 1.828, 0.001,
       [] {
         return areaFactor({8 * 254, 8 * 254, 0}, {13 * 254, 9 * 254, 0});
       }},
  });
}

TEST(KitchenPublishedTest, Eggs) {
  const char* us = "USDA AMS 56 (2000)";
  const char* eu = "Regulation (EC) 589/2008, summary";
  const auto grade = [](double grams) { return [grams] { return static_cast<double>(euEggClass(grams)); }; };
  checkRows({
      {"a dozen US Large", us, "excerpt", 680.39, 0.01, [] { return leastDozenGrams(UsEggClass::kLarge); }},
      {"one US Large", us, "computed", 56.70, 0.01, [] { return leastDozenGrams(UsEggClass::kLarge) / 12; }},
      {"52.9 g is S", eu, "excerpt", 0, 0, grade(52.9)},
      {"53 g is M", eu, "excerpt", 1, 0, grade(53)},
      {"63 g is L", eu, "excerpt", 2, 0, grade(63)},
      {"72.9 g is L", eu, "excerpt", 2, 0, grade(72.9)},
      {"73 g is XL", eu, "excerpt", 3, 0, grade(73)},
  });
}

TEST(KitchenPublishedTest, Thawing) {
  const auto waits = [](ThawWay way, double minutes) {
    return [=] { return judgeThawedWait(RawClass::kPoultry, way, minutes).safe() ? 1.0 : 0.0; };
  };
  checkRows({
      {"16 lb in the fridge, least", kThawing, "excerpt", 76.8, 0.1,
       [] { return thawHours(pounds(16), ThawWay::kFridge).least; }},
      {"16 lb in the fridge, most", kThawing, "excerpt", 96, 0.1,
       [] { return thawHours(pounds(16), ThawWay::kFridge).most; }},
      {"16 lb in cold water", kThawing, "excerpt", 8, 0,
       [] { return thawHours(pounds(16), ThawWay::kColdWater).most; }},
      {"its changes of water", kThawing, "computed", 15, 0, [] { return waterChanges(8); }},
      {"18 lb in cold water", kThawing, "excerpt", 9, 0,
       [] { return thawHours(pounds(18), ThawWay::kColdWater).most; }},
      {"thawed in the fridge, three days on", kThawing, "excerpt", 0, 0, waits(ThawWay::kFridge, 3 * 1440)},
      {"thawed in the fridge, two days on", kThawing, "excerpt", 1, 0, waits(ThawWay::kFridge, 2 * 1440)},
      {"thawed in water, an hour on", kThawing, "excerpt", 0, 0, waits(ThawWay::kColdWater, 60)},
      {"thawed in water, at once", kThawing, "excerpt", 1, 0, waits(ThawWay::kColdWater, 0)},
      {"10 lb from frozen", kThawing, "excerpt", 247.5, 0,
       [] { return fromFrozenMinutes(roastTime(Cut::kTurkey, pounds(10))->leastMinutes); }},
  });
}

TEST(KitchenPublishedTest, RoastingTimes) {
  struct Line {
    const char* claim;
    const char* source;
    Cut cut;
    double lb;
    double least;
    double most;
  };
  const std::vector<Line> lines = {
      {"turkey 10 lb", kThawing, Cut::kTurkey, 10, 165, 180},
      {"turkey 10 lb stuffed", kThawing, Cut::kTurkeyStuffed, 10, 180, 210},
      {"turkey 13 lb", kThawing, Cut::kTurkey, 13, 180, 225},
      {"turkey 13 lb stuffed", kThawing, Cut::kTurkeyStuffed, 13, 210, 240},
      {"turkey 16 lb", kThawing, Cut::kTurkey, 16, 225, 255},
      {"turkey 16 lb stuffed", kThawing, Cut::kTurkeyStuffed, 16, 240, 255},
      {"turkey 22 lb", kThawing, Cut::kTurkey, 22, 270, 300},
      {"turkey 22 lb stuffed", kThawing, Cut::kTurkeyStuffed, 22, 285, 315},
      {"turkey 14 lb, a shared end", kThawing, Cut::kTurkey, 14, 180, 255},
      {"rib roast bone-in 5 lb", kCharts, Cut::kBeefRibBoneIn, 5, 115, 125},
      {"rib roast boneless 5 lb", kCharts, Cut::kBeefRibBoneless, 5, 140, 165},
      {"lamb leg 6 lb", kCharts, Cut::kLambLegBoneIn, 6, 120, 150},
      {"raw whole ham 12 lb", kCharts, Cut::kRawHamWhole, 12, 216, 240},
      {"cooked half ham 6 lb", kCharts, Cut::kCookedHamHalf, 6, 108, 144},
      {"spiral ham 8 lb", kCharts, Cut::kSpiralHam, 8, 80, 144},
      {"duck 5 lb", kCharts, Cut::kDuck, 5, 150, 175},
      {"goose 10 lb", kCharts, Cut::kGoose, 10, 150, 180},
  };
  for (const Line& line : lines) {
    const auto time = [line] { return *roastTime(line.cut, pounds(line.lb)); };
    checkRows({{line.claim, line.source, "excerpt", line.least, 0, [&] { return time().leastMinutes; }},
               {line.claim, line.source, "excerpt", line.most, 0, [&] { return time().mostMinutes; }}});
  }
  checkRows({
      {"duck is never stuffed", kCharts, "excerpt", 0, 0, [] { return mayBeStuffed(Cut::kDuck); }},
      {"raw ham ends at", kCharts, "excerpt", 145, 1e-9,
       [] { return fahrenheitFromCelsius(endTemperature(FoodClass::kRawHam, kHome).celsius); }},
      {"raw ham rests", kCharts, "excerpt", 3, 0,
       [] { return endTemperature(FoodClass::kRawHam, kHome).restMinutes; }},
      {"packed ham ends at", kCharts, "excerpt", 140, 1e-9,
       [] { return fahrenheitFromCelsius(endTemperature(FoodClass::kPackedHam, kHome).celsius); }},
  });
}

TEST(KitchenPublishedTest, EndTemperatures) {
  const auto done = [](FoodClass food, double fahrenheit, double rest) {
    return [=] { return judgeEnd(food, celsius(fahrenheit), rest, kHome).safe() ? 1.0 : 0.0; };
  };
  const auto held = [](RuleSet rules, double minutes) {
    return [=] { return judgeRoastHeld(celsius(140), minutes, rules).safe() ? 1.0 : 0.0; };
  };
  checkRows({
      {"poultry at 164.9 F", kMinimum, "excerpt", 0, 0, done(FoodClass::kPoultry, 164.9, 0)},
      {"poultry at 165 F", kMinimum, "excerpt", 1, 0, done(FoodClass::kPoultry, 165, 0)},
      {"pork at 145 F, rested 2:59", kMinimum, "excerpt", 0, 0, done(FoodClass::kWholeMeat, 145, 179.0 / 60)},
      {"pork at 145 F, rested 3:00", kMinimum, "excerpt", 1, 0, done(FoodClass::kWholeMeat, 145, 3)},
      {"bird at 165 F, its stuffing at 160 F", "USDA FSIS, Stuffing and Food Safety", "excerpt", 0, 0,
       [] { return judgeStuffedBird(celsius(165), celsius(160), kHome).safe(); }},
      {"roast held at 140 F for 11 min", kCode401, "excerpt", 0, 0, held(kTrade, 11)},
      {"roast held at 140 F for 12 min", kCode401, "excerpt", 1, 0, held(kTrade, 12)},
      {"the same at home", kMinimum, "excerpt", 0, 0, held(kHome, 12)},
  });
}

TEST(KitchenPublishedTest, HoldingAndCooling) {
  const char* kUkLaw = "Food Safety and Hygiene (England) Regulations 2013, Sch. 4";
  constexpr RuleSet kUk = RuleSet::kUnitedKingdom;
  const auto uk = [](LimitKind kind) { return [=] { return limit(kind, RuleSet::kUnitedKingdom).value; }; };
  const auto out = [](double fahrenheit, double minutes) {
    return [=] { return judgeRoomTime(minutes, celsius(fahrenheit), kHome).safe() ? 1.0 : 0.0; };
  };
  const auto cooled = [](double firstMinute, double firstF, double lastMinute) {
    return [=] {
      const std::vector<CorePoint> course = {
          {0, celsius(135)}, {firstMinute, celsius(firstF)}, {lastMinute, celsius(41)}};
      return judgeCooling(course, kTrade).safe() ? 1.0 : 0.0;
    };
  };
  checkRows({
      {"out at 72 F for 2:00", kDangerZone, "excerpt", 1, 0, out(72, 120)},
      {"out at 72 F for 2:01", kDangerZone, "excerpt", 0, 0, out(72, 121)},
      {"out at 91 F for 1:01", kDangerZone, "excerpt", 0, 0, out(91, 61)},
      {"out at 90 F for 1:30", kDangerZone, "excerpt", 1, 0, out(90, 90)},
      {"hot hold at 138 F, food service", "FDA Food Code 3-501.16", "excerpt", 1, 0,
       [] { return judgeHotHold(celsius(138), kTrade).safe(); }},
      {"hot hold at 138 F, at home", kDangerZone, "excerpt", 0, 0,
       [] { return judgeHotHold(celsius(138), kHome).safe(); }},
      {"hot hold at 138 F, United Kingdom", kUkLaw, "excerpt", 0, 0,
       [] { return judgeHotHold(celsius(138), kUk).safe(); }},
      {"hot hold, United Kingdom", kUkLaw, "excerpt", 63, 0, uk(LimitKind::kHotHold)},
      {"once below it for minutes", kUkLaw, "excerpt", 120, 0, uk(LimitKind::kRoomTime)},
      {"cold hold, United Kingdom", kUkLaw, "excerpt", 8, 0, uk(LimitKind::kColdHold)},
      {"once above it for minutes", kUkLaw, "excerpt", 240, 0, uk(LimitKind::kCoolRoomTime)},
      {"heated again in Scotland", "UK Food Standards Agency", "excerpt", 82, 0, uk(LimitKind::kReheat)},
      {"cooked, United Kingdom", "UK Food Standards Agency", "excerpt", 70, 0,
       [] { return endTemperature(FoodClass::kPoultry, kUk).celsius; }},
      {"for minutes", "UK Food Standards Agency", "excerpt", 2, 0,
       [] { return endTemperature(FoodClass::kPoultry, kUk).heldSeconds / 60; }},
      {"135 F to 70 at 2:00 to 41 at 6:00", kCooling, "excerpt", 1, 0, cooled(120, 70, 360)},
      {"135 F to 71 at 2:00", kCooling, "excerpt", 0, 0, cooled(120, 71, 360)},
      {"135 F to 70 at 1:00 to 41 at 5:45", kCooling, "excerpt", 1, 0, cooled(60, 70, 345)},
  });
}

TEST(KitchenPublishedTest, KeepingDays) {
  using std::chrono::sys_days;
  using namespace std::chrono_literals;
  const auto days = [](RuleSet rules, sys_days last) {
    return [=] {
      const sys_days cooked = 2026y / 11 / 26;
      return static_cast<double>((keepThrough(cooked, rules) - last).count());
    };
  };
  checkRows({
      {"cooked 2026-11-26, food service: through 12-02",
       "FDA Food Code 2013, 3-501.17, as told in Conference for Food Protection 2016, Issue I-034",
       "secondary", 0, 0, days(kTrade, 2026y / 12 / 2)},
      {"cooked 2026-11-26, at home: through 11-30", "FoodSafety.gov, Cold Food Storage Chart", "excerpt", 0,
       0, days(kHome, 2026y / 11 / 30)},
  });
}

TEST(KitchenPublishedTest, HeatIntoFood) {
  const auto lumped = [](double oven, double other) {
    return *timeRatio(Shape::kSlab, 0, oven, other, 20, 95);
  };
  const auto ratioF = [](double biot) {
    return [biot] { return *timeRatio(Shape::kSphere, biot, 325, 350, 40, 165); };
  };
  const auto hours = [](double radius, double oven, double end) {
    return *firstTermSeconds(Shape::kSphere, kFixed, radius, kMeatDiffusivity, oven, 40, end) / 3600;
  };
  const double radius = std::cbrt(3 * 6 / (4 * std::acos(-1.0) * 1050));
  checkRows({
      {"Panofsky, 8 lb", kPhysics, "excerpt", 2.667, 0.001, [] { return panofskyHours(pounds(8)); }},
      {"Panofsky, 12 lb", kPhysics, "excerpt", 3.494, 0.001, [] { return panofskyHours(pounds(12)); }},
      {"Panofsky, 20 lb", kPhysics, "excerpt", 4.912, 0.001, [] { return panofskyHours(pounds(20)); }},
      {"mass doubled", kPhysics, "excerpt", 1.5874, 1e-4, [] { return massTimeFactor(3, 6); }},
      {"sphere 0.12 m, 350 F, 40 to 185 F", kConduction, "computed", 4.127, 0.005,
       [&] { return hours(0.12, 350, 185); }},
      {"sphere 6 kg, radius", kConduction, "computed", 0.1109, 1e-4, [&] { return radius; }},
      {"sphere 6 kg, 325 F, 40 to 165 F", kConduction, "computed", 3.383, 0.005,
       [&] { return hours(radius, 325, 165); }},
      {"lumped, tau 60 min", kConduction, "computed", 34.64, 0.01,
       [] { return *lumpedTime(60, 325, 40, 165); }},
      {"60 min at 180 C, set to 160", kConduction, "computed", 72.8, 0.1,
       [&] { return 60 * lumped(180, 160); }},
      {"60 min at 180 C, set to 190", kConduction, "computed", 55.2, 0.1,
       [&] { return 60 * lumped(180, 190); }},
      {"60 min at 180 C, set to 200", kConduction, "computed", 51.1, 0.1,
       [&] { return 60 * lumped(180, 200); }},
      {"oven at 90 C, end at 95 C", kConduction, "computed", 0, 0,
       [] { return lumpedTime(60, 90, 20, 95).ok(); }},
      {"325 to 350 F, lumped", kConduction, "computed", 0.8942, 1e-4, ratioF(0)},
      {"325 to 350 F, sphere", kConduction, "computed", 0.9519, 1e-4, ratioF(kFixed)},
      {"slab, Bi 1, root", kConduction, "computed", 0.8603, 1e-4,
       [] { return firstTerm(Shape::kSlab, 1).zeta; }},
      {"slab, Bi 1, coefficient", kConduction, "computed", 1.1191, 1e-4,
       [] { return firstTerm(Shape::kSlab, 1).coefficient; }},
      {"sphere, Bi 10, root", kConduction, "computed", 2.8363, 1e-4,
       [] { return firstTerm(Shape::kSphere, 10).zeta; }},
      {"sphere, Bi 10, coefficient", kConduction, "computed", 1.9249, 1e-4,
       [] { return firstTerm(Shape::kSphere, 10).coefficient; }},
  });
}

TEST(KitchenPublishedTest, PansAndOvens) {
  const auto fits = [](int width, int depth, int count) {
    return [=] {
      Oven oven;
      oven.clearHeightsMm = {100};
      oven.shelfWidthMm = 530;
      oven.shelfDepthMm = 325;
      return fitsRacks(oven, {{width, depth, 65, count}}) ? 1.0 : 0.0;
    };
  };
  checkRows({
      {"half sheet 457 x 330 on a 530 x 325 shelf", kGastronorm, "computed", 0, 0, fits(457, 330, 1)},
      {"two GN 1/2 on a GN 1/1 shelf", kGastronorm, "excerpt", 1, 0, fits(325, 265, 2)},
      {"three GN 1/2 on a GN 1/1 shelf", kGastronorm, "computed", 0, 0, fits(325, 265, 3)},
      {"EU oven of 65 l, standard energy", "Regulation (EU) 65/2014", "memory", 0.823, 0.001,
       [] { return standardEnergyKwh(65); }},
  });
}

}  // namespace
}  // namespace suppertide::kitchen
