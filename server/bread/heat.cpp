#include "server/bread/heat.h"

#include <cmath>
#include <numbers>

namespace suppertide::bread {

double Lump::areaSquareMetres() const {
  const double volume = kilograms / densityKgPerCubicMetre;
  const double radius = std::cbrt(0.75 * volume / std::numbers::pi);
  return areaOverSphere * 4 * std::numbers::pi * radius * radius;
}

double Lump::lengthMetres() const {
  return kilograms / densityKgPerCubicMetre / areaSquareMetres();
}

double Lump::biot(double surfaceW) const {
  return surfaceW * lengthMetres() / conductivityWPerMK;
}

double Lump::overallW(double surfaceW) const {
  // 0.6 Lc/k is the linear driving force's R/(5k) of a sphere.
  return 1 / (1 / surfaceW + 0.6 * lengthMetres() / conductivityWPerMK);
}

double Lump::timeConstantHours(double surfaceW) const {
  constexpr double kSecondsPerHour = 3600;
  return kilograms * specificHeatJPerKgK / (overallW(surfaceW) * areaSquareMetres()) / kSecondsPerHour;
}

double lumpAfter(double start, double air, double airPerHour, double tau, double hours) {
  if (std::isinf(tau)) return start;
  if (tau <= 0) return air + airPerHour * hours;
  const double lag = airPerHour * tau;
  return air + airPerHour * hours - lag + (start - air + lag) * std::exp(-hours / tau);
}

double sphereFourier(double start, double surface, double centre) {
  return std::log(2 * (surface - start) / (surface - centre)) / (std::numbers::pi * std::numbers::pi);
}

}  // namespace suppertide::bread
