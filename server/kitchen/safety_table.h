// Every number that drives a safety rule, with its source, in one place.
#pragma once

#include <span>

#include "server/kitchen/source.h"

namespace suppertide::kitchen {

// Where kUnitedKingdom has no row of its own, the consumer one holds: nothing is left without a limit.
enum class RuleSet { kConsumer, kFoodService, kUnitedKingdom };

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
  kColdDish,       // eaten cold: cut fruit, cream, cured fish, dressed salads; never heated
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

// The row of `food`; every food but kColdDish has one under either rule set.
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
  kRoastHotHold,      // at least, degrees Celsius, for whole roasts
  kCoolRoom,          // up to this room temperature the next row holds for what comes from the cold
  kCoolRoomTime,      // at most, minutes
  kReheatTime,        // at most, minutes, to be hot again for a hot hold
  kSmallRoastOven,    // as kRoastingOven, for roasts below kSmallRoast in a still oven
  kSmallRoastFan,     // the same in an oven with a fan
  kSmallRoast,        // kilograms
};

// What going beyond a limit is: never planned, or planned and told.
enum class Weight { kBreach, kCaution };

struct Limit {
  LimitKind kind;
  RuleSet rules;
  double value;
  Source source;
  Weight weight = Weight::kBreach;
};

const Limit& limit(LimitKind kind, RuleSet rules);
std::span<const Limit> limits();

// How long food keeps in the fridge, raw or cooked; 0: not at all, it is used at once.
struct FridgeLife {
  FoodClass food;
  bool cooked;
  RuleSet rules;
  double days;
  Source source;
};
// The row of `food`; every food has one, raw and cooked, under either rule set.
const FridgeLife& fridgeLife(FoodClass food, bool cooked, RuleSet rules);
std::span<const FridgeLife> fridgeLives();

// Food that is safe as it is before this kitchen heats it.
bool isReadyToEat(FoodClass food);

// Food Code 3-401.11: whole-meat roasts, minutes at a temperature.
struct RoastRow {
  double celsius;
  double minutes;
};
std::span<const RoastRow> roastTable();
Source roastTableSource();

}  // namespace suppertide::kitchen
