#include "server/bread/temperature_response.h"

#include <cmath>

namespace suppertide::bread {

double GrowthCurve::rate(double celsius) const {
  const double below = maximumCelsius - celsius;
  return below > 0 ? a * std::pow(below, b) * std::exp(-c * below) : 0.0;
}

double sourdoughYeastActivity(double celsius) {
  const double x = (kSourdoughYeast.maximumCelsius - celsius) /
                   (kSourdoughYeast.maximumCelsius - kSourdoughYeastOptimumCelsius);
  // The exact rearrangement (x e^(1-x))^b of the curve over its maximum; one logarithm, one exponential.
  return x > 0 ? std::exp(kSourdoughYeast.b * (std::log(x) + 1 - x)) : 0.0;
}

double CardinalCurve::rate(double celsius) const {
  if (celsius <= minimumCelsius || celsius >= maximumCelsius) return 0;
  const double fromMinimum = celsius - minimumCelsius;
  const double span = optimumCelsius - minimumCelsius;
  const double bend = span * (celsius - optimumCelsius) -
                      (optimumCelsius - maximumCelsius) * (optimumCelsius + minimumCelsius - 2 * celsius);
  return best * (celsius - maximumCelsius) * fromMinimum * fromMinimum / (span * bend);
}

double carbonDioxideHeld(double celsius) {
  const double bunsen = std::exp(0.540279 - 0.0391152 * celsius + 0.000247008 * celsius * celsius);
  return bunsen * (celsius + 273.15) / 273.15;
}

}  // namespace suppertide::bread
