// Rule 3, kCook: a step that takes attention has a cook who may do it, who is
// there in every minute of it and whose attention never sums above 100 per cent.
//
// Breach: the step, the cook as the thing (-1 when there is no such cook).
// - nobody, or not one of those who may: at its start, 1;
// - away: the first minute away, how many minutes;
// - too much at once: the step that came last and one beside it, the first
//   minute, per cent above 100.
#include <algorithm>

#include "server/planning/audit/rules/rules.h"

namespace suppertide::planning {
namespace {

void auditAbility(const Replay& replay, int index, Findings& findings) {
  const Mode& mode = replay.mode(index);
  const Placement& at = replay.at(index);
  const bool exists = at.cook >= 0 && at.cook < sizeOf(replay.problem.cooks);
  const bool asked = std::any_of(mode.cooks.begin(), mode.cooks.end(),
                                 [&](const CookOption& option) { return option.cook == at.cook; });
  const bool right = mode.attention == 0 ? at.cook == -1 || exists : exists && asked;
  if (!right) findings.add({.step = index, .thing = exists ? at.cook : -1, .minute = at.start, .amount = 1});
}

void auditPresence(const Replay& replay, int index, int cookIndex, Findings& findings) {
  const Cook& cook = nth(replay.problem.cooks, cookIndex);
  BreachRun away(findings, BreachRun::Amount::kMinutes);
  for (Minute t = replay.at(index).start; t < replay.at(index).end; ++t) {
    const bool there = std::any_of(cook.available.begin(), cook.available.end(),
                                   [&](const Interval<Minute>& span) { return span.contains(t); });
    if (there) {
      away.minute({});
    } else {
      away.minute(Breach{.step = index, .thing = cookIndex, .minute = t});
    }
  }
  away.close();
}

}  // namespace

void auditCook(const Replay& replay, Findings& findings) {
  for (const int i : replay.served) auditAbility(replay, i, findings);
  for (int c = 0; c < sizeOf(replay.problem.cooks); ++c) {
    std::vector<Demand> demands;
    for (const int i : replay.served) {
      if (replay.at(i).cook != c || replay.mode(i).attention == 0) continue;
      demands.push_back({i, replay.mode(i).attention});
      auditPresence(replay, i, c, findings);
    }
    BreachRun run(findings, BreachRun::Amount::kPeak);
    for (Minute t = 0; t < replay.problem.limit; ++t)
      run.minute(overload(replay, demands, {.thing = c, .minute = t}, 0, 100));
    run.close();
  }
}

}  // namespace suppertide::planning
