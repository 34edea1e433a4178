#include "server/planning/explain/shift.h"

#include "server/planning/explain/obstacles.h"
#include "server/planning/solver/repair.h"

namespace suppertide::planning {
namespace {

constexpr int kRounds = 10;

// Everything else is wanted where it is.
Problem pinnedThere(const Problem& problem, const Schedule& schedule, int step, Minute start) {
  Problem moved = problem;
  for (std::size_t i = 0; i < moved.steps.size(); ++i) {
    const Placement& at = schedule.steps[i];
    moved.steps[i].announced = Announced{at.start, at.mode, at.cook, 1};
  }
  Step& what = moved.steps[static_cast<std::size_t>(step)];
  what.announced.reset();
  what.pin.start = start;
  what.pin.end.reset();
  return moved;
}

}  // namespace

Shift shiftStep(const Problem& problem, const Schedule& schedule, int step, Minute minutes, Minute grid) {
  Shift shift;
  Placement moved = nth(schedule.steps, step);
  moved.start += minutes;
  moved.end += minutes;
  shift.obstacles = Obstacles(problem, schedule).at(step, moved);
  if (moved.start < 0 || moved.start >= problem.limit) return shift;
  RepairOptions options;
  options.search.grid = grid;
  options.rounds = kRounds;
  const Problem wanted = pinnedThere(problem, schedule, step, moved.start);
  const auto repaired = repairPlan(wanted, schedule, options);
  if (!repaired) return shift;
  shift.before = costOf(problem, schedule).total;
  shift.after = costOf(problem, repaired->schedule).total;
  const int dish = nth(problem.steps, step).dish;
  shift.possible = costIn(shift.after, Tier::kUnserved) <= costIn(shift.before, Tier::kUnserved) &&
                   !repaired->schedule.unserved[static_cast<std::size_t>(dish)];
  shift.schedule = repaired->schedule;
  return shift;
}

}  // namespace suppertide::planning
