// The plain equations in tiny steps of Heun's method: the slow twin of the product's solver.
#pragma once

#include "server/bread/temperature_by_hour.h"
#include "tests/bread/plain_equations.h"

namespace suppertide::bread {

class SlowFermentation {
 public:
  SlowFermentation(const DoughKind& kind, const DoughState& start)
      : equations_(kind, start), age_(start.hoursSinceMix), y_(PlainEquations::stateOf(start)) {}

  void run(const TemperatureByHour& air, double hourOfDay, double tau, double hours, double step = 1e-3) {
    const int steps = static_cast<int>(std::lround(hours / step));
    for (int i = 0; i < steps; ++i) {
      const double now = i * step, then = now + step;
      const PlainState first = equations_.slope(y_, air.at(hourOfDay + now), tau, age_ + now);
      const PlainState second =
          equations_.slope(along(first, step), air.at(hourOfDay + then), tau, age_ + then);
      for (std::size_t k = 0; k < kPlainStates; ++k) y_[k] += step * (first[k] + second[k]) / 2;
    }
    age_ += hours;
  }

  double celsius() const { return y_[0]; }
  double ripeness() const { return y_[1]; }
  double rise() const { return equations_.rise(y_); }

 private:
  PlainState along(const PlainState& slope, double step) const {
    PlainState moved = y_;
    for (std::size_t k = 0; k < kPlainStates; ++k) moved[k] += step * slope[k];
    return moved;
  }

  PlainEquations equations_;
  double age_;
  PlainState y_;
};

}  // namespace suppertide::bread
