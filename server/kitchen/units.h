// Temperatures, household measures and masses: exact inside, rounded only when shown.
//
// The one distinction people miss: a temperature and a difference of
// temperatures convert differently; 25 degrees Fahrenheit more are 13.9 kelvin
// more, without the 32.
#pragma once

#include "absl/status/statusor.h"

namespace suppertide::kitchen {

double celsiusFromFahrenheit(double fahrenheit);
double fahrenheitFromCelsius(double celsius);
double kelvinFromFahrenheitDifference(double degrees);
double fahrenheitDifferenceFromKelvin(double kelvin);

// Degrees Fahrenheit of a British gas mark: 1/4, 1/2 and whole marks 1 to 9.
// InvalidArgument for anything else.
absl::StatusOr<int> fahrenheitFromGasMark(double mark);

// The mark whose temperature is nearest, the lower one when two are as near.
// OutOfRange below 95 or above 260 degrees Celsius, where no mark is meant.
absl::StatusOr<double> gasMarkFromCelsius(double celsius);

// Nearest setting of a dial with 5 degree Celsius or 25 degree Fahrenheit
// steps, each in its own scale. Half steps go up.
int dialCelsius(double celsius);
int dialFahrenheit(double fahrenheit);

// Whole degrees to show for a limit that must be reached ("at least") or not be
// passed ("at most"): never on the unsafe side of the limit. A limit that is
// whole but for rounding noise (1e-6) stays as it is.
int shownAtLeast(double limit);
int shownAtMost(double limit);

enum class VolumeUnit {
  kMillilitre,
  kCentilitre,
  kDecilitre,
  kLitre,
  kUsTeaspoon,
  kUsTablespoon,
  kUsFluidOunce,
  kUsCup,
  kUsPint,
  kUsQuart,
  kUsGallon,
  kLabelTeaspoon,  // the rounded measures of US nutrition labels, 21 CFR 101.9
  kLabelTablespoon,
  kLabelFluidOunce,
  kLabelCup,
  kImperialTablespoon,  // the old one, 5/8 imperial fluid ounce
  kImperialFluidOunce,
  kImperialCup,
  kImperialPint,
  kMetricTeaspoon,
  kMetricTablespoon,
  kMetricCup,  // Australia, New Zealand, Canada
  kAustralianTablespoon,
};

enum class MassUnit { kMilligram, kGram, kKilogram, kOunce, kPound };

// Exact by definition, up to double precision.
double millilitresPer(VolumeUnit unit);
double gramsPer(MassUnit unit);
double convertVolume(double amount, VolumeUnit from, VolumeUnit to);
double convertMass(double amount, MassUnit from, MassUnit to);

// A spoon or cup amount as people measure it: whole + numerator/denominator.
struct MixedNumber {
  int whole = 0;
  int numerator = 0;  // 0 when there is no fraction
  int denominator = 1;
  friend bool operator==(const MixedNumber&, const MixedNumber&) = default;
};

// Nearest of 1/8, 1/4, 1/3, 1/2, 2/3, 3/4 and whole. Amounts above zero never
// become nothing: the least is 1/8. Negative amounts count as zero.
MixedNumber spoonAmount(double amount);

// Grams as a kitchen scale shows them: tenths below 10, whole from there.
double scaleGrams(double grams);

// Grams by the US label rule: tenths below 2, halves from 2 to 5, whole above
// (21 CFR 101.9(b)(5)-(7), from memory).
double labelGrams(double grams);

}  // namespace suppertide::kitchen
