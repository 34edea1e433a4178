// "Starts at this minute, ready after that many": the planner's view of a ferment.
#pragma once

#include <span>
#include <vector>

#include "server/bread/forecast.h"

namespace suppertide::bread {

// Start minutes firstMinute + k * pitchMinutes, k in [0, count), on the caller's
// axis in minutes (hour 1 is minute 60).
struct StartGrid {
  int firstMinute = 0;
  int pitchMinutes = 10;
  int count = 0;
};

// Whole minutes after the start, all inside the window: earliest <= best <= latest.
// Not ready: never within the search, or for less than a whole minute.
struct ReadinessRow {
  bool ready = false;
  bool compromised = false;  // robust table only: no moment suits every start state
  int earliest = 0;
  int best = 0;
  int latest = 0;
  friend bool operator==(const ReadinessRow&, const ReadinessRow&) = default;
};

struct TableOptions {
  int hourOfDayAtZeroMinutes = 0;     // local wall clock at minute 0, in minutes after midnight
  double searchHours = kSearchHours;  // after the start
};

// One row a start, each for a dough in `state` that enters the first of `stays`
// then (give the last one kOpenEnded). Places repeat daily, so one day of starts
// serves all days, and one start where every place is constant. With a pitch of
// kEachStartFromMinutes or more each start is a forecast of its own; below, starts
// are forecast where the table bends and lie on straight lines between, within a
// minute of their own forecasts. Cost: about 10 microseconds a forecast; 50 to 100
// forecasts for every minute of a day.
inline constexpr int kEachStartFromMinutes = 10;
std::vector<ReadinessRow> readinessTable(const DoughKind& kind, const DoughState& state,
                                         std::span<const Stay> stays, const Stage& stage,
                                         const StartGrid& grid, const TableOptions& options = {});

// The minutes at which the dough is ready whichever of `states` it was in.
// `states[likely]` decides `best`, and the whole row, marked compromised, where
// the windows have no minute in common. States that are never ready make the row
// compromised too; the likely one that is never ready makes it not ready.
std::vector<ReadinessRow> robustReadinessTable(const DoughKind& kind, std::span<const DoughState> states,
                                               std::size_t likely, std::span<const Stay> stays,
                                               const Stage& stage, const StartGrid& grid,
                                               const TableOptions& options = {});

// The states in which a stage hands its dough on, when it ends at the start, the
// best moment and the limit of its window: for the robust table of the next.
// Empty when the stage is never ready. Order: earliest, best, latest.
std::vector<DoughState> statesAtReadiness(const DoughKind& kind, const DoughState& state, double startHour,
                                          std::span<const Stay> stays, const Stage& stage,
                                          const ForecastOptions& options = {});

}  // namespace suppertide::bread
