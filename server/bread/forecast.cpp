#include "server/bread/forecast.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>

namespace suppertide::bread {
namespace {

constexpr double kCrossingHours = 5e-4;

// The moment in (0, step] at which `run` reaches `level`, known to lie between its
// rise now and at the step's end. Regula falsi with the Illinois correction.
double crossing(const Fermentation& run, double step, double riseNow, double riseThen, double level) {
  double low = 0, high = step;
  double atLow = riseNow - level, atHigh = riseThen - level;
  double guess = high;
  for (int round = 0; round < 40 && high - low > kCrossingHours; ++round) {
    const double before = guess;
    guess = high - atHigh * (high - low) / (atHigh - atLow);
    if (std::abs(guess - before) < kCrossingHours / 4) break;
    const double atGuess = run.riseIn(guess) - level;
    if (atGuess == 0) break;
    if ((atGuess < 0) == (atHigh < 0)) {
      high = guess, atHigh = atGuess, atLow /= 2;
    } else {
      low = guess, atLow = atGuess, atHigh /= 2;
    }
  }
  return guess;
}

// Walks one fermentation and notes what a stage asks about.
class Watch {
 public:
  Watch(Fermentation run, const Stage& stage, const ForecastOptions& options)
      : run_(std::move(run)), stage_(stage), options_(options), rise_(run_.rise()), riseBefore_(rise_) {
    result_.startHour = result_.peakHour = hourBefore_ = run_.hour();
    result_.peakRise = rise_;
    limit_ = run_.hour() + std::min(options.searchHours, stage.mostHours);
    lastHour_ = run_.hour() + options.searchHours;
    nextSample_ = run_.hour();
    noteAtStart(stage.lowRise, result_.lowHour);
    noteAtStart(stage.wantedRise, result_.wantedHour);
    noteAtStart(stage.highRise, result_.highHour);
  }

  Forecast finish() {
    while (!run_.done() && run_.hour() < lastHour_ - 1e-9 && !(options_.sampleHours <= 0 && closed())) {
      advance(std::min(run_.nextStep(), lastHour_ - run_.hour()));
    }
    if (options_.sampleHours > 0 && nextSample_ <= run_.hour() + 1e-6) {
      result_.samples.push_back({run_.hour(), run_.state().celsius, rise_});
    }
    decideWindow();
    return std::move(result_);
  }

 private:
  // Nothing to come can change the window.
  bool closed() const { return fallHour_ || result_.highHour || run_.hour() >= limit_; }

  void noteAtStart(double level, std::optional<double>& hour) const {
    if (rise_ >= level) hour = run_.hour();
  }

  void noteReached(double level, double step, double next, std::optional<double>& hour) const {
    if (!hour && next >= level) hour = run_.hour() + crossing(run_, step, rise_, next, level);
  }

  void advance(double step) {
    takeSamples(step);
    const DoughState after = run_.peek(step);
    const double next = run_.riseOf(after);
    noteReached(stage_.lowRise, step, next, result_.lowHour);
    noteReached(stage_.wantedRise, step, next, result_.wantedHour);
    noteReached(stage_.highRise, step, next, result_.highHour);
    notePeak(step, next);
    const double fallen = (1 - stage_.fallFromPeak) * result_.peakRise;
    if (!fallHour_ && result_.lowHour && next < fallen) {
      fallHour_ = run_.hour() + (rise_ > fallen ? crossing(run_, step, rise_, next, fallen) : 0.0);
    }
    riseBefore_ = rise_;
    hourBefore_ = run_.hour();
    rise_ = next;
    run_.moveTo(after, step);
  }

  void notePeak(double step, double next) {
    if (next > result_.peakRise) {
      result_.peakRise = next;
      result_.peakHour = run_.hour() + step;
      result_.peaked = false;
      return;
    }
    const bool topIsHere = !result_.peaked && result_.peakHour == run_.hour() && next < rise_;
    if (!topIsHere) return;
    result_.peaked = true;
    const double back = run_.hour() - hourBefore_;
    if (back <= 0) return;
    // The top of the parabola through the three last points.
    const double slopeBefore = (rise_ - riseBefore_) / back;
    const double slopeAfter = (next - rise_) / step;
    const double bend = (slopeAfter - slopeBefore) / (back + step);
    if (bend >= 0) return;
    const double slopeHere = slopeBefore + bend * back;
    result_.peakHour += -slopeHere / (2 * bend);
    result_.peakRise += -slopeHere * slopeHere / (4 * bend);
  }

  void takeSamples(double step) {
    if (options_.sampleHours <= 0) return;
    for (; nextSample_ < run_.hour() + step - 1e-9; nextSample_ += options_.sampleHours) {
      const DoughState state = run_.peek(std::max(0.0, nextSample_ - run_.hour()));
      result_.samples.push_back({nextSample_, state.celsius, run_.riseOf(state)});
    }
  }

  void decideWindow() {
    if (!result_.lowHour) return;
    ReadinessWindow window;
    window.hours.start = std::max(*result_.lowHour, result_.startHour + stage_.leastHours);
    window.hours.limit = std::min({limit_, result_.highHour.value_or(limit_), fallHour_.value_or(limit_)});
    if (window.hours.empty()) return;
    const double best =
        std::max(result_.wantedHour.value_or(result_.peakHour), result_.startHour + stage_.wantedHours);
    window.best = std::clamp(best, window.hours.start, window.hours.limit);
    result_.window = window;
  }

  Fermentation run_;
  const Stage& stage_;
  const ForecastOptions& options_;
  Forecast result_;
  double limit_ = 0;     // hour at which the window closes at the latest
  double lastHour_ = 0;  // of the search
  double nextSample_ = 0;
  double rise_;
  double riseBefore_;
  double hourBefore_ = 0;
  std::optional<double> fallHour_;
};

double logHours(double hour, double startHour) {
  return std::log(std::max(1e-3, hour - startHour));
}

// One cause of uncertainty: the window one step to either side of the likely case.
using Pair = std::array<std::optional<ReadinessWindow>, 2>;

// Root of summed squares of the largest shift to the `sign` side by each cause.
double shiftOf(const ReadinessWindow& likely, std::span<const Pair> causes, double startHour, double sign,
               const std::function<double(const ReadinessWindow&)>& edge) {
  double squares = 0;
  for (const Pair& cause : causes) {
    double largest = 0;
    for (const auto& window : cause) {
      if (!window) continue;
      const double shift = sign * (logHours(edge(*window), startHour) - logHours(edge(likely), startHour));
      largest = std::max(largest, shift);
    }
    squares += largest * largest;
  }
  return std::sqrt(squares);
}

ReadinessWindow movedWindow(const ReadinessWindow& likely, std::span<const Pair> causes, double startHour,
                            double sign) {
  const auto move = [&](const std::function<double(const ReadinessWindow&)>& edge) {
    const double hours = edge(likely) - startHour;
    return startHour + hours * std::exp(sign * shiftOf(likely, causes, startHour, sign, edge));
  };
  return {{move([](const ReadinessWindow& w) { return w.hours.start; }),
           move([](const ReadinessWindow& w) { return w.hours.limit; })},
          move([](const ReadinessWindow& w) { return w.best; })};
}

}  // namespace

Forecast forecast(const DoughKind& kind, const DoughState& state, double startHour,
                  std::span<const Stay> stays, const Stage& stage, const ForecastOptions& options) {
  return Watch(Fermentation(kind, state, startHour, stays, options.hourOfDayAtZero), stage, options).finish();
}

ForecastBand forecastBand(const DoughKind& kind, const DoughState& state, double startHour,
                          std::span<const Stay> stays, const Stage& stage, const Uncertainty& uncertainty,
                          const ForecastOptions& options) {
  ForecastOptions quiet = options;
  quiet.sampleHours = 0;
  const std::array<Shift, 3> deviations = independentCauses(uncertainty);
  std::array<Pair, 3> causes;
  for (std::size_t cause = 0; cause < 3; ++cause) {
    for (std::size_t side = 0; side < 2; ++side) {
      const double steps = side == 0 ? kNinthDecile : -kNinthDecile;
      const Shift& one = deviations[cause];
      const Shift shift = {steps * one.logVigour, steps * one.lag, steps * one.placeKelvin};
      causes[cause][side] =
          forecast(kind, shifted(state, shift), startHour, shifted(stays, shift), stage, quiet).window;
    }
  }
  ForecastBand band{forecast(kind, state, startHour, stays, stage, options), {}, {}};
  if (!band.likely.window) {
    band.fast = causes[0][0];
    return band;
  }
  bool alwaysReady = true;
  for (const Pair& cause : causes) alwaysReady = alwaysReady && cause[0] && cause[1];
  band.fast = movedWindow(*band.likely.window, causes, startHour, -1);
  if (alwaysReady) band.slow = movedWindow(*band.likely.window, causes, startHour, 1);
  return band;
}

}  // namespace suppertide::bread
