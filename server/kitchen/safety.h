// Food-safety judgements: numbers in, a finding out, each with its source.
//
// Two rule sets that disagree in places are both kept: the consumer advice of
// the US agencies, stricter, for homes, and the FDA Food Code for food service.
// No finding is relaxed to make a plan fit. Temperatures are degrees Celsius;
// a reading of exactly a limit is good, and limits carry 1e-6 K for rounding
// noise. Local codes and licensed practice come first.
#pragma once

#include <chrono>
#include <span>
#include <vector>

#include "server/kitchen/safety_table.h"

namespace suppertide::kitchen {

enum class Caution {
  kNone,
  kNotDone,           // below the end temperature
  kNotRested,         // reached, but the rest isn't over
  kTooLongWarm,       // too long between cold and hot
  kTooLongVeryWarm,   // the same in a room above 32.2
  kHeldTooCool,       // a hot hold below its limit
  kHeldTooWarm,       // a cold hold above its limit
  kCooledTooSlowly,   // first stage
  kChilledTooSlowly,  // both stages together
  kThawedTooLongAgo,
  kCookAtOnce,  // thawed in water or microwave, and then left
  kThawOnCounter,
  kKeptTooLong,
  kReheatedTooLittle,
  kReheatedTooSlowly,
  kHeldTooLong,  // hot
  kNotThawed,    // out of the thawing place too soon for its mass
  kOvenTooCool,
};

// What a judgement found. `limit` and `seen` are in the unit of the rule: a
// temperature, minutes or days, as Limit says.
struct Finding {
  Caution caution = Caution::kNone;
  double limit = 0;
  double seen = 0;
  Source source;
  bool safe() const { return caution == Caution::kNone; }
};

// ---- cooking ----

// Judges a core reading, the minutes since at rest, and (food service) the
// seconds it was held at that reading.
Finding judgeEnd(FoodClass food, double coreCelsius, double restMinutes, RuleSet rules,
                 double heldSeconds = 3600);

// Both the bird and what is in it must be done.
Finding judgeStuffedBird(double birdCelsius, double stuffingCelsius, RuleSet rules);

// The Food Code's table for whole roasts: lower temperatures held longer. The
// consumer rules know no such table and ask for the end temperature itself.
Finding judgeRoastHeld(double coreCelsius, double heldMinutes, RuleSet rules);

Finding judgeReheated(double coreCelsius, RuleSet rules);

// ---- time and temperature ----

struct CorePoint {
  double minute = 0;
  double celsius = 0;
};

// Minutes that straight lines through `course` (ascending minutes) spend
// strictly between cold hold and hot hold.
double minutesInDangerZone(std::span<const CorePoint> course, RuleSet rules);

// Judges standing out, in total over all spells, in a room of that temperature.
Finding judgeRoomTime(double minutesOut, double roomCelsius, RuleSet rules);

Finding judgeHotHold(double celsius, RuleSet rules);
Finding judgeColdHold(double celsius, RuleSet rules);

// Two-stage cooling along `course`, which starts hot: from the hot limit to 21.1
// within 2 h, to the cold limit within 6 h of the start of the first stage.
// A course that ends before a stage is over is judged up to there.
Finding judgeCooling(std::span<const CorePoint> course, RuleSet rules);

// Last day on which food cooked on `cooked` may be eaten.
std::chrono::sys_days keepThrough(std::chrono::sys_days cooked, RuleSet rules);

// ---- thawing ----

enum class ThawWay { kFridge, kColdWater, kMicrowave, kCounter };
enum class RawClass { kPoultry, kGroundMeat, kSeafood, kRedMeat };

struct HourRange {
  double least = 0;
  double most = 0;
};

// Hours to thaw a piece: 24 h per 4-5 lb in the fridge, 30 min per lb in cold
// water, 0 in a microwave. On the counter nothing is allowed: an empty range (most < least).
HourRange thawHours(double kilograms, ThawWay way);

// Where the thawing times and waits are from.
Source thawSource();

// Changes of water between start and end, every 30 minutes.
int waterChanges(double hours);

// Days that a piece may wait after thawing: {advised, most}; 0 means cook at once.
struct DayRange {
  int least = 0;
  int most = 0;
};
DayRange thawedDays(RawClass food, ThawWay way);

// Judges `waitMinutes` between thawed and cooked.
Finding judgeThawedWait(RawClass food, ThawWay way, double waitMinutes);

// Least minutes to roast from frozen what takes `thawedMinutes` thawed: half as long again.
double fromFrozenMinutes(double thawedMinutes);

}  // namespace suppertide::kitchen
