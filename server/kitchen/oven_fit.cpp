#include "server/kitchen/oven_fit.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>

#include "absl/status/status.h"
#include "absl/strings/str_cat.h"

namespace suppertide::kitchen {
namespace {

constexpr double kFastestRise = 60;  // K/min, beyond any household oven
constexpr double kWorstResidual = 15;
constexpr double kGoodResidual = 4;  // as good as a dial thermometer is read
constexpr double kClearlyBetter = 3;
constexpr std::size_t kFewestToLeaveOut = 5;
constexpr std::size_t kMostLeftOut = 10;
constexpr std::size_t kSuspects = 6;
constexpr double kLongestRiseMinutes = 120;
constexpr double kLongestHeatMinutes = 200;
constexpr double kLongestCoolMinutes = 600;

using Readings = std::vector<OvenReading>;

absl::Status refused(const OvenReading& reading, const std::string& why) {
  return absl::InvalidArgumentError(absl::StrCat("fit oven curve: reading of ", reading.celsius,
                                                 " C at minute ", reading.minute, " ", why));
}

absl::Status tooFew(std::size_t count, std::size_t fewest) {
  return absl::InvalidArgumentError(
      absl::StrCat("fit oven curve: ", count, " readings, at least ", fewest, " are needed"));
}

// Indexes of the readings by their minutes.
std::vector<std::size_t> inOrder(const Readings& readings) {
  std::vector<std::size_t> order(readings.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return readings[a].minute < readings[b].minute; });
  return order;
}

// Judges each reading against the possible one before it; `why` gives the fault or nothing.
template <typename Why>
std::vector<ReadingFault> faultsOf(const Readings& readings, const Why& why) {
  std::vector<ReadingFault> faults;
  const OvenReading* before = nullptr;
  for (const std::size_t index : inOrder(readings)) {
    const OvenReading& reading = readings[index];
    std::string fault;
    if (!(std::isfinite(reading.minute) && reading.celsius > -30 && reading.celsius < 600))
      fault = "is not one of an oven";
    else if (before != nullptr && reading.minute == before->minute)
      fault = "shares its minute";
    else
      fault = why(before, reading);
    if (fault.empty())
      before = &reading;
    else
      faults.push_back({static_cast<int>(index), fault});
  }
  std::sort(faults.begin(), faults.end(),
            [](const ReadingFault& a, const ReadingFault& b) { return a.reading < b.reading; });
  return faults;
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

// What was fitted: time constant, and level and span by regression.
struct Fitted {
  double tau = 0;
  Line line;
};

Fitted fitOnce(const Readings& readings, double longest, const std::optional<double>& room) {
  const auto lineAt = [&](double tau) {
    return room ? coolingLine(readings, tau, *room) : heatingLine(readings, tau);
  };
  Fitted fitted;
  fitted.tau = bestTau(longest, [&](double tau) { return lineAt(tau).squares; });
  fitted.line = lineAt(fitted.tau);
  return fitted;
}

double residualOf(const Fitted& fitted, const Readings& readings) {
  return rootMeanSquare(fitted.line.squares, readings.size());
}

// Indexes of the readings still counted that the curve misses most, but the first,
// which is the start of the stopwatch.
std::vector<std::size_t> worst(const Readings& all, const std::vector<bool>& leftOut, const Fitted& fitted) {
  std::vector<std::pair<double, std::size_t>> misses;
  for (std::size_t i = 1; i < all.size(); ++i) {
    if (leftOut[i]) continue;
    const double curve = fitted.line.level + fitted.line.span * decay(all, i, fitted.tau);
    misses.emplace_back(-std::abs(curve - all[i].celsius), i);
  }
  std::sort(misses.begin(), misses.end());
  std::vector<std::size_t> indexes;
  for (std::size_t k = 0; k < std::min(misses.size(), kSuspects); ++k) indexes.push_back(misses[k].second);
  return indexes;
}

// Leaves out, one by one, the reading without which the others agree best, while
// that makes their residual at least three times smaller.
Fitted fitRobustly(const Readings& all, double longest, const std::optional<double>& room,
                   std::vector<bool>& leftOut) {
  leftOut.assign(all.size(), false);
  const auto keptWithout = [&](std::size_t without) {
    Readings some;
    for (std::size_t i = 0; i < all.size(); ++i)
      if (!leftOut[i] && i != without) some.push_back(all[i]);
    return some;
  };
  Readings now = all;
  Fitted best = fitOnce(now, longest, room);
  const std::size_t most = all.size() < kFewestToLeaveOut ? 0 : std::min(all.size() / 4, kMostLeftOut);
  for (std::size_t round = 0; round < most && residualOf(best, now) >= kGoodResidual; ++round) {
    std::size_t out = all.size();
    double least = residualOf(best, now) / kClearlyBetter;
    for (const std::size_t i : worst(all, leftOut, best)) {
      const Readings some = keptWithout(i);
      const double residual = residualOf(fitOnce(some, longest, room), some);
      if (residual >= least) continue;
      least = residual;
      out = i;
    }
    if (out == all.size()) break;
    leftOut[out] = true;
    now = keptWithout(all.size());
    best = fitOnce(now, longest, room);
  }
  return best;
}

// The same, with what it says about each reading. `before` gives the prior's temperature `t` minutes
// after the first reading.
template <typename Before>
Fitted fitAndTell(const Readings& given, double longest, const std::optional<double>& room,
                  const Before& before, CurveFit& fit) {
  const std::vector<std::size_t> order = inOrder(given);
  Readings sorted;
  for (const std::size_t index : order) sorted.push_back(given[index]);
  std::vector<bool> leftOut;
  const Fitted fitted = fitRobustly(sorted, longest, room, leftOut);
  fit.readings.resize(given.size());
  double squaresBefore = 0;
  double squaresAfter = 0;
  std::size_t count = 0;
  for (std::size_t i = 0; i < sorted.size(); ++i) {
    CurveFit::At& at = fit.readings[order[i]];
    at.leftOut = leftOut[i];
    at.before = before(sorted[i].minute - sorted.front().minute);
    at.after = fitted.line.level + fitted.line.span * decay(sorted, i, fitted.tau);
    if (at.leftOut) continue;
    squaresBefore += (at.before - sorted[i].celsius) * (at.before - sorted[i].celsius);
    squaresAfter += (at.after - sorted[i].celsius) * (at.after - sorted[i].celsius);
    ++count;
  }
  fit.residualBefore = rootMeanSquare(squaresBefore, count);
  fit.residualAfter = rootMeanSquare(squaresAfter, count);
  return fitted;
}

double firstCelsius(const Readings& readings) {
  return readings[inOrder(readings).front()].celsius;
}

std::string riseFault(const ThermalCurve& prior, const OvenRise& rise) {
  if (!(rise.fromCelsius > -30 && rise.toCelsius < 600)) return "is not one of an oven";
  if (!(rise.toCelsius > rise.fromCelsius)) return "does not rise";
  if (!(rise.toCelsius < prior.maximumCelsius)) return "ends above what the oven can reach";
  if (!(rise.minutes > 0)) return "takes no time";
  if (rise.toCelsius - rise.fromCelsius > kFastestRise * rise.minutes) return "is faster than any oven";
  if (rise.minutes > kLongestRiseMinutes) return "takes longer than any oven";
  return "";
}

double constantOf(const ThermalCurve& prior, const OvenRise& rise) {
  return rise.minutes /
         std::log((prior.maximumCelsius - rise.fromCelsius) / (prior.maximumCelsius - rise.toCelsius));
}

double middleOf(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  const std::size_t half = values.size() / 2;
  return values.size() % 2 == 1 ? values[half] : (values[half - 1] + values[half]) / 2;
}

std::string fallFault(const ThermalCurve& prior, const OvenRise& fall) {
  if (!(fall.toCelsius > -30 && fall.fromCelsius < 600)) return "is not one of an oven";
  if (!(fall.toCelsius < fall.fromCelsius)) return "does not fall";
  if (!(fall.toCelsius > prior.roomCelsius)) return "ends below the room";
  if (!(fall.minutes > 0)) return "takes no time";
  if (fall.fromCelsius - fall.toCelsius > kFastestRise * fall.minutes) return "is faster than any oven";
  if (fall.minutes > kLongestRiseMinutes) return "takes longer than any oven";
  return "";
}

double fallConstantOf(const ThermalCurve& prior, const OvenRise& fall) {
  return fall.minutes /
         std::log((fall.fromCelsius - prior.roomCelsius) / (fall.toCelsius - prior.roomCelsius));
}

absl::Status impossible(const char* what, const std::vector<OvenRise>& rises, const ReadingFault& fault) {
  const OvenRise& rise = rises[static_cast<std::size_t>(fault.reading)];
  return absl::InvalidArgumentError(absl::StrCat("learn oven curve: ", what, " from ", rise.fromCelsius,
                                                 " to ", rise.toCelsius, " C in ", rise.minutes, " minutes ",
                                                 fault.why));
}

// The mean of the logarithms with the prior's; marks what is off by half or double as left out.
double learned(double prior, const std::vector<double>& constants, double priorWeight, CurveFit& fit) {
  fit.readings.resize(constants.size());
  std::vector<double> logs;
  for (const double constant : constants) logs.push_back(std::log(constant));
  if (logs.size() >= 3) {
    const double middle = middleOf(logs);
    for (std::size_t i = 0; i < logs.size(); ++i)
      fit.readings[i].leftOut = std::abs(logs[i] - middle) > std::log(2.0) * (1 - 1e-9);
  }
  double sum = priorWeight * std::log(prior);
  double weight = priorWeight;
  for (std::size_t i = 0; i < logs.size(); ++i) {
    if (fit.readings[i].leftOut) continue;
    sum += logs[i];
    weight += 1;
  }
  return weight > priorWeight ? std::exp(sum / weight) : prior;
}

// Where both curves are at the end of each; `at` gives a curve's temperature there.
template <typename At>
void tell(const std::vector<OvenRise>& rises, CurveFit& fit, const At& at, const ThermalCurve& prior) {
  double squaresBefore = 0;
  double squaresAfter = 0;
  std::size_t count = 0;
  for (std::size_t i = 0; i < rises.size(); ++i) {
    fit.readings[i].before = at(prior, rises[i]);
    fit.readings[i].after = at(fit.curve, rises[i]);
    if (fit.readings[i].leftOut) continue;
    squaresBefore += std::pow(fit.readings[i].before - rises[i].toCelsius, 2);
    squaresAfter += std::pow(fit.readings[i].after - rises[i].toCelsius, 2);
    ++count;
  }
  if (count == 0) return;
  fit.residualBefore = rootMeanSquare(squaresBefore, count);
  fit.residualAfter = rootMeanSquare(squaresAfter, count);
}

}  // namespace

std::vector<ReadingFault> heatingFaults(const std::vector<OvenReading>& readings) {
  return faultsOf(readings, [](const OvenReading* before, const OvenReading& reading) -> std::string {
    if (before == nullptr) return "";
    const double rise = reading.celsius - before->celsius;
    if (!(rise > 0)) return "is not above the one before";
    if (rise > kFastestRise * (reading.minute - before->minute)) return "comes too soon after the one before";
    return "";
  });
}

std::vector<ReadingFault> coolingFaults(double roomCelsius, const std::vector<OvenReading>& readings) {
  return faultsOf(readings, [&](const OvenReading* before, const OvenReading& reading) -> std::string {
    if (!(reading.celsius > roomCelsius)) return "is not above the room";
    if (before != nullptr && !(reading.celsius < before->celsius)) return "is not below the one before";
    return "";
  });
}

absl::StatusOr<CurveFit> fitHeating(const ThermalCurve& prior, std::vector<OvenReading> readings) {
  if (readings.size() < 3) return tooFew(readings.size(), 3);
  if (const auto faults = heatingFaults(readings); !faults.empty())
    return refused(readings[static_cast<std::size_t>(faults.front().reading)], faults.front().why);
  CurveFit fit;
  fit.curve = prior;
  const double span = firstCelsius(readings) - prior.maximumCelsius;
  const Fitted fitted = fitAndTell(
      readings, kLongestHeatMinutes, std::nullopt,
      [&](double t) { return prior.maximumCelsius + span * std::exp(-t / prior.heatMinutes); }, fit);
  fit.curve.heatMinutes = fitted.tau;
  fit.curve.maximumCelsius = fitted.line.level;
  return accepted(std::move(fit));
}

absl::StatusOr<CurveFit> fitCooling(const ThermalCurve& prior, std::vector<OvenReading> readings, Door door) {
  if (readings.size() < 2) return tooFew(readings.size(), 2);
  const double room = prior.roomCelsius;
  if (const auto faults = coolingFaults(room, readings); !faults.empty())
    return refused(readings[static_cast<std::size_t>(faults.front().reading)], faults.front().why);
  CurveFit fit;
  fit.curve = prior;
  double& constant = door == Door::kClosed ? fit.curve.closedMinutes : fit.curve.ajarMinutes;
  const double span = firstCelsius(readings) - room;
  const double before = constant;
  const Fitted fitted = fitAndTell(
      readings, kLongestCoolMinutes, room, [&](double t) { return room + span * std::exp(-t / before); },
      fit);
  constant = fitted.tau;
  return accepted(std::move(fit));
}

std::vector<ReadingFault> riseFaults(const ThermalCurve& prior, const std::vector<OvenRise>& rises) {
  std::vector<ReadingFault> faults;
  for (std::size_t i = 0; i < rises.size(); ++i)
    if (std::string why = riseFault(prior, rises[i]); !why.empty())
      faults.push_back({static_cast<int>(i), std::move(why)});
  return faults;
}

absl::StatusOr<CurveFit> learnRises(const ThermalCurve& prior, const std::vector<OvenRise>& rises,
                                    double priorRises) {
  if (const auto faults = riseFaults(prior, rises); !faults.empty())
    return impossible("rise", rises, faults.front());
  CurveFit fit;
  fit.curve = prior;
  std::vector<double> constants;
  for (const OvenRise& rise : rises) constants.push_back(constantOf(prior, rise));
  fit.curve.heatMinutes = learned(prior.heatMinutes, constants, priorRises, fit);
  tell(
      rises, fit,
      [&](const ThermalCurve& curve, const OvenRise& rise) {
        return curve.maximumCelsius -
               (curve.maximumCelsius - rise.fromCelsius) * std::exp(-rise.minutes / curve.heatMinutes);
      },
      prior);
  return fit;
}

std::vector<ReadingFault> fallFaults(const ThermalCurve& prior, const std::vector<OvenRise>& falls) {
  std::vector<ReadingFault> faults;
  for (std::size_t i = 0; i < falls.size(); ++i)
    if (std::string why = fallFault(prior, falls[i]); !why.empty())
      faults.push_back({static_cast<int>(i), std::move(why)});
  return faults;
}

absl::StatusOr<CurveFit> learnFalls(const ThermalCurve& prior, const std::vector<OvenRise>& falls,
                                    double priorFalls) {
  if (const auto faults = fallFaults(prior, falls); !faults.empty())
    return impossible("fall", falls, faults.front());
  CurveFit fit;
  fit.curve = prior;
  std::vector<double> constants;
  for (const OvenRise& fall : falls) constants.push_back(fallConstantOf(prior, fall));
  fit.curve.ajarMinutes = learned(prior.ajarMinutes, constants, priorFalls, fit);
  tell(
      falls, fit,
      [&](const ThermalCurve& curve, const OvenRise& fall) {
        return curve.roomCelsius +
               (fall.fromCelsius - curve.roomCelsius) * std::exp(-fall.minutes / curve.ajarMinutes);
      },
      prior);
  return fit;
}

}  // namespace suppertide::kitchen
