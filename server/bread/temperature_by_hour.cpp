#include "server/bread/temperature_by_hour.h"

#include <algorithm>
#include <cmath>

namespace suppertide::bread {

TemperatureByHour::TemperatureByHour(const std::array<double, 24>& celsius)
    : celsius_(celsius),
      constant_(std::all_of(celsius.begin(), celsius.end(), [&](double c) { return c == celsius[0]; })) {}

double TemperatureByHour::at(double hourOfDay) const {
  if (constant_) return celsius_[0];
  double hour = std::fmod(hourOfDay, 24.0);
  if (hour < 0) hour += 24;
  const std::size_t before = std::min<std::size_t>(static_cast<std::size_t>(hour), 23);
  const double share = hour - static_cast<double>(before);
  return celsius_[before] * (1 - share) + celsius_[(before + 1) % 24] * share;
}

TemperatureByHour TemperatureByHour::warmerBy(double kelvin) const {
  TemperatureByHour warmer = *this;
  for (double& celsius : warmer.celsius_) celsius += kelvin;
  return warmer;
}

}  // namespace suppertide::bread
