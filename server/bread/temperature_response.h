// How fast yeasts and lactobacilli work at a temperature, and how much CO2 water holds.
// Temperatures in degrees Celsius, rates per hour.
#pragma once

namespace suppertide::bread {

// mu(T) = a (Tmax - T)^b exp(-c (Tmax - T)), 0 from Tmax up.
// Gaenzle, Ehmann, Hammes 1998, Appl. Environ. Microbiol. 64:2616; coefficients read second-hand.
struct GrowthCurve {
  double maximumCelsius;
  double a;
  double b;
  double c;
  double rate(double celsius) const;
  double optimumCelsius() const { return maximumCelsius - b / c; }
};
inline constexpr GrowthCurve kSourdoughYeast = {36, 0.0124, 2.981, 0.3355};
inline constexpr GrowthCurve kLactobacilli = {41, 0.1267, 1.5404, 0.1931};

// The same curve of the sourdough yeast over its maximum: 0 to 1.
inline constexpr double kSourdoughYeastBestRate = 0.42342;        // per hour; computed
inline constexpr double kSourdoughYeastOptimumCelsius = 27.1148;  // computed
double sourdoughYeastActivity(double celsius);

// Cardinal temperature model with inflection (Rosso et al. 1993): `best` at
// `optimum`, 0 outside (minimum, maximum).
struct CardinalCurve {
  double best;
  double minimumCelsius;
  double optimumCelsius;
  double maximumCelsius;
  double rate(double celsius) const;
};
// Gassing of baker's yeast; assumed, inside what is published.
inline constexpr CardinalCurve kBakersYeast = {1, 3, 37, 46};

// Volumes of CO2, at the water's temperature, that a volume of water holds at
// 1 atm. A fit to Murray and Riley 1971, good to 1 % from 1 to 35 degrees.
double carbonDioxideHeld(double celsius);

}  // namespace suppertide::bread
