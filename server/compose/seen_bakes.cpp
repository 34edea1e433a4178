#include "server/compose/seen_bakes.h"

#include <algorithm>
#include <cmath>

namespace suppertide::compose {
namespace {

// Common practice, no source.
constexpr double kSwingKelvin = 15;
constexpr double kMostTimes = 3;
// Below this distance to the oven the centre gets there too slowly to reckon with.
constexpr double kLeastKelvin = 5;

}  // namespace

planning::Minute bakeMinutesBySight(const v1::OvenNeed& need, int setpointCelsius, planning::Minute planned,
                                    planning::Minute start, const std::vector<BakeReading>& readings) {
  if (!need.has_start_core_celsius() || !need.has_end_core_celsius() || readings.empty()) return planned;
  double oven = setpointCelsius;
  const double wanted = need.end_core_celsius();
  if (planned <= 0 || wanted <= need.start_core_celsius() || wanted + kLeastKelvin >= oven) return planned;
  const double pace = planned / std::log((oven - need.start_core_celsius()) / (oven - wanted));
  double core = need.start_core_celsius();
  double minute = 0;
  for (const BakeReading& reading : readings) {
    if (!reading.isCore && reading.when < start) continue;
    const double then = std::max(minute, static_cast<double>(reading.when - start));
    core = oven - (oven - core) * std::exp(-(then - minute) / pace);
    minute = then;
    if (reading.isCore)
      core = reading.celsius;
    else
      oven = std::abs(reading.celsius - setpointCelsius) > kSwingKelvin ? reading.celsius : setpointCelsius;
  }
  if (core >= wanted) return static_cast<planning::Minute>(std::ceil(minute));
  const double most = kMostTimes * planned;
  if (wanted + kLeastKelvin >= oven || core >= oven) return static_cast<planning::Minute>(most);
  const double left = pace * std::log((oven - core) / (oven - wanted));
  return static_cast<planning::Minute>(std::ceil(std::clamp(minute + left, minute, std::max(minute, most))));
}

}  // namespace suppertide::compose
