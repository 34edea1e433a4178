// When a dough is ready: rise curve, readiness window, and how sure that is.
#pragma once

#include <limits>
#include <optional>
#include <span>
#include <vector>

#include "server/base/interval.h"
#include "server/bread/fermentation.h"
#include "server/bread/uncertainty.h"

namespace suppertide::bread {

// When a ferment counts as ready. It is ready from `lowRise`, best at
// `wantedRise`, and no longer from `highRise`, from having fallen by
// `fallFromPeak` of its greatest volume, or after `mostHours`. When it never gets to
// `wantedRise` its peak is the best moment. The hours count from the stage's start.
struct Stage {
  double lowRise = 1.45;
  double wantedRise = 1.5;
  double highRise = 1.6;
  double fallFromPeak = 0.05;  // assumed: about 2 h past peak at 22 degrees, practice says 1 to 3
  double leastHours = 0;       // not ready sooner, whatever the rise; for retards and rests
  double wantedHours = 0;      // the best moment is no sooner
  double mostHours = std::numeric_limits<double>::infinity();
};
// Common practice, no source.
inline constexpr double kNoHighRise = 1e9;
inline constexpr Stage kLevainStage = {2.0, 2.4, kNoHighRise, 0.05};
// Preferments by trade word; the practice calls a poolish ripe well before the model has it sink, and
// leaves a biga and old dough long after they have risen, for their taste and strength.
inline constexpr Stage kPoolishStage = {1.8, 2.0, kNoHighRise, 0.05};
inline constexpr Stage kSpongeStage = {1.7, 2.0, kNoHighRise, 0.08};
inline constexpr Stage kBigaStage = {1.7, 2.0, kNoHighRise, 0.15, 8, 14, 30};
inline constexpr Stage kOldDoughStage = {1.2, 1.5, kNoHighRise, 0.15, 3, 8, 48};
inline constexpr Stage kEnrichedBulk = {1.35, 1.5, 1.7};
inline constexpr Stage kLeanBulk = {1.6, 1.75, 2.0};
inline constexpr Stage kEnrichedProof = {1.45, 1.6, 1.8};
inline constexpr Stage kLeanProof = {1.45, 1.6, 1.8};
// In the fridge: 8 to 24 h by common practice; rise is whatever it got while cooling.
inline constexpr Stage kRetard = {1.0, 1.25, 2.2, 1.0, 8, 12, 24};

inline constexpr double kSearchHours = 48;

// [start, limit) in hours on the caller's axis, and the best moment in [start, limit].
struct ReadinessWindow {
  Interval<double> hours;
  double best = 0;
  friend bool operator==(const ReadinessWindow&, const ReadinessWindow&) = default;
};

struct Sample {
  double hour = 0;
  double celsius = 0;  // of the dough
  double rise = 1;
};

struct Forecast {
  std::vector<Sample> samples;  // empty when none were asked for
  double startHour = 0;
  double peakHour = 0;  // greatest rise seen, at the end of the search when still rising
  double peakRise = 1;
  bool peaked = false;            // it fell after that
  std::optional<double> lowHour;  // first reached; absent: not within the search
  std::optional<double> wantedHour;
  std::optional<double> highHour;
  std::optional<ReadinessWindow> window;  // absent: never ready
};

struct ForecastOptions {
  double hourOfDayAtZero = 0;
  double searchHours = kSearchHours;  // after the start
  double sampleHours = 0;  // pitch of the samples; 0: none, and the search stops when the window is known
};

// Never fails: "never" is an absent window. About 15 microseconds for 24 h.
Forecast forecast(const DoughKind& kind, const DoughState& state, double startHour,
                  std::span<const Stay> stays, const Stage& stage, const ForecastOptions& options = {});

// One in ten doughs is faster than `fast`, one in ten slower than `slow`, each
// edge of the window by itself. First order: the shifts by each cause, in log
// hours, add as squares; 7 forecasts. An absent member: never ready in that case.
struct ForecastBand {
  Forecast likely;
  std::optional<ReadinessWindow> fast;
  std::optional<ReadinessWindow> slow;
};
ForecastBand forecastBand(const DoughKind& kind, const DoughState& state, double startHour,
                          std::span<const Stay> stays, const Stage& stage,
                          const Uncertainty& uncertainty = {}, const ForecastOptions& options = {});

}  // namespace suppertide::bread
