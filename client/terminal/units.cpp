#include "client/terminal/units.h"

#include <cmath>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"

namespace suppertide::terminal {
namespace {

constexpr double kGramsInOunce = 28.349523125;  // the international avoirdupois ounce, exact
constexpr double kMillimetresInInch = 25.4;     // exact
constexpr int kFahrenheitDialStep = 5;
constexpr double kLimitNoise = 0.001;  // of converting there and back

double fahrenheitOf(double celsius) {
  return celsius * 9.0 / 5.0 + 32.0;
}

}  // namespace

Units::Units(const v1::Household& household)
    : fahrenheit_(household.temperature_unit() == v1::TEMPERATURE_UNIT_FAHRENHEIT),
      ounces_(household.measure_system() == v1::MEASURE_SYSTEM_US) {}

int Units::dialValue(int celsius) const {
  if (!fahrenheit_) return celsius;
  return kFahrenheitDialStep * static_cast<int>(std::lround(fahrenheitOf(celsius) / kFahrenheitDialStep));
}

std::string Units::degrees(double celsius) const {
  return absl::StrCat(std::lround(fahrenheit_ ? fahrenheitOf(celsius) : celsius), sign());
}

std::string Units::degreesAtLeast(double celsius) const {
  const double shown = fahrenheit_ ? fahrenheitOf(celsius) : celsius;
  return absl::StrCat(static_cast<long>(std::ceil(shown - kLimitNoise)), sign());
}

std::string Units::degreesAtMost(double celsius) const {
  const double shown = fahrenheit_ ? fahrenheitOf(celsius) : celsius;
  return absl::StrCat(static_cast<long>(std::floor(shown + kLimitNoise)), sign());
}

std::string Units::mass(double grams) const {
  const std::string metric =
      grams < 9.95 ? absl::StrFormat("%.1f g", grams) : absl::StrCat(std::lround(grams), " g");
  if (!ounces_) return metric;
  return absl::StrCat(metric, absl::StrFormat(" (%.*f oz)", grams < 100 ? 2 : 1, grams / kGramsInOunce));
}

std::string Units::atMost(int widthMm, int depthMm) const {
  if (!ounces_) return absl::StrCat(widthMm / 10, " x ", depthMm / 10, " cm");
  const auto inches = [](int length) { return std::floor(4 * length / kMillimetresInInch) / 4; };
  return absl::StrCat(inches(widthMm), " x ", inches(depthMm), " in");
}

std::string Units::height(int heightMm) const {
  const double length = heightMm / (ounces_ ? kMillimetresInInch : 10.0);
  return absl::StrCat(std::round(2 * length) / 2, ounces_ ? " in" : " cm");
}

}  // namespace suppertide::terminal
