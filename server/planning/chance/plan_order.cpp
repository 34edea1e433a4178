#include "server/planning/chance/plan_order.h"

#include <algorithm>
#include <cstddef>

namespace suppertide::planning {
namespace {

bool asked(const Problem& problem, const Schedule& schedule, int step, const std::vector<int>& modes) {
  if (!isServed(problem, schedule, step)) return false;
  const Placement& at = schedule.steps[static_cast<std::size_t>(step)];
  return at.start < at.end && (modes.empty() || std::count(modes.begin(), modes.end(), at.mode) > 0);
}

void followSeparations(const Problem& problem, const Schedule& schedule, PlanOrder& order) {
  for (const Separation& separation : problem.separations) {
    if (!asked(problem, schedule, separation.clean, separation.cleanModes) ||
        !asked(problem, schedule, separation.other, separation.otherModes))
      continue;
    const bool cleanFirst =
        plannedAt(schedule, endOf(separation.clean)) <= plannedAt(schedule, startOf(separation.other));
    if (cleanFirst) {
      order.follows.push_back({endOf(separation.clean), startOf(separation.other), 0});
    } else if (separation.cleaning < kNoLimit) {
      order.follows.push_back({endOf(separation.other), startOf(separation.clean), separation.cleaning});
    }
  }
}

}  // namespace

bool isServed(const Problem& problem, const Schedule& schedule, int step) {
  const int dish = problem.steps[static_cast<std::size_t>(step)].dish;
  return !schedule.unserved[static_cast<std::size_t>(dish)];
}

// A gap whose `from` is planned after its `to` says how early `to` may be; nobody can keep that on the
// evening.
void followGaps(const Problem& problem, const Schedule& schedule, PlanOrder& order) {
  for (const Gap& gap : problem.gaps) {
    if (!isServed(problem, schedule, gap.from) || !isServed(problem, schedule, gap.to)) continue;
    const int from = eventOf(gap.from, gap.fromEdge);
    const int to = eventOf(gap.to, gap.toEdge);
    if (plannedAt(schedule, from) > plannedAt(schedule, to)) continue;
    if (gap.least > -kNoLimit) order.follows.push_back({from, to, gap.least});
    if (gap.most < kNoLimit && gap.toEdge == Edge::kStart) order.within.push_back({from, to, gap.most});
  }
}

PlanOrder orderOf(const Problem& problem, const Schedule& schedule) {
  PlanOrder order;
  order.notBefore.assign(problem.steps.size(), 0);
  followGaps(problem, schedule, order);
  followSeparations(problem, schedule, order);
  followCooksAndThings(problem, schedule, order);
  followOvens(problem, schedule, order);
  return order;
}

}  // namespace suppertide::planning
