// The order that a plan means: what must be done before what, whatever the lengths.
//
// Every step has two events, its start (2 * step) and its end (2 * step + 1).
#pragma once

#include <vector>

#include "server/planning/model/schedule.h"

namespace suppertide::planning {

inline int startOf(int step) {
  return 2 * step;
}
inline int endOf(int step) {
  return 2 * step + 1;
}
inline int eventOf(int step, Edge edge) {
  return edge == Edge::kStart ? startOf(step) : endOf(step);
}
inline Minute plannedAt(const Schedule& schedule, int event) {
  const Placement& at = schedule.steps[static_cast<std::size_t>(event / 2)];
  return event % 2 == 0 ? at.start : at.end;
}

// `to` is not before `from` + `lag`.
struct Follow {
  int from = 0;
  int to = 0;
  Minute lag = 0;
};

// Two loads of one oven that are never in it together: the second enters
// `lagAfter` after the first is out, or, if the evening has it so, is out
// `lagBefore` before the first enters.
struct Turn {
  int first = 0;
  int second = 0;
  Minute lagAfter = 0;
  Minute lagBefore = 0;
};

struct PlanOrder {
  std::vector<Follow> follows;    // gaps and separations, and an oven's phases
  std::vector<Follow> within;     // `to` had better not be after `from` + `lag`
  std::vector<Follow> handovers;  // of cooks and things, unit by unit
  std::vector<Turn> turns;
  std::vector<Minute> notBefore;  // by step: its start, whatever comes before it
};

// Of the served steps, in the order in which the schedule has them. All point
// forward in planned time.
PlanOrder orderOf(const Problem& problem, const Schedule& schedule);

// Parts of it.
void followGaps(const Problem& problem, const Schedule& schedule, PlanOrder& order);
void followCooksAndThings(const Problem& problem, const Schedule& schedule, PlanOrder& order);
void followOvens(const Problem& problem, const Schedule& schedule, PlanOrder& order);

bool isServed(const Problem& problem, const Schedule& schedule, int step);

}  // namespace suppertide::planning
