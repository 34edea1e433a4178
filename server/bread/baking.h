// Baking and after: minutes by piece mass, core end points, cooling, freshness.
#pragma once

#include "absl/status/statusor.h"
#include "server/base/interval.h"

namespace suppertide::bread {

enum class CrumbClass { kLean, kEnriched };

// t ~ m^0.35: computed from two cards of different ovens (0.34); conduction alone gives 2/3.
inline constexpr double kBakeMassExponent = 0.35;
inline constexpr Interval<double> kBakeScalingKilograms = {0.04, 1.0};

struct BakeTime {
  double minutes = 0;
  bool outsideRange = false;  // of kBakeScalingKilograms: trust the core temperature only
};
// InvalidArgument unless all are above 0. Same oven setpoint for both.
absl::StatusOr<BakeTime> bakeTime(double referenceMinutes, double referenceKilograms, double kilograms);

// Done within this, degrees Celsius; common practice, textbooks say 90 to 100 for all.
Interval<double> coreEndCelsius(CrumbClass crumb);

// Unit mass after cooling from which a piece is a loaf of "bread", below it a "roll" (21 CFR 136.3).
inline constexpr double kLoafKilograms = 0.227;
bool isLoaf(double cooledKilograms);

// Minutes before it may be cut or served: 10 for a 50 g roll and 60 for a 750 g loaf
// (common practice; the US Navy manual gives 90 to 120 before *storing* loaves), between
// and beyond by mass to the power 2/3, at least 5 and at most 120.
double leastCoolingMinutes(double kilograms);

// Water lost in baking and cooling, over the dough's mass; trade dictionary 0.098 to 0.115.
inline constexpr double kBakeLossShare = 0.105;
double bakedKilograms(double doughKilograms, double lossShare = kBakeLossShare);
// Loss that brings a dough with this share of solids to `bakedSolidsShare`.
double lossToSolids(double doughSolidsShare, double bakedSolidsShare);

// 1 when just cooled, 0 when fully stale: exp(-t/t0), t0 = 84 h at 21 degrees and
// 36 h at 0, geometric between and as far as the law was studied, -1 to 32 degrees; beyond,
// the nearest end counts. Law: Cornford et al. 1964; the two constants from memory. Not for
// frozen bread.
double freshness(double hoursSinceCool, double storeCelsius);

}  // namespace suppertide::bread
