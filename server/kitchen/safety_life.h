// The life of one dish, from the shop or freezer to the table, against the food-safety rules.
//
// A dish's time in the danger zone counts over all its spells: on the counter,
// under an oven's light, on the table. Cooking through begins the count anew;
// heating again does not, because what grew may have left its poison. Temperatures
// are degrees Celsius of what surrounds the food, which it is taken to have at
// once: strict for food that comes cold or hot.
#pragma once

#include <optional>
#include <vector>

#include "server/kitchen/safety.h"

namespace suppertide::kitchen {

enum class LifeKind {
  kThaw,      // from frozen
  kHandle,    // somebody works on it
  kMarinate,  // raw, in something
  kStand,     // tempering, resting before cooking, waiting
  kCook,      // until done; raw food is cooked after it
  kRest,      // out of the heat, before carving or cutting
  kHoldHot,   // kept hot until served
  kCool,      // from hot to cold
  kKeep,      // in the fridge or freezer
  kReheat,
  kTable,  // served, with guests helping themselves
};

struct LifePart {
  LifeKind what = LifeKind::kStand;
  double minutes = 0;
  double celsius = 20;                               // around it; for kCook the oven's
  ThawWay way = ThawWay::kFridge;                    // kThaw only
  std::optional<double> coreCelsius = std::nullopt;  // in the middle at the end of kCook or kReheat
  double heldSeconds = 0;                            // how long it had coreCelsius
};

struct DishLife {
  FoodClass food = FoodClass::kWholeMeat;
  double kilograms = 0;  // 0: not known
  bool fan = false;      // the oven that cooks it has a fan
  // Minutes in which the middle's excess over the surroundings falls to 37 % while
  // it cools; none when nobody knows.
  std::optional<double> coolingMinutes = std::nullopt;
  std::vector<LifePart> parts;  // in order, without holes
};

struct LifeFinding {
  int part = 0;  // where the limit is passed
  Weight weight = Weight::kBreach;
  Finding finding;  // never safe()
};

// Everything that is wrong with the life, in order of its parts; empty when
// nothing is. A limit passed once is told once. What is not known (no core
// reading, no cooling) is not judged.
std::vector<LifeFinding> judgeLife(const DishLife& life, RuleSet rules);

// How much of the room-time limit the dish has used when it is eaten, raw and
// cooked spells apart, each at its worst: 1 is all of it.
struct RoomShare {
  double raw = 0;
  double cooked = 0;
};
RoomShare roomShare(const DishLife& life, RuleSet rules);

// ---- limits for planning ----

enum class PlanLimit {
  kThawLeast,       // the step lasts at least
  kThawedMost,      // from thawed to cooking
  kRoomMost,        // all such steps of a phase together
  kRawFridgeMost,   // from the first step with it to cooking
  kCookedMost,      // from cooked to served
  kHotMost,         // held hot, together
  kRestLeast,       // from cooked to served
  kCoolFirstMost,   // to kCoolFirstTo
  kCoolTotalMost,   // to the cold hold
  kReheatTimeMost,  // the step lasts at most
};

struct MinuteLimit {
  PlanLimit what;
  double minutes = 0;
  Weight weight = Weight::kBreach;
  Source source;
};

struct StepQuestion {
  LifeKind what = LifeKind::kStand;
  FoodClass food = FoodClass::kWholeMeat;
  bool cooked = false;
  double celsius = 20;
  bool fromCold = false;  // it stood in the cold right before
  double kilograms = 0;
  ThawWay way = ThawWay::kFridge;
};

// Limits in minutes that hold for a step of that kind with that food in such
// surroundings; empty when none does.
std::vector<MinuteLimit> minuteLimits(const StepQuestion& question, RuleSet rules);

// Whether surroundings keep the food out of the danger zone, cold or hot.
bool keepsCold(double celsius, RuleSet rules);
bool keepsHot(double celsius, FoodClass food, RuleSet rules);

// Longest time out in such surroundings, minutes.
const Limit& roomLimit(double celsius, bool fromCold, RuleSet rules);

// The row that a hot hold of such food is judged by.
const Limit& hotHoldLimit(FoodClass food, RuleSet rules);

// Least oven temperature for raw meat that is roasted, and by the consumer rules
// for poultry; none for other food. No plan goes below it.
std::optional<double> leastRoastingCelsius(FoodClass food, RuleSet rules);
// What is asked of the oven beyond it, by mass (0: not known) and fan; a caution for food service.
const Limit& roastingLimit(double kilograms, bool fan, RuleSet rules);

// Food as the thawing rules sort it.
RawClass rawClassOf(FoodClass food);

}  // namespace suppertide::kitchen
