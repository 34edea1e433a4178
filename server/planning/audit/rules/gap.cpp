// Rule 1, kGap: `least <= to - from <= most` between the edges of each gap; a step
// starts at or after its earliest minute, ends at or before its latest, lies on
// the axis, and lasts as long as its mode allows at its start (ferments: kReadiness).
//
// Breach: the step at fault; of a gap its `to`, and `from` as the other one. The
// first minute at which it is out of bounds, and the minutes by which.
#include <algorithm>

#include "server/planning/audit/rules/rules.h"

namespace suppertide::planning {
namespace {

void auditBounds(const Replay& replay, int index, Findings& findings) {
  const Step& step = replay.step(index);
  const Placement& at = replay.at(index);
  const Minute earliest = std::max(0, step.earliest);
  const Minute latest = std::min(replay.problem.limit, step.latest);
  if (at.start < earliest) findings.add({.step = index, .minute = at.start, .amount = earliest - at.start});
  if (at.end > latest) findings.add({.step = index, .minute = latest, .amount = at.end - latest});
  if (step.kind == StepKind::kFerment) return;
  if (const auto breach = lengthBreach(replay, index)) findings.add(*breach);
}

}  // namespace

void auditGap(const Replay& replay, Findings& findings) {
  for (const int i : replay.served) auditBounds(replay, i, findings);
  for (const Gap& gap : replay.problem.gaps) {
    if (!replay.isServed(gap.from) || !replay.isServed(gap.to)) continue;
    const Minute from = replay.edge(gap.from, gap.fromEdge);
    const Minute to = replay.edge(gap.to, gap.toEdge);
    const Minute distance = to - from;
    Breach breach{.step = gap.to, .otherStep = gap.from};
    if (distance < gap.least) {
      breach.minute = to;
      breach.amount = gap.least - distance;
      findings.add(breach);
    }
    if (distance > gap.most) {
      breach.minute = from + gap.most;
      breach.amount = distance - gap.most;
      findings.add(breach);
    }
  }
}

}  // namespace suppertide::planning
