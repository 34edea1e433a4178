// Baking and after: minutes by piece mass, core end points, steam, cooling, freshness, warming again.
// Ranges hold both ends.
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

// For a recipe that says no time: from two cards, a roll of 50 g 15 min at 204 degrees and loaves of
// 610 and 765 g 25 to 40 min at 218 to 232 (US Army), by the power above. Rolls that touch took 25 min at
// 191 degrees (institutional recipe), so the range of light pieces is the wider one.
struct BakeRange {
  Interval<double> minutes;
  double setpointCelsius = 0;  // common practice, no source
  bool outsideRange = false;
};
// InvalidArgument unless `kilograms` is above 0.
absl::StatusOr<BakeRange> usualBake(double kilograms, CrumbClass crumb);

// How long steam is left in, minutes, where a recipe doesn't say; common practice, no source.
double usualSteamMinutes(double bakeMinutes);

// Done within this, degrees Celsius; common practice, textbooks say 90 to 100 for all.
Interval<double> coreEndCelsius(CrumbClass crumb);

// Unit mass after cooling from which a piece is a loaf of "bread", below it a "roll" (21 CFR 136.3).
inline constexpr double kLoafKilograms = 0.227;
bool isLoaf(double cooledKilograms);

// Minutes before it may be cut or served: 10 for a 50 g roll and 60 for a 750 g loaf
// (common practice; the US Navy manual gives 90 to 120 before *storing* loaves), between
// and beyond by mass to the power 2/3, at least 5 and at most 120.
double leastCoolingMinutes(double kilograms);
// From there to twice that: 10 to 20 min for rolls served warm, 60 to 120 for loaves.
Interval<double> coolingMinutes(double kilograms);

// Water lost in baking and cooling, over the dough's mass; trade dictionary 0.098 to 0.115.
inline constexpr double kBakeLossShare = 0.105;
inline constexpr Interval<double> kBakeLossRange = {0.098, 0.115};
double bakedKilograms(double doughKilograms, double lossShare = kBakeLossShare);
// Loss that brings a dough with this share of solids to `bakedSolidsShare`.
double lossToSolids(double doughSolidsShare, double bakedSolidsShare);

// 1 when just cooled, 0 when fully stale: exp(-t/t0), t0 = 84 h at 21 degrees and
// 36 h at 0, geometric between and as far as the law was studied, -1 to 32 degrees; beyond,
// the nearest end counts. Law: Cornford et al. 1964; the two constants from memory. Not for
// frozen bread.
double freshness(double hoursSinceCool, double storeCelsius);
// Hours at room temperature until freshness is kNoticeablyStaler, for t0 of 3 to 4 days.
inline constexpr double kNoticeablyStaler = 0.7;  // assumed
Interval<double> freshHours();

// Warming again what has cooled: until the crumb is hot, which undoes staling for an hour or so. A roll
// of 50 g 5 to 8 min, others by mass as bakes; common practice, no source.
inline constexpr double kRefreshCelsius = 180;
Interval<double> refreshMinutes(double kilograms);

}  // namespace suppertide::bread
