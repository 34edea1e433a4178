// How heat reaches the middle of food: textbook transient conduction.
//
// Temperatures may be in any one scale with a common zero (only differences
// count); lengths are metres, diffusivity m2/s. Each time function returns
// OutOfRange when the end temperature is not between start and oven, because
// then no time is long enough.
#pragma once

#include "absl/status/statusor.h"

namespace suppertide::kitchen {

inline constexpr double kMeatDiffusivity = 1.3e-7;  // textbook exercise value, m2/s

enum class Shape { kSlab, kSphere };

// First root and coefficient of the one-term series.
struct FirstTerm {
  double zeta = 0;
  double coefficient = 0;
};

// For Biot number `biot` > 0; infinity gives the fixed-surface limits.
FirstTerm firstTerm(Shape shape, double biot);

// Lumped: tau ln[(oven - start) / (oven - end)], in the unit of `tau`.
absl::StatusOr<double> lumpedTime(double tau, double oven, double start, double end);

// One-term time to the centre, in seconds; `half` is half the thickness or the radius.
absl::StatusOr<double> firstTermSeconds(Shape shape, double biot, double half, double diffusivity,
                                        double oven, double start, double end);

// Time at `otherOven` over time at `oven`, all else equal. The size cancels;
// `biot` 0 means lumped.
absl::StatusOr<double> timeRatio(Shape shape, double biot, double oven, double otherOven, double start,
                                 double end);

// Time factor for the same shape at another mass: (after / before)^(2/3).
double massTimeFactor(double massBefore, double massAfter);

// Panofsky's rule for a whole bird at about 325 F: hours from kilograms.
double panofskyHours(double kilograms);

}  // namespace suppertide::kitchen
