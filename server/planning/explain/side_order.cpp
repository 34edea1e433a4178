#include "server/planning/explain/side_order.h"

#include <algorithm>

#include "server/planning/explain/oven_stay.h"

namespace suppertide::planning {
namespace {

bool isServed(const Problem& problem, const Schedule& schedule, int step) {
  return !schedule.unserved[static_cast<std::size_t>(nth(problem.steps, step).dish)];
}

bool counts(const std::vector<int>& modes, int mode) {
  return modes.empty() || std::find(modes.begin(), modes.end(), mode) != modes.end();
}

Minute minuteOf(const Schedule& schedule, int step, Edge edge) {
  const Placement& at = nth(schedule.steps, step);
  return edge == Edge::kStart ? at.start : at.end;
}

}  // namespace

std::vector<KeptApart> keptApart(const Problem& problem, const Schedule& schedule) {
  std::vector<KeptApart> kept;
  for (int index = 0; index < static_cast<int>(problem.separations.size()); ++index) {
    const Separation& separation = nth(problem.separations, index);
    const Placement& clean = nth(schedule.steps, separation.clean);
    const Placement& other = nth(schedule.steps, separation.other);
    const bool asked = isServed(problem, schedule, separation.clean) &&
                       isServed(problem, schedule, separation.other) && clean.start < clean.end &&
                       other.start < other.end && counts(separation.cleanModes, clean.mode) &&
                       counts(separation.otherModes, other.mode);
    if (!asked) continue;
    if (clean.end <= other.start || separation.cleaning >= kNoLimit)
      kept.push_back({separation.clean, separation.other, 0, index});
    else
      kept.push_back({separation.other, separation.clean, separation.cleaning, index});
  }
  return kept;
}

std::vector<TimedSpan> timedSpans(const Problem& problem, const Schedule& schedule) {
  std::vector<TimedSpan> spans;
  for (int index = 0; index < static_cast<int>(problem.clocks.size()); ++index) {
    const Clock& clock = nth(problem.clocks, index);
    if (!isServed(problem, schedule, clock.spans.front().from)) continue;
    const std::size_t first = spans.size();
    Minute sum = 0;
    for (const Clock::Span& span : clock.spans) {
      if (!counts(span.modes, nth(schedule.steps, span.from).mode)) continue;
      const Dish& dish = nth(problem.dishes, nth(problem.steps, span.from).dish);
      const Minute until = span.to < 0 ? std::max(dish.serve, nth(schedule.steps, dish.lastStep).end)
                                       : minuteOf(schedule, span.to, span.toEdge);
      const Minute now = std::max(0, until - minuteOf(schedule, span.from, span.fromEdge));
      spans.push_back({span.from, span.fromEdge, span.to, span.toEdge, now, 0, 1, index});
      sum += now;
    }
    for (std::size_t k = first; k < spans.size(); ++k) {
      spans[k].left = clock.most - sum;
      spans[k].spans = static_cast<int>(spans.size() - first);
    }
  }
  return spans;
}

}  // namespace suppertide::planning
