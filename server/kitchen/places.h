// Where doughs and dishes stand, and how long a dish keeps its quality there.
//
// Holding limits here are about quality; the safety limits in safety.h hold on
// top of them.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "absl/status/status.h"
#include "server/kitchen/source.h"

namespace suppertide::kitchen {

enum class PlaceKind { kCounter, kProofer, kOvenLight, kFridge, kFreezer, kCellar };

struct Place {
  std::string id;
  PlaceKind kind = PlaceKind::kCounter;
  // Temperature by hour of the local day: entry k holds at k:00, straight lines
  // between, and the day repeats. One entry holds always.
  std::vector<double> hourlyCelsius;
  double litres = 0;   // 0 means not counted
  int shelfTrays = 0;  // trays that can lie flat; 0 means not counted
};

// OK, or InvalidArgument: 1 or 24 temperatures, each possible for its kind.
absl::Status check(const Place& place);

// Temperature at a minute of the local day; any integer, the day repeats.
double celsiusAt(const Place& place, int minuteOfDay);

// A usual temperature for a place nobody has measured (common practice, no source).
double usualCelsius(PlaceKind kind);

enum class DishKind {
  kVegetables,
  kPasta,
  kCrispThings,
  kMash,
  kSoup,
  kSauce,
  kGratin,
  kCarvedMeat,
  kWholeRoast,
  kFish,
  kSoftRolls,
  kCrustyBread,
  kSalad,
  kColdStarter,
  kCustard,
  kCake,
  kFrozenDessert,
};

enum class HoldManner { kHot, kWarm, kRoom, kCold, kFrozen };

// Minutes between done and served. `best` costs nothing, `most` is the end of
// what a guest would call good; `first` is needed before serving (cooling).
struct HoldLimit {
  DishKind dish;
  HoldManner manner;
  int firstMinutes;
  int bestMinutes;
  int mostMinutes;
  Source source;
};

std::span<const HoldLimit> holdLimits();

// The row for a dish held in a manner, or none when it should not be held so.
std::optional<HoldLimit> holdLimit(DishKind dish, HoldManner manner);

}  // namespace suppertide::kitchen
