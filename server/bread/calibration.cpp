#include "server/bread/calibration.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "absl/status/status.h"
#include "absl/strings/str_cat.h"

namespace suppertide::bread {
namespace {

constexpr double kMostLogVigour = 0.9163;  // ln 2.5
constexpr double kDifference = 1e-3;       // standard deviations, for slopes
constexpr int kMostRounds = 12;

using Vector = std::array<double, 3>;
using Matrix = std::array<Vector, 3>;

// The believed case that lies `z` standard deviations out along each independent cause.
Shift caseAt(const Belief& belief, const std::array<Shift, 3>& causes, const Vector& z) {
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

double predicted(const Observation& observation, const Shift& shift) {
  const DoughState state =
      stateAfter(observation.kind, shifted(observation.start, shift), observation.startHour,
                 shifted(observation.stays, shift), observation.hours, observation.hourOfDayAtZero);
  return observation.seen == Seen::kRise ? riseOf(observation.kind, state) : state.celsius;
}

absl::Status checkObservation(const Observation& observation, std::size_t index) {
  double hours = 0;
  for (const Stay& stay : observation.stays) hours += stay.hours;
  if (!(observation.hours > 0) || hours < observation.hours) {
    return absl::InvalidArgumentError(absl::StrCat("learn from observation ", index, ": ", observation.hours,
                                                   " hours after a start of stays of ", hours, " hours"));
  }
  const bool isRise = observation.seen == Seen::kRise;
  const bool fits = isRise ? observation.value > 0 && observation.value < 10
                           : observation.value > -10 && observation.value < 60;
  if (!fits || !(observation.spread > 0)) {
    return absl::InvalidArgumentError(absl::StrCat("learn from observation ", index, ": ",
                                                   isRise ? "a rise of " : "a temperature of ",
                                                   observation.value, " with spread ", observation.spread));
  }
  return absl::OkStatus();
}

// Solves the symmetric, positive definite system by elimination.
Vector solve(Matrix m, Vector right) {
  for (std::size_t i = 0; i < 3; ++i) {
    for (std::size_t j = i + 1; j < 3; ++j) {
      const double factor = m[j][i] / m[i][i];
      for (std::size_t k = i; k < 3; ++k) m[j][k] -= factor * m[i][k];
      right[j] -= factor * right[i];
    }
  }
  for (std::size_t i = 3; i-- > 0;) {
    for (std::size_t k = i + 1; k < 3; ++k) right[i] -= m[i][k] * right[k];
    right[i] /= m[i][i];
  }
  return right;
}

// Most credible z by Levenberg's method; the prior of z is standard normal.
class Fit {
 public:
  Fit(const Belief& belief, std::span<const Observation> observations)
      : belief_(belief), causes_(independentCauses(belief.spread)), observations_(observations) {}

  Belief run() {
    double cost = costAt(z_);
    double damping = 0;
    for (int round = 0; round < kMostRounds; ++round) {
      linearise();
      Matrix damped = curvature_;
      for (std::size_t i = 0; i < 3; ++i) damped[i][i] *= 1 + damping;
      const Vector step = solve(damped, downhill_);
      Vector next = z_;
      for (std::size_t i = 0; i < 3; ++i) next[i] += step[i];
      const double nextCost = costAt(next);
      if (nextCost > cost) {
        damping = damping > 0 ? damping * 5 : 0.5;
        continue;
      }
      const bool settled = cost - nextCost < 1e-7 * (1 + cost);
      z_ = next;
      cost = nextCost;
      damping /= 5;
      if (settled) break;
    }
    linearise();
    return posterior();
  }

 private:
  double costAt(const Vector& z) const {
    double cost = 0;
    for (double value : z) cost += value * value;
    const Shift shift = caseAt(belief_, causes_, z);
    for (const Observation& o : observations_) {
      const double miss = (o.value - predicted(o, shift)) / o.spread;
      cost += miss * miss;
    }
    return cost;
  }

  void linearise() {
    curvature_ = {Vector{1, 0, 0}, Vector{0, 1, 0}, Vector{0, 0, 1}};
    downhill_ = {-z_[0], -z_[1], -z_[2]};
    for (const Observation& o : observations_) {
      const double miss = (o.value - predicted(o, caseAt(belief_, causes_, z_))) / o.spread;
      Vector slope;
      for (std::size_t i = 0; i < 3; ++i) {
        Vector more = z_, less = z_;
        more[i] += kDifference;
        less[i] -= kDifference;
        slope[i] =
            (predicted(o, caseAt(belief_, causes_, more)) - predicted(o, caseAt(belief_, causes_, less))) /
            (2 * kDifference * o.spread);
      }
      for (std::size_t i = 0; i < 3; ++i) {
        downhill_[i] += slope[i] * miss;
        for (std::size_t j = 0; j < 3; ++j) curvature_[i][j] += slope[i] * slope[j];
      }
    }
  }

  Belief posterior() const {
    // Covariance of z is the curvature's inverse; that of the shift is carried by the causes.
    Matrix inverse;
    for (std::size_t i = 0; i < 3; ++i) {
      Vector unit{};
      unit[i] = 1;
      inverse[i] = solve(curvature_, unit);
    }
    Matrix causes;
    for (std::size_t i = 0; i < 3; ++i) {
      causes[i] = {causes_[i].logVigour, causes_[i].lag, causes_[i].placeKelvin};
    }
    Matrix covariance{};
    for (std::size_t a = 0; a < 3; ++a) {
      for (std::size_t b = 0; b < 3; ++b) {
        for (std::size_t i = 0; i < 3; ++i) {
          for (std::size_t j = 0; j < 3; ++j) covariance[a][b] += causes[i][a] * inverse[i][j] * causes[j][b];
        }
      }
    }
    const auto deviation = [&](std::size_t a) { return std::sqrt(std::max(0.0, covariance[a][a])); };
    const auto correlation = [&](std::size_t a, std::size_t b) {
      const double product = deviation(a) * deviation(b);
      return product > 0 ? std::clamp(covariance[a][b] / product, -1.0, 1.0) : 0.0;
    };
    Belief after;
    after.mean = caseAt(belief_, causes_, z_);
    after.spread = {.logVigour = deviation(0),
                    .placeKelvin = deviation(2),
                    .lag = deviation(1),
                    .vigourWithLag = correlation(0, 1),
                    .vigourWithPlace = correlation(0, 2),
                    .lagWithPlace = correlation(1, 2)};
    return after;
  }

  const Belief& belief_;
  std::array<Shift, 3> causes_;
  std::span<const Observation> observations_;
  Vector z_{};
  Matrix curvature_{};
  Vector downhill_{};
};

}  // namespace

double riseOfPoke(Poke poke, const Stage& stage) {
  if (poke == Poke::kSpringsBack) return stage.lowRise;
  return poke == Poke::kRecedesSlowly ? stage.wantedRise : stage.highRise;
}

absl::StatusOr<Belief> learn(const Belief& before, std::span<const Observation> observations) {
  for (std::size_t i = 0; i < observations.size(); ++i) {
    if (absl::Status status = checkObservation(observations[i], i); !status.ok()) return status;
  }
  return Fit(before, observations).run();
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
