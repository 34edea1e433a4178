#include "server/bread/water_temperature.h"

#include <algorithm>
#include <cmath>

#include "absl/status/status.h"
#include "absl/strings/str_cat.h"

namespace suppertide::bread {
namespace {

constexpr double kWaterHeat = 4.18;     // kJ/(kg K)
constexpr double kMeltingHeat = 334.0;  // kJ/kg

struct HeatSum {
  double capacity = 0;  // kJ/K times 1000, as masses are in grams
  double content = 0;   // above 0 degrees
};

HeatSum sumOf(const std::vector<MixPart>& parts) {
  HeatSum sum;
  for (const MixPart& part : parts) {
    const double capacity = part.grams * specificHeat(part.waterShare);
    sum.capacity += capacity;
    sum.content += capacity * part.celsius;
  }
  return sum;
}

absl::Status checkBalance(const std::vector<MixPart>& others, double waterGrams, double lossShare) {
  for (const MixPart& part : others) {
    if (!(std::isfinite(part.grams) && part.grams > 0 && std::isfinite(part.celsius))) {
      return absl::InvalidArgumentError(absl::StrCat("water temperature: ", part.name, " has mass ",
                                                     part.grams, " g at ", part.celsius, " degrees"));
    }
  }
  if (!(std::isfinite(waterGrams) && waterGrams > 0)) {
    return absl::InvalidArgumentError(absl::StrCat("water temperature: water has mass ", waterGrams, " g"));
  }
  if (!(lossShare >= 0 && lossShare < 1)) {
    return absl::InvalidArgumentError(
        absl::StrCat("water temperature: loss share ", lossShare, " is not in [0, 1)"));
  }
  return absl::OkStatus();
}

}  // namespace

double waterByThreeFactors(double wanted, double room, double flour, double friction) {
  return 3 * wanted - room - flour - friction;
}

double waterByFourFactors(double wanted, double room, double flour, double preferment, double friction) {
  return 4 * wanted - room - flour - preferment - friction;
}

double frictionFromTestBatch(double mixed, double room, double flour, double water) {
  return 3 * mixed - (room + flour + water);
}

double specificHeat(double waterShare) {
  return kWaterHeat * waterShare + 1.6 * (1 - waterShare);
}

WaterPlan planWater(double neededCelsius, double waterGrams) {
  WaterPlan plan;
  plan.celsius = neededCelsius;
  plan.waterCelsius = std::max(neededCelsius, kColdestWaterCelsius);
  plan.harmsYeast = neededCelsius > kWarmestWaterForYeastCelsius;
  if (neededCelsius < kColdestWaterCelsius) {
    // Cold water and ice together hold the heat that water at `neededCelsius` would.
    const double ice = waterGrams * kWaterHeat * (kColdestWaterCelsius - neededCelsius) /
                       (kMeltingHeat + kWaterHeat * kColdestWaterCelsius);
    plan.iceIsEnough = ice <= waterGrams;
    plan.iceGrams = std::min(ice, waterGrams);
  }
  return plan;
}

absl::StatusOr<WaterPlan> waterByHeatBalance(const std::vector<MixPart>& others, double waterGrams,
                                             double wantedDoughCelsius, double frictionRise,
                                             double roomCelsius, double lossShare) {
  const absl::Status status = checkBalance(others, waterGrams, lossShare);
  if (!status.ok()) return status;
  if (!std::isfinite(wantedDoughCelsius + frictionRise + roomCelsius)) {
    return absl::InvalidArgumentError("water temperature: a temperature is not finite");
  }
  const HeatSum sum = sumOf(others);
  const double mixed = (wantedDoughCelsius - frictionRise - lossShare * roomCelsius) / (1 - lossShare);
  const double waterCapacity = waterGrams * kWaterHeat;
  const double needed = (mixed * (sum.capacity + waterCapacity) - sum.content) / waterCapacity;
  return planWater(needed, waterGrams);
}

double mixedCelsius(const std::vector<MixPart>& parts, double frictionRise, double roomCelsius,
                    double lossShare) {
  const HeatSum sum = sumOf(parts);
  return sum.content / sum.capacity * (1 - lossShare) + roomCelsius * lossShare + frictionRise;
}

}  // namespace suppertide::bread
