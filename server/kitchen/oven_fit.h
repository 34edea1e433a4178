// Fits an oven's curve to what its owner read off a thermometer.
#pragma once

#include <vector>

#include "absl/status/statusor.h"
#include "server/kitchen/oven.h"

namespace suppertide::kitchen {

struct OvenReading {
  double minute = 0;
  double celsius = 0;
};

struct CurveFit {
  ThermalCurve curve;         // the given curve with the fitted parameters replaced
  double residualBefore = 0;  // root mean square, kelvin, of the given curve from the first reading on
  double residualAfter = 0;   // the same of the fitted curve
};

// Least squares fit of maximum and time constant to readings of one unbroken
// heating at full power, at least three, in any order; three fit exactly where
// a curve through them exists.
// InvalidArgument, naming the reading, when they are too few, share a minute,
// are not numbers an oven can have, do not rise, rise faster than 60 K/min, or
// when the best curve still misses them by more than 15 K.
absl::StatusOr<CurveFit> fitHeating(const ThermalCurve& prior, std::vector<OvenReading> readings);

// The same for cooling with the heat off: fits the time constant of `door` to at
// least two readings that fall and stay above the room.
absl::StatusOr<CurveFit> fitCooling(const ThermalCurve& prior, std::vector<OvenReading> readings, Door door);

}  // namespace suppertide::kitchen
