// A place's air temperature through the day.
#pragma once

#include <array>

namespace suppertide::bread {

// Either one temperature, or 24 values, each holding at its full hour of the
// local wall clock and linear between; it repeats daily. A value; degrees Celsius.
class TemperatureByHour {
 public:
  TemperatureByHour() : TemperatureByHour(21.0) {}
  explicit TemperatureByHour(double celsius) : constant_(true) { celsius_.fill(celsius); }
  // 24 equal values count as constant.
  explicit TemperatureByHour(const std::array<double, 24>& celsius);

  bool isConstant() const { return constant_; }
  // `hourOfDay` may be any finite number; 25 and -23 are one o'clock.
  double at(double hourOfDay) const;
  // The same place, warmer by this much all day.
  TemperatureByHour warmerBy(double kelvin) const;
  const std::array<double, 24>& hourly() const { return celsius_; }
  friend bool operator==(const TemperatureByHour&, const TemperatureByHour&) = default;

 private:
  std::array<double, 24> celsius_;
  bool constant_;
};

}  // namespace suppertide::bread
