#include "server/bread/baking.h"

#include <algorithm>
#include <cmath>

#include "absl/status/status.h"
#include "absl/strings/str_cat.h"

namespace suppertide::bread {

absl::StatusOr<BakeTime> bakeTime(double referenceMinutes, double referenceKilograms, double kilograms) {
  for (double value : {referenceMinutes, referenceKilograms, kilograms}) {
    if (!(std::isfinite(value) && value > 0)) {
      return absl::InvalidArgumentError(
          absl::StrCat("bake time: minutes and masses must be above 0, but are ", referenceMinutes, ", ",
                       referenceKilograms, ", ", kilograms));
    }
  }
  const auto inRange = [](double kg) {
    return kg >= kBakeScalingKilograms.start && kg <= kBakeScalingKilograms.limit;
  };
  return BakeTime{referenceMinutes * std::pow(kilograms / referenceKilograms, kBakeMassExponent),
                  !inRange(kilograms) || !inRange(referenceKilograms)};
}

Interval<double> coreEndCelsius(CrumbClass crumb) {
  return crumb == CrumbClass::kLean ? Interval<double>{93, 99} : Interval<double>{85, 94};
}

bool isLoaf(double cooledKilograms) {
  return cooledKilograms >= kLoafKilograms;
}

double leastCoolingMinutes(double kilograms) {
  return std::clamp(10 * std::pow(kilograms / 0.05, 2.0 / 3.0), 5.0, 120.0);
}

double bakedKilograms(double doughKilograms, double lossShare) {
  return doughKilograms * (1 - lossShare);
}

double lossToSolids(double doughSolidsShare, double bakedSolidsShare) {
  return 1 - doughSolidsShare / bakedSolidsShare;
}

double freshness(double hoursSinceCool, double storeCelsius) {
  constexpr double kHoursAtZero = 36;
  constexpr double kHoursAtRoom = 84;
  const double share = std::clamp(storeCelsius, -1.0, 32.0) / 21.0;
  const double timeConstant = kHoursAtZero * std::pow(kHoursAtRoom / kHoursAtZero, share);
  return std::exp(-std::max(0.0, hoursSinceCool) / timeConstant);
}

}  // namespace suppertide::bread
