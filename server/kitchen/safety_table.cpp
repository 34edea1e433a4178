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

constexpr double fahrenheit(double degrees) {
  return (degrees - 32) / 1.8;
}

using enum FoodClass;
constexpr RuleSet kHome = RuleSet::kConsumer;
constexpr RuleSet kTrade = RuleSet::kFoodService;

// Food, rules, end temperature, seconds held there, minutes of rest, source.
constexpr std::array<EndTemperature, 24> kEndTemperatures = {{
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
}};

using enum LimitKind;
constexpr std::array<Limit, 24> kLimits = {{
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
    {kWholeDinnerHot, kTrade, 120, kWholeDinner},
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
  return kEndTemperatures.front();
}

const Limit& limit(LimitKind kind, RuleSet rules) {
  for (const Limit& row : kLimits) {
    if (row.kind == kind && row.rules == rules) return row;
  }
  return kLimits.front();
}

}  // namespace suppertide::kitchen
