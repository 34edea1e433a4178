// Learning from what was seen: a starter's vigour and adaptation, a place's temperature.
//
// A Belief is a mean and an Uncertainty; observations narrow it by Bayes' rule, to
// first order around the most credible case. One doubling time can't tell a weak
// starter from a sleepy one or a cold room: then the deviations hardly shrink one by
// one, but their correlations grow, and the next forecast's band knows that.
#pragma once

#include <span>
#include <vector>

#include "absl/status/statusor.h"
#include "server/bread/forecast.h"
#include "server/bread/uncertainty.h"

namespace suppertide::bread {

struct Belief {
  Shift mean;  // against the published, fitted and assumed constants
  Uncertainty spread;
};

// Spreads of one reading; assumed.
inline constexpr double kRiseSpread = 0.08;  // of a marked jar
inline constexpr double kPokeSpread = 0.15;  // of a finger's verdict, as rise
inline constexpr double kThermometerSpread = 0.5;
inline constexpr double kPeakSpreadHours = 0.75;  // of a jar that is looked at every hour or two

// What `value` of an observation is.
enum class Seen {
  kRise,
  kDoughCelsius,
  kPeakHours,  // from the start until it stood highest; watched until `hours`, later than that
  kRiseBelow,  // it hadn't risen so far
  kRiseAbove,  // it had risen further
};

// Something seen of one ferment `hours` after it began. `start` is the state that
// the likely case (vigour 1, usual lag) has. `spread` is in the value's unit.
struct Observation {
  DoughKind kind;
  DoughState start;
  double startHour = 0;
  std::vector<Stay> stays;
  double hourOfDayAtZero = 0;
  double hours = 0;
  Seen seen = Seen::kRise;
  double value = 0;
  double spread = kRiseSpread;
};

enum class Poke { kSpringsBack, kRecedesSlowly, kCollapses };

// The rise that a poke test speaks for: `low`, `wanted` or `high` rise of the stage.
double riseOfPoke(Poke poke, const Stage& stage);

// What a finger tells: springing back bounds the rise from above, collapsing from
// below, receding slowly is about the wanted rise. `observation` keeps the rest.
Observation poked(Observation observation, Poke poke, const Stage& stage);
// "It's ready", said of a stage: the wanted rise, as loosely as the stage's own window.
Observation calledReady(Observation observation, const Stage& stage);

// How far `observation` lies from what the likely case moved by `shift` would have
// shown, in its own standard deviations; a bound that is kept misses by nearly nothing.
double missOf(const Observation& observation, const Shift& shift);
// OK, or InvalidArgument naming it by `index`: a number is out of range, or its stays
// are shorter than its hours.
absl::Status checkObservation(const Observation& observation, std::size_t index);

// InvalidArgument as by checkObservation. Vigour stays within 0.4 to 2.5. Cost: about
// 60 runs of each observation's ferment.
absl::StatusOr<Belief> learn(const Belief& before, std::span<const Observation> observations);

// The likely case and its band as the belief has them.
ForecastBand believedBand(const DoughKind& kind, const DoughState& start, double startHour,
                          std::span<const Stay> stays, const Stage& stage, const Belief& belief,
                          const ForecastOptions& options = {});

// A reading of a place's own air.
struct AirReading {
  double hourOfDay = 0;
  double celsius = 0;
  double spread = kThermometerSpread;
};
struct PlaceFit {
  TemperatureByHour air;
  double spread = 0;  // standard deviation of its level, K
};
// The profile moved up or down to fit the readings; `priorSpread` is how unsure
// its level was. No reading leaves it as it is.
PlaceFit fitPlace(const TemperatureByHour& air, std::span<const AirReading> readings,
                  double priorSpread = 2.0);

}  // namespace suppertide::bread
