// Fits an oven's curve to what its owner read off a thermometer.
#pragma once

#include <string>
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
  double residualAfter = 0;   // the same of the fitted curve; both over the readings not left out
  // By the readings as given: whether it was left out, and both curves at its minute.
  struct At {
    bool leftOut = false;
    double before = 0;
    double after = 0;
  };
  std::vector<At> readings;
};

// A reading that no oven can give, by its index as given, and why: "is not above the one before".
struct ReadingFault {
  int reading = 0;
  std::string why;
};

// All of them, in order; too few readings are no fault of one.
std::vector<ReadingFault> heatingFaults(const std::vector<OvenReading>& readings);
std::vector<ReadingFault> coolingFaults(double roomCelsius, const std::vector<OvenReading>& readings);

// Least squares fit of maximum and time constant to readings of one unbroken
// heating at full power, at least three, in any order; three fit exactly where
// a curve through them exists. From five readings on, up to a quarter of them
// is left out when the others agree at least three times better without.
// InvalidArgument, naming the reading, when they are too few, share a minute,
// are not numbers an oven can have, do not rise, rise faster than 60 K/min, or
// when the best curve still misses them by more than 15 K.
absl::StatusOr<CurveFit> fitHeating(const ThermalCurve& prior, std::vector<OvenReading> readings);

// The same for cooling with the heat off: fits the time constant of `door` to at
// least two readings that fall and stay above the room.
absl::StatusOr<CurveFit> fitCooling(const ThermalCurve& prior, std::vector<OvenReading> readings, Door door);

// A rise timed on a cooking day: from the dial turned until the oven said that it was hot.
struct OvenRise {
  double fromCelsius = 22;
  double toCelsius = 180;
  double minutes = 0;
};

std::vector<ReadingFault> riseFaults(const ThermalCurve& prior, const std::vector<OvenRise>& rises);

// Corrects the heating constant by rises: the prior counts as much as `priorRises`
// of them. Deviations are of the logarithm, so that half and double weigh the
// same. From three on, one that is off by half or double against the middle one is left out;
// CurveFit::readings tell the temperatures where the curves are at the rise's end,
// the residuals are in kelvin there.
// InvalidArgument for a rise that no oven can make; none changes nothing.
absl::StatusOr<CurveFit> learnRises(const ThermalCurve& prior, const std::vector<OvenRise>& rises,
                                    double priorRises);

// The same for falls with the door ajar, from `fromCelsius` down to `toCelsius`: corrects ajarMinutes.
std::vector<ReadingFault> fallFaults(const ThermalCurve& prior, const std::vector<OvenRise>& falls);
absl::StatusOr<CurveFit> learnFalls(const ThermalCurve& prior, const std::vector<OvenRise>& falls,
                                    double priorFalls);

}  // namespace suppertide::kitchen
