#include "server/kitchen/roast_chart.h"

#include <algorithm>
#include <array>

#include "absl/status/status.h"
#include "absl/strings/str_cat.h"
#include "server/kitchen/units.h"

namespace suppertide::kitchen {
namespace {

constexpr Source kTurkeyLeaflet{"USDA FSIS, Let's Talk Turkey, and extension reprints", Mark::kExcerpt};
constexpr Source kCharts{"FoodSafety.gov, Meat and Poultry Roasting Charts", Mark::kExcerpt};

using enum Cut;
constexpr FoodClass kBird = FoodClass::kPoultry;
constexpr FoodClass kMeat = FoodClass::kWholeMeat;
constexpr FoodClass kRaw = FoodClass::kRawHam;
constexpr FoodClass kPacked = FoodClass::kPackedHam;

// Cut, pounds from and to, oven, a pound or in all, minutes from and to, food, source.
// The 7-9 lb lamb leg and the pork lines differ between editions and are left out or in the current one.
constexpr std::array<ChartRow, 32> kChart = {{
    {kTurkeyBreast, 4, 6, 325, false, 90, 135, kBird, kTurkeyLeaflet},
    {kTurkeyBreast, 6, 8, 325, false, 135, 195, kBird, kTurkeyLeaflet},
    {kTurkey, 8, 12, 325, false, 165, 180, kBird, kTurkeyLeaflet},
    {kTurkey, 12, 14, 325, false, 180, 225, kBird, kTurkeyLeaflet},
    {kTurkey, 14, 18, 325, false, 225, 255, kBird, kTurkeyLeaflet},
    {kTurkey, 18, 20, 325, false, 255, 270, kBird, kTurkeyLeaflet},
    {kTurkey, 20, 24, 325, false, 270, 300, kBird, kTurkeyLeaflet},
    {kTurkeyStuffed, 8, 12, 325, false, 180, 210, kBird, kTurkeyLeaflet},
    {kTurkeyStuffed, 12, 14, 325, false, 210, 240, kBird, kTurkeyLeaflet},
    {kTurkeyStuffed, 14, 18, 325, false, 240, 255, kBird, kTurkeyLeaflet},
    {kTurkeyStuffed, 18, 20, 325, false, 255, 285, kBird, kTurkeyLeaflet},
    {kTurkeyStuffed, 20, 24, 325, false, 285, 315, kBird, kTurkeyLeaflet},
    {kDuck, 4, 6, 350, true, 30, 35, kBird, kCharts},
    {kGoose, 8, 12, 325, false, 150, 180, kBird, kCharts},
    {kChicken, 3, 4, 350, false, 75, 90, kBird, kCharts},
    {kChicken, 5, 7, 350, false, 120, 135, kBird, kCharts},
    {kCapon, 4, 8, 350, false, 120, 180, kBird, kCharts},
    {kBeefRibBoneIn, 4, 6, 325, true, 23, 25, kMeat, kCharts},
    {kBeefRibBoneless, 4, 6, 325, true, 28, 33, kMeat, kCharts},
    {kBeefRound, 2.5, 4, 325, true, 30, 35, kMeat, kCharts},
    {kBeefTenderloin, 4, 6, 425, false, 45, 60, kMeat, kCharts},
    {kLambLegBoneIn, 5, 7, 325, true, 20, 25, kMeat, kCharts},
    {kLambLegBoneless, 4, 7, 325, true, 25, 30, kMeat, kCharts},
    {kLambShoulder, 3, 4, 325, true, 30, 35, kMeat, kCharts},
    {kPorkLoin, 2, 5, 350, true, 20, 20, kMeat, kCharts},
    {kPorkShoulder, 3, 6, 350, true, 45, 45, kMeat, kCharts},
    {kVealLoin, 3, 4, 325, true, 34, 36, kMeat, kCharts},
    {kRawHamWhole, 10, 14, 325, true, 18, 20, kRaw, kCharts},
    {kRawHamHalf, 5, 7, 325, true, 22, 25, kRaw, kCharts},
    {kCookedHamWhole, 10, 14, 325, true, 15, 18, kPacked, kCharts},
    {kCookedHamHalf, 5, 7, 325, true, 18, 24, kPacked, kCharts},
    {kSpiralHam, 7, 9, 325, true, 10, 18, kPacked, kCharts},
}};

}  // namespace

std::span<const ChartRow> roastChart() {
  return kChart;
}

absl::StatusOr<RoastTime> roastTime(Cut cut, double kilograms) {
  constexpr double kNoise = 1e-9;
  const double pounds = convertMass(kilograms, MassUnit::kKilogram, MassUnit::kPound);
  RoastTime time;
  bool found = false;
  for (const ChartRow& row : kChart) {
    const bool holds = pounds >= row.leastPounds - kNoise && pounds <= row.mostPounds + kNoise;
    if (row.cut != cut || !holds) continue;
    const double factor = row.perPound ? pounds : 1;
    const double least = factor * row.leastMinutes;
    time.leastMinutes = found ? std::min(time.leastMinutes, least) : least;
    time.mostMinutes = std::max(time.mostMinutes, factor * row.mostMinutes);
    time.ovenCelsius = celsiusFromFahrenheit(row.fahrenheit);
    time.food = row.food;
    found = true;
  }
  if (found) return time;
  return absl::OutOfRangeError(absl::StrCat("roast time: the charts hold no such cut of ", kilograms, " kg"));
}

bool mayBeStuffed(Cut cut) {
  return cut == kTurkey || cut == kTurkeyStuffed;
}

}  // namespace suppertide::kitchen
