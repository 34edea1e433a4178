#include "server/kitchen/safety_table.h"

#include <array>

#include "server/kitchen/units.h"

namespace suppertide::kitchen {
namespace {

constexpr Source kMinimumChart{"USDA FSIS, Safe Minimum Internal Temperature Chart", Mark::kExcerpt};
constexpr Source kRoastCharts{"FoodSafety.gov, Meat and Poultry Roasting Charts", Mark::kExcerpt};
constexpr Source kHam{"USDA FSIS, Hams and Food Safety", Mark::kExcerpt};
constexpr Source kStuffingSheet{"USDA FSIS, Stuffing and Food Safety", Mark::kExcerpt};
constexpr Source kCode401{"FDA Food Code 3-401.11", Mark::kExcerpt};
constexpr Source kCode40113{"FDA Food Code 3-401.13", Mark::kExcerpt};
constexpr Source kCode403{"FDA Food Code 3-403.11", Mark::kExcerpt};
constexpr Source kCode50114{"FDA Food Code 3-501.14", Mark::kExcerpt};
constexpr Source kCode50116{"FDA Food Code 3-501.16", Mark::kExcerpt};
constexpr Source kCode50117{"FDA Food Code 3-501.17", Mark::kMemory};
constexpr Source kCode50119{"FDA Food Code 3-501.19", Mark::kExcerpt};
constexpr Source kDangerZone{"USDA FSIS, Danger Zone", Mark::kExcerpt};
constexpr Source kStorageChart{"FoodSafety.gov, Cold Food Storage Chart", Mark::kExcerpt};
constexpr Source kTakeOut{"USDA FSIS, take-out holiday dinner leaflet", Mark::kExcerpt};
constexpr Source kHotHeld{"FoodSafety.gov: hot food is held at 140 F or above", Mark::kExcerpt};
// No consumer text times the stages; these are the Food Code's times between the consumer's limits.
constexpr Source kStagesAtHome{"FDA Food Code 3-501.14 times, USDA consumer temperatures", Mark::kComputed};
constexpr Source kWholeDinner{"as the consumer leaflet; the Food Code has no time for a hot hold",
                              Mark::kPractice};

constexpr Source kRoastHeld{"FDA Food Code 3-501.16, whole roasts", Mark::kExcerpt};
constexpr Source kNoTimeAtHome{"FDA Food Code 3-403.11; the consumer advice has no time", Mark::kPractice};
constexpr Source kSmallRoasts{"FDA Food Code 3-401.11, roasts below 10 lb", Mark::kExcerpt};
constexpr Source kRawAtTrade{"FoodSafety.gov, Cold Food Storage Chart; the Food Code dates ready food only",
                             Mark::kExcerpt};
constexpr Source kUkLaw{"Food Safety and Hygiene (England) Regulations 2013, Schedule 4", Mark::kExcerpt};
constexpr Source kUkGuidance{"UK Food Standards Agency, cooking temperatures", Mark::kExcerpt};
constexpr Source kScotland{"UK Food Standards Agency: in Scotland; elsewhere steaming hot", Mark::kExcerpt};
constexpr Source kAsLeftovers{"FoodSafety.gov, Cold Food Storage Chart, as cooked dishes", Mark::kComputed};
constexpr Source kAsRoasts{"FoodSafety.gov, Cold Food Storage Chart, as fresh roasts", Mark::kComputed};
constexpr Source kAsGround{"FoodSafety.gov, Cold Food Storage Chart, as ground meat", Mark::kComputed};

constexpr double fahrenheit(double degrees) {
  return (degrees - 32) / 1.8;
}

using enum FoodClass;
constexpr RuleSet kHome = RuleSet::kConsumer;
constexpr RuleSet kTrade = RuleSet::kFoodService;
constexpr RuleSet kUk = RuleSet::kUnitedKingdom;

// Food, rules, end temperature, seconds held there, minutes of rest, source.
constexpr std::array<EndTemperature, 28> kEndTemperatures = {{
    {kWholeMeat, kHome, fahrenheit(145), 0, 3, kMinimumChart},
    {kGroundMeat, kHome, fahrenheit(160), 0, 0, kMinimumChart},
    {kPoultry, kHome, fahrenheit(165), 0, 0, kMinimumChart},
    {kGroundPoultry, kHome, fahrenheit(165), 0, 0, kMinimumChart},
    {kStuffing, kHome, fahrenheit(165), 0, 0, kStuffingSheet},
    {kRawHam, kHome, fahrenheit(145), 0, 3, kHam},
    {kPackedHam, kHome, fahrenheit(140), 0, 0, kRoastCharts},
    {kOtherCookedHam, kHome, fahrenheit(165), 0, 0, kHam},
    {kEggDish, kHome, fahrenheit(160), 0, 0, kMinimumChart},
    {kLeftovers, kHome, fahrenheit(165), 0, 0, kMinimumChart},
    {kFish, kHome, fahrenheit(145), 0, 0, kMinimumChart},
    {kHotHeldPlants, kHome, fahrenheit(140), 0, 0, kHotHeld},
    {kWholeMeat, kTrade, fahrenheit(145), 15, 0, kCode401},
    {kGroundMeat, kTrade, fahrenheit(155), 17, 0, kCode401},
    {kPoultry, kTrade, fahrenheit(165), 0, 0, kCode401},
    {kGroundPoultry, kTrade, fahrenheit(165), 0, 0, kCode401},
    {kStuffing, kTrade, fahrenheit(165), 0, 0, kCode401},
    {kRawHam, kTrade, fahrenheit(145), 240, 0, kCode401},
    {kPackedHam, kTrade, fahrenheit(135), 0, 0, kCode403},
    {kOtherCookedHam, kTrade, fahrenheit(165), 15, 0, kCode403},
    {kEggDish, kTrade, fahrenheit(155), 17, 0, kCode401},
    {kLeftovers, kTrade, fahrenheit(165), 15, 0, kCode403},
    {kFish, kTrade, fahrenheit(145), 15, 0, kCode401},
    {kHotHeldPlants, kTrade, fahrenheit(135), 0, 0, kCode40113},
    // Whole cuts may be served below 70 degrees there, so they have no row.
    {kGroundMeat, kUk, 70, 120, 0, kUkGuidance},
    {kPoultry, kUk, 70, 120, 0, kUkGuidance},
    {kGroundPoultry, kUk, 70, 120, 0, kUkGuidance},
    {kStuffing, kUk, 70, 120, 0, kUkGuidance},
}};

using enum LimitKind;
constexpr std::array<Limit, 45> kLimits = {{
    {kColdHold, kHome, fahrenheit(40), kDangerZone},
    {kHotHold, kHome, fahrenheit(140), kDangerZone},
    {kRoomTime, kHome, 120, kDangerZone},
    {kVeryWarmRoom, kHome, fahrenheit(90), kDangerZone},
    {kVeryWarmRoomTime, kHome, 60, kDangerZone},
    {kCoolFirstTo, kHome, fahrenheit(70), kStagesAtHome},
    {kCoolFirstTime, kHome, 120, kStagesAtHome},
    {kCoolTotalTime, kHome, 360, kStagesAtHome},
    {kReheat, kHome, fahrenheit(165), kMinimumChart},
    {kRoastingOven, kHome, fahrenheit(325), kRoastCharts},
    {kKeepDays, kHome, 4, kStorageChart},
    {kWholeDinnerHot, kHome, 120, kTakeOut},
    {kColdHold, kTrade, fahrenheit(41), kCode50116},
    {kHotHold, kTrade, fahrenheit(135), kCode50116},
    {kRoomTime, kTrade, 240, kCode50119},
    {kVeryWarmRoom, kTrade, fahrenheit(90), kDangerZone},
    {kVeryWarmRoomTime, kTrade, 240, kCode50119},
    {kCoolFirstTo, kTrade, fahrenheit(70), kCode50114},
    {kCoolFirstTime, kTrade, 120, kCode50114},
    {kCoolTotalTime, kTrade, 360, kCode50114},
    {kReheat, kTrade, fahrenheit(165), kCode403},
    // 250 F is allowed for roasts from 4.5 kg; smaller ones need the 350 F of a still oven.
    {kRoastingOven, kTrade, fahrenheit(250), kCode401},
    {kKeepDays, kTrade, 6, kCode50117},  // seven days, the day of preparation being the first
    {kWholeDinnerHot, kTrade, 120, kWholeDinner, Weight::kCaution},
    {kRoastHotHold, kHome, fahrenheit(140), kDangerZone},
    {kRoastHotHold, kTrade, fahrenheit(130), kRoastHeld},
    // The consumer advice makes no difference for what comes from the cold.
    {kCoolRoom, kHome, fahrenheit(70), kDangerZone},
    {kCoolRoomTime, kHome, 120, kDangerZone},
    {kCoolRoom, kTrade, fahrenheit(70), kCode50119},
    {kCoolRoomTime, kTrade, 360, kCode50119},
    {kReheatTime, kHome, 120, kNoTimeAtHome, Weight::kCaution},
    {kReheatTime, kTrade, 120, kCode403},
    {kSmallRoastOven, kHome, fahrenheit(325), kRoastCharts},
    {kSmallRoastFan, kHome, fahrenheit(325), kRoastCharts},
    {kSmallRoast, kHome, 0, kRoastCharts},
    {kSmallRoastOven, kTrade, fahrenheit(350), kSmallRoasts, Weight::kCaution},
    {kSmallRoastFan, kTrade, fahrenheit(325), kSmallRoasts, Weight::kCaution},
    {kSmallRoast, kTrade, 4.5359237, kSmallRoasts},
    {kColdHold, kUk, 8, kUkLaw},
    {kHotHold, kUk, 63, kUkLaw},
    {kRoastHotHold, kUk, 63, kUkLaw},
    // One spell below 63 degrees, one above 8; in a very warm room the consumer's hour holds all the same.
    {kRoomTime, kUk, 120, kUkLaw},
    {kCoolRoom, kUk, fahrenheit(90), kDangerZone},
    {kCoolRoomTime, kUk, 240, kUkLaw},
    {kReheat, kUk, 82, kScotland},
}};

// Food, cooked, rules, days in the fridge, source. The long end of "1-2" and "3-5"
// days is the limit.
constexpr std::array<FridgeLife, 52> kFridgeLives = {{
    {kWholeMeat, false, kHome, 5, kStorageChart},
    {kGroundMeat, false, kHome, 2, kStorageChart},
    {kPoultry, false, kHome, 2, kStorageChart},
    {kGroundPoultry, false, kHome, 2, kStorageChart},
    {kStuffing, false, kHome, 0, kStuffingSheet},  // never raw into the fridge
    {kRawHam, false, kHome, 5, kAsRoasts},
    {kPackedHam, false, kHome, 4, kAsLeftovers},  // once opened
    {kOtherCookedHam, false, kHome, 4, kStorageChart},
    {kEggDish, false, kHome, 2, kAsGround},
    {kLeftovers, false, kHome, 4, kStorageChart},
    {kFish, false, kHome, 2, kAsGround},
    {kHotHeldPlants, false, kHome, 5, kAsRoasts},
    {kColdDish, false, kHome, 4, kAsLeftovers},
    {kWholeMeat, true, kHome, 4, kStorageChart},
    {kGroundMeat, true, kHome, 4, kStorageChart},
    {kPoultry, true, kHome, 4, kStorageChart},
    {kGroundPoultry, true, kHome, 4, kStorageChart},
    {kStuffing, true, kHome, 4, kStorageChart},
    {kRawHam, true, kHome, 4, kStorageChart},
    {kPackedHam, true, kHome, 4, kStorageChart},
    {kOtherCookedHam, true, kHome, 4, kStorageChart},
    {kEggDish, true, kHome, 4, kAsLeftovers},
    {kLeftovers, true, kHome, 4, kStorageChart},
    {kFish, true, kHome, 4, kAsLeftovers},
    {kHotHeldPlants, true, kHome, 4, kAsLeftovers},
    {kColdDish, true, kHome, 4, kAsLeftovers},
    {kWholeMeat, false, kTrade, 5, kRawAtTrade},
    {kGroundMeat, false, kTrade, 2, kRawAtTrade},
    {kPoultry, false, kTrade, 2, kRawAtTrade},
    {kGroundPoultry, false, kTrade, 2, kRawAtTrade},
    {kStuffing, false, kTrade, 0, kStuffingSheet},
    {kRawHam, false, kTrade, 5, kRawAtTrade},
    {kPackedHam, false, kTrade, 6, kCode50117},
    {kOtherCookedHam, false, kTrade, 6, kCode50117},
    {kEggDish, false, kTrade, 2, kRawAtTrade},
    {kLeftovers, false, kTrade, 6, kCode50117},
    {kFish, false, kTrade, 2, kRawAtTrade},
    {kHotHeldPlants, false, kTrade, 5, kRawAtTrade},
    {kColdDish, false, kTrade, 6, kCode50117},
    {kWholeMeat, true, kTrade, 6, kCode50117},
    {kGroundMeat, true, kTrade, 6, kCode50117},
    {kPoultry, true, kTrade, 6, kCode50117},
    {kGroundPoultry, true, kTrade, 6, kCode50117},
    {kStuffing, true, kTrade, 6, kCode50117},
    {kRawHam, true, kTrade, 6, kCode50117},
    {kPackedHam, true, kTrade, 6, kCode50117},
    {kOtherCookedHam, true, kTrade, 6, kCode50117},
    {kEggDish, true, kTrade, 6, kCode50117},
    {kLeftovers, true, kTrade, 6, kCode50117},
    {kFish, true, kTrade, 6, kCode50117},
    {kHotHeldPlants, true, kTrade, 6, kCode50117},
    {kColdDish, true, kTrade, 6, kCode50117},
}};

constexpr std::array<RoastRow, 10> kRoastRows = {{
    {fahrenheit(130), 112},
    {fahrenheit(133), 56},
    {fahrenheit(135), 36},
    {fahrenheit(136), 28},
    {fahrenheit(138), 18},
    {fahrenheit(140), 12},
    {fahrenheit(142), 8},
    {fahrenheit(144), 5},
    {fahrenheit(145), 4},
    {fahrenheit(158), 0},  // from memory
}};

}  // namespace

std::span<const EndTemperature> endTemperatures() {
  return kEndTemperatures;
}
std::span<const Limit> limits() {
  return kLimits;
}
std::span<const RoastRow> roastTable() {
  return kRoastRows;
}
Source roastTableSource() {
  return kCode401;
}

const EndTemperature& endTemperature(FoodClass food, RuleSet rules) {
  for (const EndTemperature& row : kEndTemperatures) {
    if (row.food == food && row.rules == rules) return row;
  }
  return rules == kUk ? endTemperature(food, kHome) : kEndTemperatures.front();
}

std::span<const FridgeLife> fridgeLives() {
  return kFridgeLives;
}

const FridgeLife& fridgeLife(FoodClass food, bool cooked, RuleSet rules) {
  for (const FridgeLife& row : kFridgeLives) {
    if (row.food == food && row.cooked == cooked && row.rules == rules) return row;
  }
  return rules == kUk ? fridgeLife(food, cooked, kHome) : kFridgeLives.front();
}

bool isReadyToEat(FoodClass food) {
  return food == kPackedHam || food == kOtherCookedHam || food == kLeftovers || food == kColdDish;
}

const Limit& limit(LimitKind kind, RuleSet rules) {
  for (const Limit& row : kLimits) {
    if (row.kind == kind && row.rules == rules) return row;
  }
  return rules == kUk ? limit(kind, kHome) : kLimits.front();
}

}  // namespace suppertide::kitchen
