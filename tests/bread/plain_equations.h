// The published fermentation equations written out plainly, for independent solvers.
// They share no code with the product but the parameters.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>

#include "server/bread/dough.h"

namespace suppertide::bread {

// Mean temperature, population, logarithm of the adaptation, CO2, sugar, baker's yeast over what was added.
inline constexpr std::size_t kPlainStates = 6;
using PlainState = std::array<double, kPlainStates>;

class PlainEquations {
 public:
  PlainEquations(const DoughKind& kind, const DoughState& start)
      : kind_(kind), vigour_(start.vigour), startVolume_(start.volumeAtStart) {}

  static PlainState stateOf(const DoughState& start) {
    const double active = std::min(start.activeShare, 1 - 1e-15);
    return {start.celsius, start.ripeness, std::log(active / (1 - active)),
            start.gas,     start.sugar,    start.yeastFactor};
  }

  double rise(const PlainState& y) const {
    const double air = 0.08 * (y[0] + 273.15) / 298.15;
    return (1 + air + freeGas(y)) / (1 + air) / startVolume_;
  }

  PlainState slope(const PlainState& y, double air, double tau, double age) const {
    const double active = 1 / (1 + std::exp(-y[2]));
    const double mu = vigour_ * 0.42342 * activity(y[0]);
    const double culture = 2.70 * activity(y[0]) * active * y[1];
    const double yeast = 0.894 * kind_.yeastPercent * yeastActivity(y[0]) * (1 - std::exp(-age / 0.2)) * y[5];
    const double growing = vigour_ * kind_.yeastGrowth * yeastActivity(y[0]) / yeastActivity(27);
    const double sugar = std::max(0.0, y[4]);
    const double made = vigour_ * (culture + yeast) * kind_.gasFactor * sugar / (sugar + 0.5);
    const double free = freeGas(y);
    const double room = std::max(0.0, 1 - std::pow(free / kind_.gasLimit, 4));
    return {(air - y[0]) / tau,
            mu * kind_.growthFactor * active * y[1] * (1 - y[1]),
            mu,
            made * kind_.retention * room - kind_.leakPerHour * free,
            -made,
            growing * y[5] * (1 - y[5] * kind_.yeastPercent / 3.4)};
  }

 private:
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

  double freeGas(const PlainState& y) const {
    const double warmth = (y[0] + 273.15) / 298.15;
    const double held = kind_.waterShare * std::exp(0.540279 - 0.0391152 * y[0] + 0.000247008 * y[0] * y[0]) *
                        (y[0] + 273.15) / 273.15;
    const double b = y[3] * warmth - 0.08 * warmth - held;
    return (b + std::sqrt(b * b + 4 * y[3] * warmth * 0.08 * warmth)) / 2;
  }

  DoughKind kind_;
  double vigour_;
  double startVolume_;
};

}  // namespace suppertide::bread
