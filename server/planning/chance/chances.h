// How evenings may turn out: the chance that what was planned is ready in time.
//
// A plan counts on likely lengths. Here it is cooked many times, each evening
// with lengths of its own (Mode::spread, Unknown), by a sensible cook who keeps
// to the plan's order and times as far as the evening lets him:
// - A step starts when its planned time has come, what it follows is done, and
//   its cook, things and oven are free. It starts before its planned time only
//   where it would otherwise come later after another step than their gap allows:
//   the dough is watched, not the clock.
// - Who may have a cook, thing or oven first is as in the plan; but what is done
//   before the one that it overtakes can begin does not wait for it.
// - A ferment ends at its planned time if the dough is then inside its window,
//   else at the window's near end; the whole window scales with the spread.
// - Another elastic step ends at its planned time, or once it has lasted its
//   shortest. All others take as long as they take.
// Cooks stay up for what is late. Limits that an evening breaks (most gaps,
// clocks) are not counted; only when dishes are ready is.
//
// Deterministic: evening k of a seed has the same lengths in whatever order, and
// on however many threads, evenings are simulated.
#pragma once

#include <cstdint>
#include <vector>

#include "server/planning/model/schedule.h"

namespace suppertide::planning {

struct EveningOptions {
  int evenings = 10'000;  // at least 1
  std::uint64_t seed = 1;
  Minute grace = 5;   // ready at most this long after its serving time is in time
  bool bands = true;  // false: leave out Chances::starts and ends
  // Dishes served together, as indices into Problem::dishes.
  std::vector<std::vector<int>> courses;
};

// Eight of ten evenings lie in [early, late], widened to whole minutes.
struct Band {
  Minute early = 0;
  Minute late = 0;
  friend bool operator==(const Band&, const Band&) = default;
};

// The step that most often ran longest over its planned length on the way to a
// course's being late, and in which part of the late evenings. -1, 0: none did.
struct Blame {
  int step = -1;
  double share = 0;
};

struct Chances {
  std::vector<double> byDish;       // as Problem::dishes; 0 when unserved
  std::vector<double> byCourse;     // all its served dishes in time; 0 when it has none
  std::vector<Blame> blame;         // by course
  std::vector<double> lateMinutes;  // by dish: the mean of the minutes late beyond the grace
  // By step: on which part of the evenings a late course waited for it, directly or through others.
  std::vector<double> waitedFor;
  std::vector<Band> starts;  // as Problem::steps; steps of unserved dishes as placed
  std::vector<Band> ends;
};

// `problem` passed check(), `schedule` fits it and keeps its rules. About 40 ns
// a step and evening.
Chances chancesOf(const Problem& problem, const Schedule& schedule, const EveningOptions& options);

}  // namespace suppertide::planning
