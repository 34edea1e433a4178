#include "server/bread/readiness_table.h"

#include <algorithm>
#include <cmath>

namespace suppertide::bread {
namespace {

constexpr int kMinutesPerDay = 24 * 60;
constexpr double kSameMinute = 1e-6;

// Rows after which the table repeats: computed ones in [1, grid.count].
int distinctRows(std::span<const Stay> stays, const StartGrid& grid) {
  const bool constant =
      std::all_of(stays.begin(), stays.end(), [](const Stay& stay) { return stay.air.isConstant(); });
  if (constant) return std::min(1, grid.count);
  if (grid.pitchMinutes <= 0 || kMinutesPerDay % grid.pitchMinutes != 0) return grid.count;
  return std::min(grid.count, kMinutesPerDay / grid.pitchMinutes);
}

ReadinessRow rowOf(const std::optional<ReadinessWindow>& window, double startHour) {
  ReadinessRow row;
  if (!window) return row;
  const auto minutes = [&](double hour) { return (hour - startHour) * 60; };
  row.earliest = static_cast<int>(std::ceil(minutes(window->hours.start) - kSameMinute));
  row.latest = static_cast<int>(std::ceil(minutes(window->hours.limit) - kSameMinute)) - 1;
  row.ready = row.earliest <= row.latest;
  if (!row.ready) return {};
  row.best = std::clamp(static_cast<int>(std::lround(minutes(window->best))), row.earliest, row.latest);
  return row;
}

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
  const int distinct = distinctRows(stays, grid);
  const ForecastOptions forecastOptions = {options.hourOfDayAtZeroMinutes / 60.0, options.searchHours, 0};
  std::vector<ReadinessRow> rows;
  rows.reserve(static_cast<std::size_t>(std::max(0, grid.count)));
  for (int k = 0; k < grid.count; ++k) {
    if (k >= distinct) {
      rows.push_back(rows[static_cast<std::size_t>(k - distinct)]);
      continue;
    }
    const double startHour = (grid.firstMinute + k * grid.pitchMinutes) / 60.0;
    rows.push_back(rowOf(forecast(kind, state, startHour, stays, stage, forecastOptions).window, startHour));
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
