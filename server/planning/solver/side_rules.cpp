#include "server/planning/solver/side_rules.h"

#include <algorithm>

#include "server/base/index.h"
#include "server/planning/solver/occupancy.h"

namespace suppertide::planning {
namespace {

bool among(const std::vector<int>& modes, int mode) {
  return modes.empty() || std::find(modes.begin(), modes.end(), mode) != modes.end();
}

bool served(const Problem& problem, int step, const Schedule& plan) {
  return !plan.unserved[static_cast<std::size_t>(nth(problem.steps, step).dish)];
}

}  // namespace

Minute spanMinutes(const Problem& problem, const Clock::Span& span, const Schedule& plan) {
  const Placement& from = nth(plan.steps, span.from);
  if (!among(span.modes, from.mode)) return 0;
  const Minute begin = span.fromEdge == Edge::kStart ? from.start : from.end;
  if (span.to < 0) {
    const Dish& dish = nth(problem.dishes, nth(problem.steps, span.from).dish);
    return std::max(0, std::max(dish.serve, nth(plan.steps, dish.lastStep).end) - begin);
  }
  const Placement& to = nth(plan.steps, span.to);
  return std::max(0, (span.toEdge == Edge::kStart ? to.start : to.end) - begin);
}

Minute clockMinutes(const Problem& problem, const Clock& clock, const Schedule& plan) {
  Minute sum = 0;
  for (const Clock::Span& span : clock.spans) sum += spanMinutes(problem, span, plan);
  return sum;
}

bool asksOf(const Separation& separation, int cleanMode, int otherMode) {
  return among(separation.cleanModes, cleanMode) && among(separation.otherModes, otherMode);
}

bool apart(const Separation& separation, const Placement& clean, const Placement& other) {
  return clean.end <= other.start ||
         (separation.cleaning < kNoLimit && clean.start >= other.end + separation.cleaning);
}

bool breaks(const Problem& problem, const Separation& separation, const Schedule& plan) {
  if (!served(problem, separation.clean, plan) || !served(problem, separation.other, plan)) return false;
  const Placement& clean = nth(plan.steps, separation.clean);
  const Placement& other = nth(plan.steps, separation.other);
  if (clean.start == clean.end || other.start == other.end) return false;
  return asksOf(separation, clean.mode, other.mode) && !apart(separation, clean, other);
}

std::int64_t usedOf(const Problem& problem, int resource, const Schedule& plan) {
  std::int64_t sum = 0;
  for (const Resource::Taken& taken : nth(problem.resources, resource).taken) sum += taken.amount;
  for (int i = 0; i < sizeOf(problem.steps); ++i) {
    const Placement& place = nth(plan.steps, i);
    if (served(problem, i, plan) && place.start < place.end)
      sum += amountOf(nth(nth(problem.steps, i).modes, place.mode), resource);
  }
  return sum;
}

}  // namespace suppertide::planning
