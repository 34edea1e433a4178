#include "server/bread/calibration.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "absl/status/status.h"
#include "absl/strings/str_cat.h"
#include "server/bread/credible_fit.h"

namespace suppertide::bread {
namespace {

constexpr double kMostLogVigour = 0.9163;  // ln 2.5
constexpr double kPeakRefinement = 4;      // a peak's hour must move smoothly with its causes

// The believed case that lies `z` standard deviations out along each independent cause.
Shift caseAt(const Belief& belief, const std::array<Shift, 3>& causes, std::span<const double> z) {
  Shift shift = belief.mean;
  for (std::size_t i = 0; i < 3; ++i) {
    shift.logVigour += z[i] * causes[i].logVigour;
    shift.lag += z[i] * causes[i].lag;
    shift.placeKelvin += z[i] * causes[i].placeKelvin;
  }
  shift.logVigour = std::clamp(shift.logVigour, -kMostLogVigour, kMostLogVigour);
  shift.lag = std::max(shift.lag, -1.0);
  return shift;
}

// Hours from the start until it stands highest, within the hours that it was watched.
double peakHours(const Observation& o, const Shift& shift) {
  const auto stays = shifted(o.stays, shift);
  Fermentation run(o.kind, shifted(o.start, shift), o.startHour, stays, o.hourOfDayAtZero);
  run.refine(kPeakRefinement);
  double before = run.rise(), top = before, step = 0;
  while (!run.done() && run.hour() < o.startHour + o.hours) {
    const double next = run.nextStep();
    const DoughState after = run.peek(next);
    const double rise = run.riseOf(after);
    if (rise < top && step > 0) {
      // The top of the parabola through the last three points.
      const double up = (top - before) / step, down = (rise - top) / next;
      const double bend = (down - up) / (step + next);
      return run.hour() - o.startHour - (up + bend * step) / (2 * bend);
    }
    before = top;
    top = rise;
    step = next;
    run.moveTo(after, next);
  }
  return std::min(o.hours, run.hour() - o.startHour);
}

double predicted(const Observation& o, const Shift& shift) {
  if (o.seen == Seen::kPeakHours) return peakHours(o, shift);
  const DoughState state = stateAfter(o.kind, shifted(o.start, shift), o.startHour, shifted(o.stays, shift),
                                      o.hours, o.hourOfDayAtZero);
  return o.seen == Seen::kDoughCelsius ? state.celsius : riseOf(o.kind, state);
}

// The miss of a bound that is kept by `margin` standard deviations: as unlikely as a
// normal value that far out, for a reading that errs normally.
double boundMiss(double margin) {
  const double likelihood = std::max(0.5 * std::erfc(-margin / std::sqrt(2.0)), 1e-300);
  return std::sqrt(std::max(0.0, -2 * std::log(likelihood)));
}

const char* nounOf(Seen seen) {
  if (seen == Seen::kDoughCelsius) return "a temperature of ";
  return seen == Seen::kPeakHours ? "a peak after hours: " : "a rise of ";
}

bool isPossible(const Observation& o) {
  if (o.seen == Seen::kDoughCelsius) return o.value > -10 && o.value < 60;
  if (o.seen == Seen::kPeakHours) return o.value > 0 && o.value <= o.hours;
  return o.value > 0 && o.value < 10;
}

// The causes carry the covariance of z over to the shift.
Uncertainty spreadOf(const std::array<Shift, 3>& causes, const std::vector<std::vector<double>>& ofZ) {
  std::array<std::array<double, 3>, 3> parts;
  for (std::size_t i = 0; i < 3; ++i) parts[i] = {causes[i].logVigour, causes[i].lag, causes[i].placeKelvin};
  const auto covariance = [&](std::size_t a, std::size_t b) {
    double sum = 0;
    for (std::size_t i = 0; i < 3; ++i) {
      for (std::size_t j = 0; j < 3; ++j) sum += parts[i][a] * ofZ[i][j] * parts[j][b];
    }
    return sum;
  };
  const auto deviation = [&](std::size_t a) { return std::sqrt(std::max(0.0, covariance(a, a))); };
  const auto correlation = [&](std::size_t a, std::size_t b) {
    const double product = deviation(a) * deviation(b);
    return product > 0 ? std::clamp(covariance(a, b) / product, -1.0, 1.0) : 0.0;
  };
  return {.logVigour = deviation(0),
          .placeKelvin = deviation(2),
          .lag = deviation(1),
          .vigourWithLag = correlation(0, 1),
          .vigourWithPlace = correlation(0, 2),
          .lagWithPlace = correlation(1, 2)};
}

}  // namespace

double riseOfPoke(Poke poke, const Stage& stage) {
  if (poke == Poke::kSpringsBack) return stage.lowRise;
  return poke == Poke::kRecedesSlowly ? stage.wantedRise : stage.highRise;
}

Observation poked(Observation observation, Poke poke, const Stage& stage) {
  observation.seen = Seen::kRise;
  observation.value = riseOfPoke(poke, stage);
  // A finger that doesn't tell low from high leaves their whole range open.
  constexpr double kWidest = 0.8;
  const double range = std::clamp(stage.highRise - stage.lowRise, 0.0, kWidest);
  observation.spread =
      poke == Poke::kRecedesSlowly ? std::sqrt(kPokeSpread * kPokeSpread + range * range / 12) : kPokeSpread;
  if (poke == Poke::kSpringsBack) observation.seen = Seen::kRiseBelow;
  if (poke == Poke::kCollapses) observation.seen = Seen::kRiseAbove;
  return observation;
}

Observation calledReady(Observation observation, const Stage& stage) {
  constexpr double kLoosest = 0.4;  // where a stage has no highest rise
  observation.seen = Seen::kRise;
  observation.value = stage.wantedRise;
  observation.spread = std::clamp((stage.highRise - stage.lowRise) / 2, kPokeSpread, kLoosest);
  return observation;
}

double missOf(const Observation& o, const Shift& shift) {
  const double miss = (predicted(o, shift) - o.value) / o.spread;
  if (o.seen == Seen::kRiseBelow) return boundMiss(-miss);
  if (o.seen == Seen::kRiseAbove) return boundMiss(miss);
  return miss;
}

absl::Status checkObservation(const Observation& observation, std::size_t index) {
  double hours = 0;
  for (const Stay& stay : observation.stays) hours += stay.hours;
  if (!(observation.hours > 0) || hours < observation.hours) {
    return absl::InvalidArgumentError(absl::StrCat("learn from observation ", index, ": ", observation.hours,
                                                   " hours after a start of stays of ", hours, " hours"));
  }
  if (!isPossible(observation) || !(observation.spread > 0)) {
    return absl::InvalidArgumentError(absl::StrCat("learn from observation ", index, ": ",
                                                   nounOf(observation.seen), observation.value,
                                                   " with spread ", observation.spread));
  }
  return absl::OkStatus();
}

absl::StatusOr<Belief> learn(const Belief& before, std::span<const Observation> observations) {
  for (std::size_t i = 0; i < observations.size(); ++i) {
    if (absl::Status status = checkObservation(observations[i], i); !status.ok()) return status;
  }
  const auto causes = independentCauses(before.spread);
  const CredibleFit fit = mostCredible(3, [&](std::span<const double> z) {
    const Shift shift = caseAt(before, causes, z);
    std::vector<double> misses;
    for (const Observation& o : observations) misses.push_back(missOf(o, shift));
    return misses;
  });
  return Belief{caseAt(before, causes, fit.z), spreadOf(causes, fit.covariance)};
}

ForecastBand believedBand(const DoughKind& kind, const DoughState& start, double startHour,
                          std::span<const Stay> stays, const Stage& stage, const Belief& belief,
                          const ForecastOptions& options) {
  return forecastBand(kind, shifted(start, belief.mean), startHour, shifted(stays, belief.mean), stage,
                      belief.spread, options);
}

PlaceFit fitPlace(const TemperatureByHour& air, std::span<const AirReading> readings, double priorSpread) {
  double weight = 1 / (priorSpread * priorSpread);
  double sum = 0;
  for (const AirReading& reading : readings) {
    const double ownWeight = 1 / (reading.spread * reading.spread);
    sum += ownWeight * (reading.celsius - air.at(reading.hourOfDay));
    weight += ownWeight;
  }
  return {air.warmerBy(sum / weight), std::sqrt(1 / weight)};
}

}  // namespace suppertide::bread
