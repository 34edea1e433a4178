// Every number that drives a safety rule, with its source, in one place.
#pragma once

#include <span>

#include "server/kitchen/source.h"

namespace suppertide::kitchen {

enum class RuleSet { kConsumer, kFoodService };

enum class FoodClass {
  kWholeMeat,  // steaks, chops, roasts of beef, veal, lamb, pork
  kGroundMeat,
  kPoultry,
  kGroundPoultry,
  kStuffing,
  kRawHam,          // fresh or smoked, uncooked
  kPackedHam,       // fully cooked, plant-packed, reheated
  kOtherCookedHam,  // repacked, leftover
  kEggDish,
  kLeftovers,  // and casseroles
  kFish,
  kHotHeldPlants,  // vegetables, grains, legumes for a hot hold
};

// Where the heat must have reached before the food leaves it.
struct EndTemperature {
  FoodClass food;
  RuleSet rules;
  double celsius;
  double heldSeconds;
  double restMinutes;
  Source source;
};

// The row of `food`; every food has one under either rule set.
const EndTemperature& endTemperature(FoodClass food, RuleSet rules);
std::span<const EndTemperature> endTemperatures();

enum class LimitKind {
  kColdHold,          // at most, degrees Celsius
  kHotHold,           // at least, degrees Celsius
  kRoomTime,          // at most, minutes
  kVeryWarmRoom,      // above this room temperature the next row holds
  kVeryWarmRoomTime,  // at most, minutes
  kCoolFirstTo,       // degrees Celsius reached within kCoolFirstTime
  kCoolFirstTime,     // minutes
  kCoolTotalTime,     // minutes to the cold hold, from the start of the first stage
  kReheat,            // at least, degrees Celsius
  kRoastingOven,      // at least, degrees Celsius
  kKeepDays,          // at most, calendar days after the day of cooking
  kWholeDinnerHot,    // at most, minutes
};

struct Limit {
  LimitKind kind;
  RuleSet rules;
  double value;
  Source source;
};

const Limit& limit(LimitKind kind, RuleSet rules);
std::span<const Limit> limits();

// Food Code 3-401.11: whole-meat roasts, minutes at a temperature.
struct RoastRow {
  double celsius;
  double minutes;
};
std::span<const RoastRow> roastTable();
Source roastTableSource();

}  // namespace suppertide::kitchen
