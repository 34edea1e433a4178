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

absl::StatusOr<BakeRange> usualBake(double kilograms, CrumbClass crumb) {
  constexpr double kRollMinutes = 15, kRollKilograms = 0.05;
  constexpr double kHeavyKilograms = 0.6;  // from here on a range of the loaves' cards
  const auto time = bakeTime(kRollMinutes, kRollKilograms, kilograms);
  if (!time.ok()) return time.status();
  const double lightness = std::clamp(
      std::log(kHeavyKilograms / kilograms) / std::log(kHeavyKilograms / kRollKilograms), 0.0, 1.0);
  BakeRange range;
  range.minutes = {0.85 * time->minutes, (1.15 + 0.5 * lightness) * time->minutes};
  range.outsideRange = time->outsideRange;
  const bool loaf = isLoaf(bakedKilograms(kilograms));
  if (crumb == CrumbClass::kLean)
    range.setpointCelsius = loaf ? 230 : 220;
  else
    range.setpointCelsius = loaf ? 190 : 205;
  return range;
}

double usualSteamMinutes(double bakeMinutes) {
  constexpr double kUsual = 15;
  return std::min(kUsual, bakeMinutes / 2);
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

Interval<double> coolingMinutes(double kilograms) {
  const double least = leastCoolingMinutes(kilograms);
  return {least, 2 * least};
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

Interval<double> freshHours() {
  constexpr double kShortHours = 72, kLongHours = 96;
  const double share = -std::log(kNoticeablyStaler);
  return {share * kShortHours, share * kLongHours};
}

Interval<double> refreshMinutes(double kilograms) {
  const double times = std::pow(kilograms / 0.05, kBakeMassExponent);
  return {5 * times, 8 * times};
}

}  // namespace suppertide::bread
