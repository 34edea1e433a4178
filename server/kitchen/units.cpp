#include "server/kitchen/units.h"

#include <array>
#include <cmath>

#include "absl/status/status.h"
#include "absl/strings/str_cat.h"

namespace suppertide::kitchen {
namespace {

constexpr double kAmountNoise = 1e-6;

// The US gallon is 231 cubic inches, the imperial one 4.54609 litres, both by definition.
constexpr double kUsGallon = 3785.411784;
constexpr double kImperialPint = 568.26125;
constexpr double kPound = 453.59237;

struct GasMark {
  double mark;
  int fahrenheit;
};
constexpr std::array<GasMark, 11> kGasMarks = {{{0.25, 225},
                                                {0.5, 250},
                                                {1, 275},
                                                {2, 300},
                                                {3, 325},
                                                {4, 350},
                                                {5, 375},
                                                {6, 400},
                                                {7, 425},
                                                {8, 450},
                                                {9, 475}}};

int toStep(double value, int step) {
  return static_cast<int>(std::floor(value / step + 0.5)) * step;
}

}  // namespace

double celsiusFromFahrenheit(double fahrenheit) {
  return (fahrenheit - 32) / 1.8;
}
double fahrenheitFromCelsius(double celsius) {
  return celsius * 1.8 + 32;
}
double kelvinFromFahrenheitDifference(double degrees) {
  return degrees / 1.8;
}
double fahrenheitDifferenceFromKelvin(double kelvin) {
  return kelvin * 1.8;
}

absl::StatusOr<int> fahrenheitFromGasMark(double mark) {
  for (const GasMark& row : kGasMarks) {
    if (row.mark == mark) return row.fahrenheit;
  }
  return absl::InvalidArgumentError(absl::StrCat("convert gas mark: there is no mark ", mark));
}

absl::StatusOr<double> gasMarkFromCelsius(double celsius) {
  if (!(celsius >= 95 && celsius <= 260)) {
    return absl::OutOfRangeError(absl::StrCat("convert to gas mark: ", celsius, " C is off the scale"));
  }
  const double fahrenheit = fahrenheitFromCelsius(celsius);
  const GasMark* nearest = &kGasMarks.front();
  for (const GasMark& row : kGasMarks) {
    if (std::abs(row.fahrenheit - fahrenheit) < std::abs(nearest->fahrenheit - fahrenheit)) nearest = &row;
  }
  return nearest->mark;
}

int dialCelsius(double celsius) {
  return toStep(celsius, 5);
}
int dialFahrenheit(double fahrenheit) {
  return toStep(fahrenheit, 25);
}
int shownAtLeast(double limit) {
  return static_cast<int>(std::ceil(limit - kAmountNoise));
}
int shownAtMost(double limit) {
  return static_cast<int>(std::floor(limit + kAmountNoise));
}

double millilitresPer(VolumeUnit unit) {
  switch (unit) {
    case VolumeUnit::kMillilitre:
      return 1;
    case VolumeUnit::kCentilitre:
      return 10;
    case VolumeUnit::kDecilitre:
      return 100;
    case VolumeUnit::kLitre:
      return 1000;
    case VolumeUnit::kUsTeaspoon:
      return kUsGallon / 768;
    case VolumeUnit::kUsTablespoon:
      return kUsGallon / 256;
    case VolumeUnit::kUsFluidOunce:
      return kUsGallon / 128;
    case VolumeUnit::kUsCup:
      return kUsGallon / 16;
    case VolumeUnit::kUsPint:
      return kUsGallon / 8;
    case VolumeUnit::kUsQuart:
      return kUsGallon / 4;
    case VolumeUnit::kUsGallon:
      return kUsGallon;
    case VolumeUnit::kLabelTeaspoon:
      return 5;
    case VolumeUnit::kLabelTablespoon:
      return 15;
    case VolumeUnit::kLabelFluidOunce:
      return 30;
    case VolumeUnit::kLabelCup:
      return 240;
    case VolumeUnit::kImperialTablespoon:
      return kImperialPint / 32;
    case VolumeUnit::kImperialFluidOunce:
      return kImperialPint / 20;
    case VolumeUnit::kImperialCup:
      return kImperialPint / 2;
    case VolumeUnit::kImperialPint:
      return kImperialPint;
    case VolumeUnit::kMetricTeaspoon:
      return 5;
    case VolumeUnit::kMetricTablespoon:
      return 15;
    case VolumeUnit::kMetricCup:
      return 250;
    case VolumeUnit::kAustralianTablespoon:
      return 20;
  }
  return 1;
}

double gramsPer(MassUnit unit) {
  switch (unit) {
    case MassUnit::kMilligram:
      return 0.001;
    case MassUnit::kGram:
      return 1;
    case MassUnit::kKilogram:
      return 1000;
    case MassUnit::kOunce:
      return kPound / 16;
    case MassUnit::kPound:
      return kPound;
  }
  return 1;
}

double convertVolume(double amount, VolumeUnit from, VolumeUnit to) {
  return amount * millilitresPer(from) / millilitresPer(to);
}

double convertMass(double amount, MassUnit from, MassUnit to) {
  return amount * gramsPer(from) / gramsPer(to);
}

MixedNumber spoonAmount(double amount) {
  if (!(amount > 0)) return {};
  constexpr std::array<MixedNumber, 8> kParts = {
      {{0, 0, 1}, {0, 1, 8}, {0, 1, 4}, {0, 1, 3}, {0, 1, 2}, {0, 2, 3}, {0, 3, 4}, {1, 0, 1}}};
  const double whole = std::floor(amount);
  const double rest = amount - whole;
  const auto size = [](const MixedNumber& part) {
    return part.whole + static_cast<double>(part.numerator) / part.denominator;
  };
  MixedNumber best = kParts.front();
  for (const MixedNumber& part : kParts) {
    if (std::abs(size(part) - rest) < std::abs(size(best) - rest) - 1e-12) best = part;
  }
  best.whole += static_cast<int>(whole);
  if (best == MixedNumber{}) return {0, 1, 8};
  return best;
}

double scaleGrams(double grams) {
  return grams < 10 ? std::round(grams * 10) / 10 : std::round(grams);
}

double labelGrams(double grams) {
  if (grams < 2) return std::round(grams * 10) / 10;
  if (grams <= 5) return std::round(grams * 2) / 2;
  return std::round(grams);
}

}  // namespace suppertide::kitchen
