#include "server/kitchen/ingredients/shown_amount.h"

#include <array>
#include <cmath>

#include "absl/strings/str_cat.h"
#include "server/kitchen/units.h"

namespace suppertide::kitchen {
namespace {

std::string mixed(double amount) {
  const MixedNumber number = spoonAmount(amount);
  if (number.numerator == 0) return absl::StrCat(number.whole);
  const std::string part = absl::StrCat(number.numerator, "/", number.denominator);
  return number.whole == 0 ? part : absl::StrCat(number.whole, " ", part);
}

std::string decimal(double value, int places) {
  const double unit = std::pow(10, places);
  return absl::StrCat(std::round(value * unit) / unit);
}

std::string ounces(double grams) {
  const double whole = convertMass(grams, MassUnit::kGram, MassUnit::kOunce);
  if (whole < 16) return absl::StrCat(mixed(whole), " oz");
  const long rounded = std::lround(whole);
  const std::string pounds = absl::StrCat(rounded / 16, " lb");
  return rounded % 16 == 0 ? pounds : absl::StrCat(pounds, " ", rounded % 16, " oz");
}

struct Spoons {
  VolumeUnit cup, tbsp, tsp;
};
Spoons spoonsOf(Measures measures) {
  switch (measures) {
    case Measures::kUs:
      return {VolumeUnit::kUsCup, VolumeUnit::kUsTablespoon, VolumeUnit::kUsTeaspoon};
    case Measures::kImperial:
      return {VolumeUnit::kImperialCup, VolumeUnit::kMetricTablespoon, VolumeUnit::kMetricTeaspoon};
    case Measures::kAustralian:
      return {VolumeUnit::kMetricCup, VolumeUnit::kAustralianTablespoon, VolumeUnit::kMetricTeaspoon};
    case Measures::kMetric:
      break;
  }
  return {VolumeUnit::kMetricCup, VolumeUnit::kMetricTablespoon, VolumeUnit::kMetricTeaspoon};
}

}  // namespace

std::string shownMass(double grams, Measures measures) {
  if (measures == Measures::kUs || measures == Measures::kImperial) return ounces(grams);
  if (grams >= 1000) return absl::StrCat(decimal(grams / 1000, 2), " kg");
  return absl::StrCat(scaleGrams(grams), " g");
}

std::string shownVolume(double millilitres, Measures measures) {
  if (measures == Measures::kMetric) {
    if (millilitres >= 1000) return absl::StrCat(decimal(millilitres / 1000, 2), " l");
    return absl::StrCat(scaleGrams(millilitres), " ml");
  }
  const Spoons spoons = spoonsOf(measures);
  const double cups = convertVolume(millilitres, VolumeUnit::kMillilitre, spoons.cup);
  if (cups >= 0.24) return absl::StrCat(mixed(cups), cups > 1.0625 ? " cups" : " cup");
  const double tablespoons = convertVolume(millilitres, VolumeUnit::kMillilitre, spoons.tbsp);
  if (tablespoons >= 0.95) return absl::StrCat(mixed(tablespoons), " tbsp");
  return absl::StrCat(mixed(convertVolume(millilitres, VolumeUnit::kMillilitre, spoons.tsp)), " tsp");
}

std::string shownCount(double count) {
  return mixed(count);
}

}  // namespace suppertide::kitchen
