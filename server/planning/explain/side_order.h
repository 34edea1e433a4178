// Clocks and separations as a schedule keeps them. Internal to the explainer.
#pragma once

#include <optional>
#include <vector>

#include "server/planning/model/schedule.h"

namespace suppertide::planning {

// What a separation asks between two steps in the order that the schedule has them in.
struct KeptApart {
  int first = 0;
  int second = 0;
  Minute least = 0;    // from the end of `first` to the start of `second`
  int separation = 0;  // index
};
// Of the separations that ask something of a schedule: both steps served, lasting and in such modes.
std::vector<KeptApart> keptApart(const Problem& problem, const Schedule& schedule);

// How long one span of a clock may be while all other steps stay: its own minutes and what the clock
// has left.
struct TimedSpan {
  int from = 0;
  Edge fromEdge = Edge::kStart;
  int to = 0;  // -1: until served
  Edge toEdge = Edge::kEnd;
  Minute now = 0;   // minutes it counts
  Minute left = 0;  // that all spans of the clock may grow by together
  int spans = 1;    // of the clock
  int clock = 0;    // index
};
std::vector<TimedSpan> timedSpans(const Problem& problem, const Schedule& schedule);

}  // namespace suppertide::planning
