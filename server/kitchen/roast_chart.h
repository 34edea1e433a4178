// Published roasting times by cut and mass.
#pragma once

#include <span>

#include "absl/status/statusor.h"
#include "server/kitchen/safety_table.h"

namespace suppertide::kitchen {

enum class Cut {
  kTurkey,
  kTurkeyStuffed,
  kTurkeyBreast,
  kDuck,
  kGoose,
  kChicken,
  kCapon,
  kBeefRibBoneIn,
  kBeefRibBoneless,
  kBeefRound,
  kBeefTenderloin,
  kLambLegBoneIn,
  kLambLegBoneless,
  kLambShoulder,
  kPorkLoin,
  kPorkShoulder,
  kVealLoin,
  kRawHamWhole,
  kRawHamHalf,
  kCookedHamWhole,
  kCookedHamHalf,
  kSpiralHam,
};

// One line of the charts. Masses in pounds, as published, both ends included;
// neighbouring lines share their ends.
struct ChartRow {
  Cut cut;
  double leastPounds;
  double mostPounds;
  int fahrenheit;
  bool perPound;  // minutes a pound, else minutes in all
  double leastMinutes;
  double mostMinutes;
  FoodClass food;  // for its end temperature and rest
  Source source;
};
std::span<const ChartRow> roastChart();

struct RoastTime {
  double leastMinutes = 0;
  double mostMinutes = 0;
  double ovenCelsius = 0;
  FoodClass food = FoodClass::kWholeMeat;
};

// Time of a piece, from the shortest to the longest of all lines that hold its
// mass. OutOfRange for a mass that no line of the cut holds.
absl::StatusOr<RoastTime> roastTime(Cut cut, double kilograms);

// Whether the charts have it stuffed at all; ducks, for one, never.
bool mayBeStuffed(Cut cut);

}  // namespace suppertide::kitchen
