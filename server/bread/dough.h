// A dough or levain as the fermentation model sees it: what it is, and its state.
//
// DoughKind doesn't change while it ferments; DoughState does, and is carried
// from stage to stage: levain -> mixLevain or mixDough -> ferment -> shape -> ferment.
// "Rise" is volume over the volume when the stage began (mixing or shaping).
// Each constant says its mark: published, fitted, assumed.
#pragma once

#include <limits>

#include "absl/status/statusor.h"
#include "server/bread/formula.h"
#include "server/bread/levain_build.h"

namespace suppertide::bread {

inline constexpr double kGasRate = 2.70;          // volumes/h of a ripe culture at its optimum; fitted
inline constexpr double kYeastGasRate = 0.894;    // volumes/h per % of compressed yeast; fitted to practice
inline constexpr double kYeastWakingHours = 0.2;  // assumed
inline constexpr double kHalfSugarVolumes = 0.5;  // assumed

inline constexpr double kAirShare = 0.08;  // air mixed in; assumed (5 to 10 %, from memory)

// Baker's yeast in a preferment grows logistically towards this, in % compressed on flour. Capacity and
// the rate in stiff ones are fitted to 0.5 % growing by 88 % and 2 % by 29 % in 6 h at 27 degrees (baking
// textbook, quoted); the rate in wet ones, and that these gas faster, to the practice of poolishes. In a
// dough, with more yeast and less time, growth isn't modelled: low doses over more than 4 h are called too
// slow.
inline constexpr double kYeastCapacityPercent = 3.4;
inline constexpr double kYeastGrowthCelsius = 27;
inline constexpr double kStiffYeastGrowth = 0.133;  // per hour at that temperature, elsewhere as its gas
inline constexpr double kWetYeastGrowth = 0.30;
inline constexpr double kWetGasFactor = 1.2;

// Adaptation that a culture still has before it (h0): active share = exp(-h0).
inline constexpr double kMatureStarterLag = 1.42;  // mature or over-ripe; fitted
inline constexpr double kPeakLevainLag = 0.1;      // levain used near its peak; assumed
inline constexpr double kFridgeStarterLag = 2.0;   // straight from a fridge; assumed
// Share of free gas that shaping leaves in; assumed.
inline constexpr double kGasKeptByShaping = 0.25;

struct DoughKind {
  double waterShare = 0.30;  // water over gas-free volume, holds CO2
  double retention = 0.90;   // share of the new gas kept while there is room
  double gasLimit = 3.5;     // free volumes at which no more is kept
  double leakPerHour = 0.02;
  double sugarVolumes = 8.0;  // CO2 that the sugar can give
  double gasFactor = 1.0;     // by composition
  double growthFactor = 1.0;  // by composition
  double yeastPercent = 0;    // compressed, on flour; works beside a culture
  double yeastGrowth = 0;     // per hour at kYeastGrowthCelsius; preferments
};
// All assumed; a levain's sugar equals 2.5 % hexose on flour.
inline constexpr DoughKind kLevainKind = {0.45, 0.75, 2.0, 0.06, 4.0, 1, 1, 0, 0};
inline constexpr DoughKind kEnrichedKind = {0.30, 0.90, 3.5, 0.02, 8.0, 1, 1, 0, 0};
inline constexpr DoughKind kLeanKind = {0.35, 0.90, 3.5, 0.02, 8.0, 1, 1, 0, 0};
// A wet preferment is as a levain, a stiff one holds gas as dough does but has only the flour's sugar.
// `yeastPercent` compressed and `saltPercent` on its own flour.
DoughKind prefermentKind(double hydration, double wholeGrainShare, double yeastPercent, double saltPercent);

// Sets the two factors. Directions published, sizes assumed; neither falls below 0.3.
DoughKind withComposition(DoughKind kind, double wholeGrainShare, double saltPercent, double sugarPercent);

// Enriched when fat, sugar and egg come to kEnrichedFromPercent or more of the flour; composition
// and yeast from the formula.
inline constexpr double kEnrichedFromPercent = 8;  // assumed
DoughKind doughKindOf(const Formula& formula);
bool isEnriched(const Formula& formula);

struct DoughState {
  double celsius = 24;
  double ripeness = 0;     // X: leavening population per flour, 1 = fully ripe
  double activeShare = 1;  // A = Q/(1+Q), adapted part of it
  double gas = 0;          // C: CO2 kept, volumes per gas-free volume
  double sugar = 0;        // S: CO2 that the sugar can still give
  double hoursSinceMix = 0;
  double vigour = 1;         // of this culture or yeast against the likely one
  double kilograms = 1;      // of one piece: what warms and cools together
  double volumeAtStart = 1;  // when this stage began; rise refers to it
  double yeastFactor = 1;    // baker's yeast at work over kind.yeastPercent
};

// How a culture enters a levain or dough.
struct Culture {
  double ripeness = 1;
  double lag = kMatureStarterLag;  // h0, 0 or more
  double vigour = 1;
};

struct Mixing {
  double inoculation = 0;   // culture's flour over all flour, 0 to 1
  double cultureShare = 0;  // culture's mass over all mass, 0 to 1
  double celsius = 24;      // after mixing
  double kilograms = 1;
  double yeastFactor = 1;  // see DoughState; above 0
};

// InvalidArgument when a number is out of its range or not finite, or there is
// neither culture nor yeast.
absl::StatusOr<DoughState> mix(const DoughKind& kind, const Culture& culture, const Mixing& mixing);

// A levain fed from a starter by `ratio`.
absl::StatusOr<DoughState> mixLevain(const DoughKind& kind, const Culture& starter, const LevainRatio& ratio,
                                     double celsius, double kilograms, double starterHydration = 1.0);

// The culture that a levain is when used now. Its lag is kPeakLevainLag; say
// otherwise for one that has stood in a fridge or fell back long ago.
Culture cultureOf(const DoughState& levain, double lag = kPeakLevainLag);

// Dividing and shaping: keeps `keptGas` of the free gas, sets the mass of one piece (above 0) and
// lets rise begin anew.
DoughState shape(const DoughKind& kind, DoughState state, double pieceKilograms,
                 double keptGas = kGasKeptByShaping);
// A fold: keeps most of the gas, and neither mass nor reference changes.
DoughState fold(const DoughKind& kind, DoughState state, double keptGas = 0.8);  // assumed

// Free gas in volumes per gas-free volume, air not counted; and volume over that of the airy, gasless dough.
struct GasSplit {
  double freeGas = 0;
  double volume = 1;
};
GasSplit splitGas(double waterShare, double gas, double celsius);
double riseOf(const DoughKind& kind, const DoughState& state);

}  // namespace suppertide::bread
