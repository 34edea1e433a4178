// Warming and cooling of a piece of dough as one lump, corrected for its inside resistance.
//
// The lump is the *mean* temperature; in a kilogram the core lags it by some
// degrees in the first hours.
#pragma once

namespace suppertide::bread {

// Convection and radiation together, in W/(m2 K). All assumed, inside textbook ranges.
inline constexpr double kCoveredBowl = 5;
inline constexpr double kStillAir = 7;
inline constexpr double kMovedAir = 20;
inline constexpr double kWaterBath = 100;

// Matter and form of a piece: fitted and assumed values, named in the constants' order.
struct Lump {
  double kilograms = 1;
  double densityKgPerCubicMetre = 1000;  // between ungassed and risen
  double specificHeatJPerKgK = 2800;     // Rask 1989, quoted
  double conductivityWPerMK = 0.45;      // compact dough, from memory of the same
  double areaOverSphere = 1.2;           // assumed

  double lengthMetres() const;  // volume over area
  double areaSquareMetres() const;
  double biot(double surfaceW) const;
  // 1/U = 1/h + 0.6 Lc/k, in W/(m2 K).
  double overallW(double surfaceW) const;
  double timeConstantHours(double surfaceW) const;
};

// Temperature after `hours` beside air that starts at `air` and changes by
// `airPerHour`: exact for the lump. Infinite `tau` keeps `start`; 0 follows the air.
double lumpAfter(double start, double air, double airPerHour, double tau, double hours);

// Fourier number (on the radius) at which the centre of a sphere at `start` with
// its surface held at `surface` reaches `centre`; first term of the series.
double sphereFourier(double start, double surface, double centre);

}  // namespace suppertide::bread
