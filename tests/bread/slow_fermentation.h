// The fermentation equations written out plainly and integrated in tiny steps: the
// slow twin of the product's solver. Its states are the published ones (mean
// temperature, population, logarithm of the adaptation, CO2, sugar), all by Heun's
// method; it shares no code with the product but the parameters.
#pragma once

#include <algorithm>
#include <cmath>

#include "server/bread/dough.h"
#include "server/bread/temperature_by_hour.h"

namespace suppertide::bread {

class SlowFermentation {
 public:
  SlowFermentation(const DoughKind& kind, const DoughState& start)
      : kind_(kind), vigour_(start.vigour), age_(start.hoursSinceMix), startVolume_(start.volumeAtStart) {
    const double active = std::min(start.activeShare, 1 - 1e-15);
    y_ = {start.celsius, start.ripeness, std::log(active / (1 - active)), start.gas, start.sugar};
  }

  void run(const TemperatureByHour& air, double hourOfDay, double tau, double hours, double step = 1e-3) {
    const int steps = static_cast<int>(std::lround(hours / step));
    for (int i = 0; i < steps; ++i) {
      const double now = i * step;
      const State first = slope(y_, air.at(hourOfDay + now), tau, age_ + now);
      const State second = slope(along(first, step), air.at(hourOfDay + now + step), tau, age_ + now + step);
      for (std::size_t k = 0; k < 5; ++k) y_[k] += step * (first[k] + second[k]) / 2;
    }
    age_ += hours;
  }

  double celsius() const { return y_[0]; }
  double ripeness() const { return y_[1]; }
  double rise() const {
    const double air = 0.08 * (y_[0] + 273.15) / 298.15;
    return (1 + air + freeGas(y_)) / (1 + air) / startVolume_;
  }

 private:
  using State = std::array<double, 5>;

  State along(const State& slope, double step) const {
    State moved = y_;
    for (std::size_t k = 0; k < 5; ++k) moved[k] += step * slope[k];
    return moved;
  }

  static double activity(double celsius) {
    if (celsius >= 36) return 0;
    const double x = (36 - celsius) / (36 - 27.1148);
    return std::pow(x * std::exp(1 - x), 2.981);
  }

  static double yeastActivity(double celsius) {
    const double low = 3, top = 37, high = 46;
    if (celsius <= low || celsius >= high) return 0;
    return (celsius - high) * std::pow(celsius - low, 2) /
           ((top - low) * ((top - low) * (celsius - top) - (top - high) * (top + low - 2 * celsius)));
  }

  double freeGas(const State& y) const {
    const double warmth = (y[0] + 273.15) / 298.15;
    const double held = kind_.waterShare * std::exp(0.540279 - 0.0391152 * y[0] + 0.000247008 * y[0] * y[0]) *
                        (y[0] + 273.15) / 273.15;
    const double b = y[3] * warmth - 0.08 * warmth - held;
    return (b + std::sqrt(b * b + 4 * y[3] * warmth * 0.08 * warmth)) / 2;
  }

  State slope(const State& y, double air, double tau, double age) const {
    const double active = 1 / (1 + std::exp(-y[2]));
    const double mu = vigour_ * 0.42342 * activity(y[0]);
    const double culture = 2.70 * activity(y[0]) * active * y[1];
    const double yeast = 0.894 * kind_.yeastPercent * yeastActivity(y[0]) * (1 - std::exp(-age / 0.2));
    const double made = vigour_ * (culture + yeast) * kind_.gasFactor * y[4] / (y[4] + 0.5);
    const double free = freeGas(y);
    const double room = std::max(0.0, 1 - std::pow(free / kind_.gasLimit, 4));
    return {(air - y[0]) / tau, mu * kind_.growthFactor * active * y[1] * (1 - y[1]), mu,
            made * kind_.retention * room - kind_.leakPerHour * free, -made};
  }

  DoughKind kind_;
  double vigour_;
  double age_;
  double startVolume_;
  State y_{};
};

}  // namespace suppertide::bread
