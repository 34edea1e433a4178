// Rule 8, kFoodSafety: the minutes that a clock counts are together at most its
// `most`. Every minute of the plan is counted once for each span that covers it.
// A span to -1 runs until the dish is served, or ready when that is later; a
// span with modes counts only when its `from` is in one of them.
//
// Breach: the clock as the thing; the first minute that is one too many; the
// span that counted it (the last of several), as its `from` and its `to` (-1:
// until served); by how many minutes the whole count is above `most`.
#include <algorithm>

#include "server/planning/audit/rules/rules.h"

namespace suppertide::planning {
namespace {

struct Counted {
  const Clock::Span* span;
  Minute start;
  Minute limit;
};

std::vector<Counted> countedSpans(const Replay& replay, const Clock& clock) {
  std::vector<Counted> counted;
  for (const Clock::Span& span : clock.spans) {
    if (!replay.isServed(span.from) || (span.to >= 0 && !replay.isServed(span.to))) continue;
    if (!span.modes.empty() &&
        std::count(span.modes.begin(), span.modes.end(), replay.at(span.from).mode) == 0)
      continue;
    const Dish& dish = nth(replay.problem.dishes, replay.step(span.from).dish);
    const Minute limit =
        span.to >= 0 ? replay.edge(span.to, span.toEdge) : std::max(dish.serve, replay.at(dish.lastStep).end);
    counted.push_back({&span, replay.edge(span.from, span.fromEdge), limit});
  }
  return counted;
}

void auditClock(const Replay& replay, int index, Findings& findings) {
  const Clock& clock = nth(replay.problem.clocks, index);
  const std::vector<Counted> counted = countedSpans(replay, clock);
  Minute first = kNoLimit;
  Minute last = -kNoLimit;
  for (const Counted& span : counted) {
    first = std::min(first, span.start);
    last = std::max(last, span.limit);
  }
  Minute sum = 0;
  Breach breach{.thing = index};
  for (Minute t = first; t < last; ++t) {
    for (const Counted& span : counted) {
      if (t < span.start || t >= span.limit) continue;
      ++sum;
      if (sum <= clock.most || (breach.step >= 0 && breach.minute < t)) continue;
      breach.step = span.span->from;
      breach.otherStep = span.span->to;
      breach.minute = t;
    }
  }
  breach.amount = sum - clock.most;
  if (breach.step >= 0) findings.add(breach);
}

}  // namespace

void auditFoodSafety(const Replay& replay, Findings& findings) {
  for (int c = 0; c < sizeOf(replay.problem.clocks); ++c) auditClock(replay, c, findings);
}

}  // namespace suppertide::planning
