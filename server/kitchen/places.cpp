#include "server/kitchen/places.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "absl/strings/str_cat.h"

namespace suppertide::kitchen {
namespace {

constexpr Source kSchool{"state school-meal recipes and training", Mark::kExcerpt};
constexpr Source kMashSource{"a state agricultural commission, fresh mash at 79-93 C", Mark::kExcerpt};
constexpr Source kRollSource{"McGee, On Food and Cooking (rewarming); window from memory", Mark::kMemory};
constexpr Source kKeeping{"FoodSafety.gov cold food storage chart", Mark::kExcerpt};
constexpr Source kMemorised{"holding windows of dishes", Mark::kMemory};
constexpr Source kPractised{"common practice, no source", Mark::kPractice};

constexpr int kDay = 24 * 60;
using enum DishKind;
using enum HoldManner;

// Dish, manner, first, best and most minutes, source.
constexpr std::array<HoldLimit, 27> kHoldLimits = {{
    {kVegetables, kHot, 0, 10, 30, kSchool},
    {kVegetables, kRoom, 0, 30, 120, kPractised},
    {kPasta, kHot, 0, 10, 60, kSchool},
    {kCrispThings, kHot, 0, 5, 15, kPractised},
    {kCrispThings, kWarm, 0, 5, 20, kPractised},
    {kMash, kHot, 0, 20, 60, kMashSource},
    {kSoup, kHot, 0, 60, 120, kPractised},
    {kSauce, kHot, 0, 30, 120, kPractised},
    {kGratin, kHot, 5, 20, 60, kMemorised},
    {kGratin, kWarm, 5, 15, 30, kMemorised},
    {kCarvedMeat, kHot, 0, 15, 60, kMemorised},
    {kWholeRoast, kHot, 0, 30, 60, kMemorised},
    {kWholeRoast, kWarm, 0, 30, 60, kMemorised},
    {kFish, kHot, 0, 5, 15, kPractised},
    {kFish, kCold, 30, kDay, 3 * kDay, kKeeping},
    {kSoftRolls, kWarm, 5, 15, 30, kRollSource},
    {kSoftRolls, kRoom, 20, 4 * 60, 12 * 60, kPractised},
    {kCrustyBread, kRoom, 60, 6 * 60, kDay, kMemorised},
    {kSalad, kRoom, 0, 15, 60, kPractised},
    {kSalad, kCold, 0, 60, 6 * 60, kPractised},
    {kColdStarter, kRoom, 0, 20, 90, kPractised},
    {kColdStarter, kCold, 30, kDay, 3 * kDay, kKeeping},
    {kCustard, kCold, 120, kDay, 3 * kDay, kKeeping},
    {kCake, kRoom, 60, 12 * 60, 2 * kDay, kPractised},
    {kCake, kCold, 60, kDay, 3 * kDay, kPractised},
    {kFrozenDessert, kFrozen, 240, 3 * kDay, 14 * kDay, kPractised},
    {kSauce, kCold, 0, kDay, 3 * kDay, kKeeping},
}};

struct Bounds {
  double least;
  double most;
};

// Outside these a place is not what it is said to be.
Bounds boundsOf(PlaceKind kind) {
  switch (kind) {
    case PlaceKind::kFreezer:
      return {-40, -5};
    case PlaceKind::kFridge:
      return {-1, 12};
    case PlaceKind::kCellar:
      return {-5, 25};
    case PlaceKind::kProofer:
    case PlaceKind::kOvenLight:
      return {15, 45};
    case PlaceKind::kCounter:
      return {-5, 45};
  }
  return {-40, 45};
}

}  // namespace

absl::Status check(const Place& place) {
  if (place.hourlyCelsius.size() != 1 && place.hourlyCelsius.size() != 24) {
    return absl::InvalidArgumentError(absl::StrCat("place ", place.id, ": ", place.hourlyCelsius.size(),
                                                   " temperatures, 1 or 24 are needed"));
  }
  const Bounds bounds = boundsOf(place.kind);
  for (double celsius : place.hourlyCelsius) {
    if (!(celsius >= bounds.least && celsius <= bounds.most)) {
      return absl::InvalidArgumentError(absl::StrCat("place ", place.id, ": ", celsius, " C is not between ",
                                                     bounds.least, " and ", bounds.most));
    }
  }
  if (!(place.litres >= 0))
    return absl::InvalidArgumentError(absl::StrCat("place ", place.id, ": ", place.litres, " litres"));
  if (place.shelfTrays < 0)
    return absl::InvalidArgumentError(absl::StrCat("place ", place.id, ": ", place.shelfTrays, " trays"));
  return absl::OkStatus();
}

double celsiusAt(const Place& place, int minuteOfDay) {
  if (place.hourlyCelsius.empty()) return usualCelsius(place.kind);
  if (place.hourlyCelsius.size() == 1) return place.hourlyCelsius.front();
  const int minute = ((minuteOfDay % kDay) + kDay) % kDay;
  const std::size_t hour = static_cast<std::size_t>(minute / 60);
  const double part = (minute % 60) / 60.0;
  const double next = place.hourlyCelsius[(hour + 1) % place.hourlyCelsius.size()];
  return place.hourlyCelsius[hour] * (1 - part) + next * part;
}

double usualCelsius(PlaceKind kind) {
  switch (kind) {
    case PlaceKind::kCounter:
      return 21;
    case PlaceKind::kProofer:
      return 27;
    case PlaceKind::kOvenLight:
      return 28;
    case PlaceKind::kFridge:
      return 4;
    case PlaceKind::kFreezer:
      return -18;
    case PlaceKind::kCellar:
      return 13;
  }
  return 21;
}

std::span<const HoldLimit> holdLimits() {
  return kHoldLimits;
}

std::optional<HoldLimit> holdLimit(DishKind dish, HoldManner manner) {
  for (const HoldLimit& row : kHoldLimits) {
    if (row.dish == dish && row.manner == manner) return row;
  }
  return std::nullopt;
}

}  // namespace suppertide::kitchen
