// Doughs, levains and places for tests that say only what matters.
#pragma once

#include <array>
#include <cmath>

#include "server/bread/forecast.h"

namespace suppertide::bread {

inline Stay always(double celsius, double hours = kOpenEnded) {
  return {hours, TemperatureByHour(celsius), kStillAir};
}

// A room of `mean` degrees that is warmest at 15:00 by `swing` and coldest at 03:00.
inline TemperatureByHour swinging(double mean, double swing) {
  std::array<double, 24> celsius;
  for (std::size_t hour = 0; hour < celsius.size(); ++hour) {
    celsius[hour] = mean + swing * std::sin((static_cast<double>(hour) - 9) * 2 * 3.14159265358979 / 24);
  }
  return TemperatureByHour(celsius);
}

inline DoughKind halfWholeLevain() {
  return withComposition(kLevainKind, 0.5, 0, 0);
}

inline DoughState fed(double parts, double celsius, const Culture& starter = {}) {
  return *mixLevain(halfWholeLevain(), starter, {1, parts, parts}, celsius, 0.2);
}

// Enriched dough with 19 % levain that was used at 7 h, as the model's runs have it.
inline DoughKind enriched() {
  DoughKind kind = kEnrichedKind;
  kind.gasFactor = 0.80;
  kind.growthFactor = 0.85;
  return kind;
}

inline DoughState enrichedMixed(double celsius, double kilograms = 1) {
  return *mix(enriched(), {.ripeness = 0.583, .lag = kPeakLevainLag},
              {.inoculation = 0.185, .cultureShare = 0.19, .celsius = celsius, .kilograms = kilograms});
}

}  // namespace suppertide::bread
