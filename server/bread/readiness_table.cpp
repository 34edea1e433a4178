#include "server/bread/readiness_table.h"

#include <algorithm>
#include <cmath>

namespace suppertide::bread {
namespace {

constexpr int kMinutesPerDay = 24 * 60;
constexpr double kSameMinute = 1e-6;

// Minutes after the start, or never ready.
struct Edges {
  bool ready = false;
  double earliest = 0;
  double best = 0;
  double limit = 0;
};

Edges edgesOf(const std::optional<ReadinessWindow>& window, double startHour) {
  if (!window) return {};
  const auto minutes = [&](double hour) { return (hour - startHour) * 60; };
  return {true, minutes(window->hours.start), minutes(window->best), minutes(window->hours.limit)};
}

ReadinessRow rowOf(const Edges& edges) {
  ReadinessRow row;
  if (!edges.ready) return row;
  row.earliest = static_cast<int>(std::ceil(edges.earliest - kSameMinute));
  row.latest = static_cast<int>(std::ceil(edges.limit - kSameMinute)) - 1;
  row.ready = row.earliest <= row.latest;
  if (!row.ready) return {};
  row.best = std::clamp(static_cast<int>(std::lround(edges.best)), row.earliest, row.latest);
  return row;
}

Edges along(const Edges& a, const Edges& b, double share) {
  const auto mix = [&](double from, double to) { return from + (to - from) * share; };
  return {true, mix(a.earliest, b.earliest), mix(a.best, b.best), mix(a.limit, b.limit)};
}

// Whether the middle lies so near the straight line that half the line errs by a quarter of this.
bool isStraight(const Edges& a, const Edges& middle, const Edges& b) {
  constexpr double kMinutesOffLine = 0.9;
  if (!a.ready || !middle.ready || !b.ready) return false;
  const Edges line = along(a, b, 0.5);
  return std::max({std::abs(line.earliest - middle.earliest), std::abs(line.best - middle.best),
                   std::abs(line.limit - middle.limit)}) < kMinutesOffLine;
}

// The edges by start minute of one day (or for all starts alike); forecasts are made as needed.
class DayOfStarts {
 public:
  DayOfStarts(const DoughKind& kind, const DoughState& state, std::span<const Stay> stays, const Stage& stage,
              const TableOptions& options)
      : kind_(kind),
        state_(state),
        stays_(stays),
        stage_(stage),
        options_{options.hourOfDayAtZeroMinutes / 60.0, options.searchHours, 0},
        constant_(
            std::all_of(stays.begin(), stays.end(), [](const Stay& stay) { return stay.air.isConstant(); })),
        forecast_(kMinutesPerDay + 1) {}

  Edges exactAt(int minute) { return forecastAt(ofDay(minute)); }

  Edges at(int minute) {
    const int start = ofDay(minute);
    // Places bend at full hours, which the table's hours are where clocks go by the hour.
    int low = start / 60 * 60, limit = low + 60;
    while (limit - low >= kFewestMinutes) {
      const int middle = (low + limit) / 2;
      const bool straight = isStraight(forecastAt(low), forecastAt(middle), forecastAt(limit));
      (start < middle ? limit : low) = middle;
      if (straight) {
        return along(forecastAt(low), forecastAt(limit), (start - low) / static_cast<double>(limit - low));
      }
    }
    return forecastAt(start);
  }

 private:
  static constexpr int kFewestMinutes = 4;

  int ofDay(int minute) const {
    if (constant_) return 0;
    return ((minute % kMinutesPerDay) + kMinutesPerDay) % kMinutesPerDay;
  }

  const Edges& forecastAt(int minuteOfDay) {
    std::optional<Edges>& known = forecast_[static_cast<std::size_t>(minuteOfDay)];
    if (!known) {
      const double hour = minuteOfDay / 60.0;
      known = edgesOf(forecast(kind_, state_, hour, stays_, stage_, options_).window, hour);
    }
    return *known;
  }

  const DoughKind& kind_;
  const DoughState& state_;
  std::span<const Stay> stays_;
  const Stage& stage_;
  ForecastOptions options_;
  bool constant_;
  std::vector<std::optional<Edges>> forecast_;  // by minute of the day, its end included
};

// `own` narrowed to what suits `other` too, or marked compromised.
ReadinessRow narrowed(ReadinessRow own, const ReadinessRow& other) {
  const int earliest = std::max(own.earliest, other.earliest);
  const int latest = std::min(own.latest, other.latest);
  if (!other.ready || earliest > latest) {
    own.compromised = true;
    return own;
  }
  own.earliest = earliest;
  own.latest = latest;
  return own;
}

}  // namespace

std::vector<ReadinessRow> readinessTable(const DoughKind& kind, const DoughState& state,
                                         std::span<const Stay> stays, const Stage& stage,
                                         const StartGrid& grid, const TableOptions& options) {
  DayOfStarts day(kind, state, stays, stage, options);
  std::vector<ReadinessRow> rows;
  rows.reserve(static_cast<std::size_t>(std::max(0, grid.count)));
  for (int k = 0; k < grid.count; ++k) {
    const int minute = grid.firstMinute + k * grid.pitchMinutes;
    rows.push_back(rowOf(grid.pitchMinutes < kEachStartFromMinutes ? day.at(minute) : day.exactAt(minute)));
  }
  return rows;
}

std::vector<ReadinessRow> robustReadinessTable(const DoughKind& kind, std::span<const DoughState> states,
                                               std::size_t likely, std::span<const Stay> stays,
                                               const Stage& stage, const StartGrid& grid,
                                               const TableOptions& options) {
  const auto wanted = readinessTable(kind, states[likely], stays, stage, grid, options);
  std::vector<ReadinessRow> rows = wanted;
  for (std::size_t s = 0; s < states.size(); ++s) {
    if (s == likely) continue;
    const auto others = readinessTable(kind, states[s], stays, stage, grid, options);
    for (std::size_t k = 0; k < rows.size(); ++k) {
      if (rows[k].ready && !rows[k].compromised) rows[k] = narrowed(rows[k], others[k]);
    }
  }
  for (std::size_t k = 0; k < rows.size(); ++k) {
    if (rows[k].compromised) {
      rows[k] = wanted[k];
      rows[k].compromised = true;
    } else if (rows[k].ready) {
      rows[k].best = std::clamp(wanted[k].best, rows[k].earliest, rows[k].latest);
    }
  }
  return rows;
}

std::vector<DoughState> statesAtReadiness(const DoughKind& kind, const DoughState& state, double startHour,
                                          std::span<const Stay> stays, const Stage& stage,
                                          const ForecastOptions& options) {
  const auto window = forecast(kind, state, startHour, stays, stage, options).window;
  if (!window) return {};
  std::vector<DoughState> states;
  for (double hour : {window->hours.start, window->best, window->hours.limit}) {
    states.push_back(stateAfter(kind, state, startHour, stays, hour - startHour, options.hourOfDayAtZero));
  }
  return states;
}

}  // namespace suppertide::bread
