// May this dish share an oven at another setpoint, and how long does it then take?
//
// Two bounds hold the answer: thin things follow the oven like a lump, thick
// ones wait for heat to reach the middle. A lump gains most from a hotter oven,
// a thick piece least, so the time is always a range, and a plan counts on
// `likely` while the cook checks from `checkFrom`.
#pragma once

#include <optional>

#include "absl/status/statusor.h"
#include "server/kitchen/source.h"

namespace suppertide::kitchen {

enum class BakeClass { kYeastBread, kCustard, kSponge, kPastry, kCasserole, kVegetables, kRoast };

struct Bake {
  BakeClass bakeClass = BakeClass::kCasserole;
  double setpointCelsius = 180;  // the recipe's
  double minutes = 0;            // at the recipe's setpoint
  double startCelsius = 20;      // core
  double endCelsius = 95;
  std::optional<double> thicknessMm;   // of the food; none means typical of its class
  std::optional<double> leastCelsius;  // the recipe's own range, where it has one
  std::optional<double> mostCelsius;
};

// Both ends included.
struct SetpointRange {
  double leastCelsius = 0;
  double mostCelsius = 0;
};

struct BakeTime {
  double checkFrom = 0;  // minutes
  double likely = 0;
  double atMost = 0;
};

struct ClassTolerance {
  BakeClass bakeClass;
  double kelvin;
  double typicalThicknessMm;
  Source source;
};

const ClassTolerance& toleranceOf(BakeClass bakeClass);

// Setpoints the dish accepts: the recipe's own ends where given, else the class's.
// Never down to the end temperature: the lower end stays at least 5 K above it.
SetpointRange allowedSetpoints(const Bake& bake);

// Time at `setpointCelsius`. At the recipe's own setpoint `likely` is the
// recipe's time, checked from 10 % earlier to 10 % later.
// InvalidArgument for a bake without sense (minutes not above 0, end not above
// start); OutOfRange when the end temperature is not below either oven temperature.
// A setpoint outside allowedSetpoints() is still answered.
absl::StatusOr<BakeTime> bakeTimeAt(const Bake& bake, double setpointCelsius);

// Setpoint for an oven with or without a fan, of a recipe written for the other
// kind: 20 K less with a fan (European practice; textbooks say 15 to 30).
double fanCorrected(double celsius, bool recipeForFan, bool ovenHasFan);

// Quality measure of a compromise: kelvin between the setpoint and the recipe's own.
double degreesOff(const Bake& bake, double setpointCelsius);

}  // namespace suppertide::kitchen
