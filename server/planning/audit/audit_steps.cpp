// Steps by themselves and against each other: bounds, lengths, gaps, serving, pins, links.
#include <algorithm>
#include <cstdlib>

#include "server/planning/audit/replay.h"

namespace suppertide::planning {
namespace {

void auditLength(Replay& replay, int index) {
  const Step& step = replay.step(index);
  const Placement& at = replay.at(index);
  const Rule rule = step.kind == StepKind::kFerment ? Rule::kReadiness : Rule::kGap;
  const Length allowed = replay.mode(index).length.at(at.start);
  const Minute length = at.end - at.start;
  if (!allowed.possible()) {
    replay.breaches.push_back({rule, index, -1, -1, at.start, std::max(1, length)});
  } else if (length < allowed.shortest) {
    replay.breaches.push_back({rule, index, -1, -1, at.end, allowed.shortest - length});
  } else if (length > allowed.longest) {
    replay.breaches.push_back({rule, index, -1, -1, at.start + allowed.longest, length - allowed.longest});
  }
}

}  // namespace

void auditBounds(Replay& replay) {
  for (const int i : replay.served) {
    const Step& step = replay.step(i);
    const Placement& at = replay.at(i);
    const Minute earliest = std::max(0, step.earliest);
    const Minute latest = std::min(replay.problem.limit, step.latest);
    if (at.start < earliest)
      replay.breaches.push_back({Rule::kGap, i, -1, -1, at.start, earliest - at.start});
    if (at.end > latest) replay.breaches.push_back({Rule::kGap, i, -1, -1, latest, at.end - latest});
    auditLength(replay, i);
  }
}

void auditGaps(Replay& replay) {
  for (const Gap& gap : replay.problem.gaps) {
    if (!replay.isServed(gap.from) || !replay.isServed(gap.to)) continue;
    const Minute from = gap.fromEdge == Edge::kStart ? replay.at(gap.from).start : replay.at(gap.from).end;
    const Minute to = gap.toEdge == Edge::kStart ? replay.at(gap.to).start : replay.at(gap.to).end;
    const Minute distance = to - from;
    if (distance < gap.least)
      replay.breaches.push_back({Rule::kGap, gap.to, gap.from, -1, to, gap.least - distance});
    if (distance > gap.most)
      replay.breaches.push_back({Rule::kGap, gap.to, gap.from, -1, from + gap.most, distance - gap.most});
  }
}

void auditServing(Replay& replay) {
  for (int d = 0; d < static_cast<int>(replay.problem.dishes.size()); ++d) {
    const Dish& dish = nth(replay.problem.dishes, d);
    if (replay.schedule.unserved[static_cast<std::size_t>(d)] || !replay.isServed(dish.lastStep)) continue;
    const Minute ready = replay.at(dish.lastStep).end;
    const Minute wait = dish.serve - ready;
    if (wait > dish.holdLimit)
      replay.breaches.push_back({Rule::kServing, dish.lastStep, -1, d, ready, wait - dish.holdLimit});
    if (-wait > dish.lateLimit)
      replay.breaches.push_back(
          {Rule::kServing, dish.lastStep, -1, d, dish.serve + dish.lateLimit, -wait - dish.lateLimit});
  }
}

void auditDecisions(Replay& replay) {
  for (const int i : replay.served) {
    const Pin& pin = replay.step(i).pin;
    const Placement& at = replay.at(i);
    const auto missed = [&](Minute minute, int amount) {
      replay.breaches.push_back({Rule::kPinned, i, -1, -1, minute, amount});
    };
    if (pin.start && *pin.start != at.start) missed(*pin.start, std::abs(*pin.start - at.start));
    if (pin.end && *pin.end != at.end) missed(*pin.end, std::abs(*pin.end - at.end));
    if (pin.mode && *pin.mode != at.mode) missed(at.start, 1);
    if (pin.cook && *pin.cook != at.cook) missed(at.start, 1);
    for (const ModeLink& link : replay.mode(i).links) {
      if (!replay.isServed(link.step)) continue;
      const int other = replay.at(link.step).mode;
      if (std::find(link.modes.begin(), link.modes.end(), other) == link.modes.end())
        replay.breaches.push_back({Rule::kModeLink, i, link.step, -1, at.start, 1});
    }
  }
}

}  // namespace suppertide::planning
