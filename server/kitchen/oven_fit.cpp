#include "server/kitchen/oven_fit.h"

#include <algorithm>
#include <cmath>

#include "absl/status/status.h"
#include "absl/strings/str_cat.h"

namespace suppertide::kitchen {
namespace {

constexpr double kFastestRise = 60;  // K/min, beyond any household oven
constexpr double kWorstResidual = 15;
constexpr double kLongestHeatMinutes = 200;
constexpr double kLongestCoolMinutes = 600;

using Readings = std::vector<OvenReading>;

absl::Status refused(const OvenReading& reading, const char* why) {
  return absl::InvalidArgumentError(absl::StrCat("fit oven curve: reading of ", reading.celsius,
                                                 " C at minute ", reading.minute, " ", why));
}

absl::Status checkReadings(Readings& readings, std::size_t fewest) {
  if (readings.size() < fewest) {
    return absl::InvalidArgumentError(
        absl::StrCat("fit oven curve: ", readings.size(), " readings, at least ", fewest, " are needed"));
  }
  for (const OvenReading& reading : readings) {
    const bool possible = std::isfinite(reading.minute) && reading.celsius > -30 && reading.celsius < 600;
    if (!possible) return refused(reading, "is not one of an oven");
  }
  std::sort(readings.begin(), readings.end(),
            [](const OvenReading& a, const OvenReading& b) { return a.minute < b.minute; });
  for (std::size_t i = 1; i < readings.size(); ++i) {
    if (readings[i].minute == readings[i - 1].minute) return refused(readings[i], "shares its minute");
  }
  return absl::OkStatus();
}

absl::Status checkHeating(const Readings& readings) {
  for (std::size_t i = 1; i < readings.size(); ++i) {
    const double rise = readings[i].celsius - readings[i - 1].celsius;
    if (!(rise > 0)) return refused(readings[i], "is not above the one before");
    if (rise > kFastestRise * (readings[i].minute - readings[i - 1].minute)) {
      return refused(readings[i], "comes too soon after the one before");
    }
  }
  return absl::OkStatus();
}

absl::Status checkCooling(const Readings& readings, double room) {
  for (std::size_t i = 0; i < readings.size(); ++i) {
    if (!(readings[i].celsius > room)) return refused(readings[i], "is not above the room");
    if (i > 0 && !(readings[i].celsius < readings[i - 1].celsius)) {
      return refused(readings[i], "is not below the one before");
    }
  }
  return absl::OkStatus();
}

double rootMeanSquare(double squares, std::size_t count) {
  return std::sqrt(std::max(squares, 0.0) / static_cast<double>(count));
}

// For a given time constant the curve level + span * exp(-t / tau) is linear in
// level and span, so they follow by plain regression and only tau is searched.
struct Line {
  double level = 0;
  double span = 0;
  double squares = 0;
};

double decay(const Readings& readings, std::size_t i, double tau) {
  return std::exp(-(readings[i].minute - readings.front().minute) / tau);
}

double squaresOf(const Readings& readings, double tau, double level, double span) {
  double squares = 0;
  for (std::size_t i = 0; i < readings.size(); ++i) {
    const double miss = level + span * decay(readings, i, tau) - readings[i].celsius;
    squares += miss * miss;
  }
  return squares;
}

Line heatingLine(const Readings& readings, double tau) {
  const double count = static_cast<double>(readings.size());
  double meanDecay = 0;
  double meanCelsius = 0;
  for (std::size_t i = 0; i < readings.size(); ++i) {
    meanDecay += decay(readings, i, tau) / count;
    meanCelsius += readings[i].celsius / count;
  }
  double cross = 0;
  double square = 0;
  for (std::size_t i = 0; i < readings.size(); ++i) {
    const double off = decay(readings, i, tau) - meanDecay;
    cross += off * (readings[i].celsius - meanCelsius);
    square += off * off;
  }
  Line line;
  line.span = cross / square;
  line.level = meanCelsius - line.span * meanDecay;
  line.squares = squaresOf(readings, tau, line.level, line.span);
  return line;
}

Line coolingLine(const Readings& readings, double tau, double room) {
  double cross = 0;
  double square = 0;
  for (std::size_t i = 0; i < readings.size(); ++i) {
    cross += decay(readings, i, tau) * (readings[i].celsius - room);
    square += decay(readings, i, tau) * decay(readings, i, tau);
  }
  Line line{.level = room, .span = cross / square, .squares = 0};
  line.squares = squaresOf(readings, tau, line.level, line.span);
  return line;
}

// Least of `squares(tau)` over [1, longest]: a coarse scan in log tau finds the
// valley, golden section its bottom.
template <typename Squares>
double bestTau(double longest, const Squares& squares) {
  constexpr int kScan = 120;
  const double top = std::log(longest);
  int best = 0;
  double least = squares(1.0);
  for (int i = 1; i <= kScan; ++i) {
    const double value = squares(std::exp(top * i / kScan));
    if (value < least) {
      least = value;
      best = i;
    }
  }
  double low = top * std::max(best - 1, 0) / kScan;
  double high = top * std::min(best + 1, kScan) / kScan;
  constexpr double kGolden = 0.6180339887498949;
  for (int i = 0; i < 60; ++i) {
    const double left = high - kGolden * (high - low);
    const double right = low + kGolden * (high - low);
    if (squares(std::exp(left)) < squares(std::exp(right))) {
      high = right;
    } else {
      low = left;
    }
  }
  return std::exp((low + high) / 2);
}

absl::StatusOr<CurveFit> accepted(CurveFit fit) {
  if (fit.residualAfter > kWorstResidual) {
    return absl::InvalidArgumentError(
        absl::StrCat("fit oven curve: no oven follows these readings, the best curve misses them by ",
                     fit.residualAfter, " K"));
  }
  if (absl::Status status = check(fit.curve); !status.ok()) return status;
  return fit;
}

}  // namespace

absl::StatusOr<CurveFit> fitHeating(const ThermalCurve& prior, std::vector<OvenReading> readings) {
  if (absl::Status status = checkReadings(readings, 3); !status.ok()) return status;
  if (absl::Status status = checkHeating(readings); !status.ok()) return status;
  const double tau = bestTau(kLongestHeatMinutes, [&](double t) { return heatingLine(readings, t).squares; });
  const Line line = heatingLine(readings, tau);
  CurveFit fit{
      .curve = prior, .residualBefore = 0, .residualAfter = rootMeanSquare(line.squares, readings.size())};
  fit.curve.heatMinutes = tau;
  fit.curve.maximumCelsius = line.level;
  const double span = readings.front().celsius - prior.maximumCelsius;
  fit.residualBefore =
      rootMeanSquare(squaresOf(readings, prior.heatMinutes, prior.maximumCelsius, span), readings.size());
  return accepted(std::move(fit));
}

absl::StatusOr<CurveFit> fitCooling(const ThermalCurve& prior, std::vector<OvenReading> readings, Door door) {
  if (absl::Status status = checkReadings(readings, 2); !status.ok()) return status;
  if (absl::Status status = checkCooling(readings, prior.roomCelsius); !status.ok()) return status;
  const double room = prior.roomCelsius;
  const double tau =
      bestTau(kLongestCoolMinutes, [&](double t) { return coolingLine(readings, t, room).squares; });
  CurveFit fit{.curve = prior,
               .residualBefore = 0,
               .residualAfter = rootMeanSquare(coolingLine(readings, tau, room).squares, readings.size())};
  double& fitted = door == Door::kClosed ? fit.curve.closedMinutes : fit.curve.ajarMinutes;
  const double span = readings.front().celsius - room;
  fit.residualBefore = rootMeanSquare(squaresOf(readings, fitted, room, span), readings.size());
  fitted = tau;
  return accepted(std::move(fit));
}

}  // namespace suppertide::kitchen
