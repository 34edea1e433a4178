// How warm the water must be so that the dough comes out at the wanted temperature.
//
// Two ways that a baker may compare: the trade's rule, which ignores masses and
// lets the "room" term stand for losses to bowl and air, and a heat balance.
// The rule's friction is a *sum* term: three (or four) times the actual rise.
// The rule works in any one temperature scale; the heat balance in Celsius.
#pragma once

#include <string>
#include <vector>

#include "absl/status/statusor.h"

namespace suppertide::bread {

// Three factors (Wihlfahrt) and four, with a preferment (Hamelman).
double waterByThreeFactors(double wanted, double room, double flour, double friction);
double waterByFourFactors(double wanted, double room, double flour, double preferment, double friction);
// Friction to use next time, from a test batch (US Navy manual).
double frictionFromTestBatch(double mixed, double room, double flour, double water);

// kJ/(kg K) of something with this water share: 4.18 W + 1.6 (1 - W).
double specificHeat(double waterShare);

inline constexpr double kColdestWaterCelsius = 4.0;  // from a fridge; assumed
inline constexpr double kWarmestWaterForYeastCelsius =
    45.0;  // assumed; yeast dies from 50 to 60 (Hamelman, quoted)

struct MixPart {
  std::string name;
  double grams = 0;
  double celsius = 20;
  double waterShare = 0;
};

struct WaterPlan {
  double celsius = 0;       // what the whole of the water would need to have
  double iceGrams = 0;      // of the water, to add as ice when celsius is below kColdestWaterCelsius
  double waterCelsius = 0;  // of the water that isn't ice
  bool iceIsEnough = true;  // false: even all ice leaves the dough too warm
  bool harmsYeast = false;  // above kWarmestWaterForYeastCelsius: warm flour or room instead
};

// Turns a needed temperature into water and ice.
WaterPlan planWater(double neededCelsius, double waterGrams);

// What bowl and air take of the mix's difference to the room so that balance and
// rule agree: for 55 to 75 % hydration and flour, room and wanted dough between 15
// and 28 degrees, water by the rule gives by the balance a dough within
// kRuleAgreesKelvin of the wanted one (tested).
inline constexpr double kRuleLossShare = 1.0 / 3.0;
inline constexpr double kRuleAgreesKelvin = 3.0;

// `frictionRise` is the actual rise by mixing, in K; `lossShare` the part of the
// difference to the room that bowl and air take, 0 to below 1; 0 for a pure balance.
// InvalidArgument when a mass isn't above 0 or a number isn't finite.
absl::StatusOr<WaterPlan> waterByHeatBalance(const std::vector<MixPart>& others, double waterGrams,
                                             double wantedDoughCelsius, double frictionRise,
                                             double roomCelsius = 20, double lossShare = 0);

// The dough's temperature by the same balance, the water being one of `parts`.
double mixedCelsius(const std::vector<MixPart>& parts, double frictionRise, double roomCelsius = 20,
                    double lossShare = 0);

}  // namespace suppertide::bread
