// Rule 4, kCapacity: in no minute is more of a resource in use than there is,
// with what others have taken. What is used up is not given back: all uses of
// the whole plan are together at most what there is. A step without length uses nothing.
//
// Breach: the step that came last, one beside it, the resource as the thing, the
// first minute, the most units above capacity. Of what is used up: the step by
// whose start there was too little, the one before it that used some, and how
// much is lacking in the end.
#include <algorithm>

#include "server/planning/audit/rules/rules.h"

namespace suppertide::planning {
namespace {

void auditAtOnce(const Replay& replay, int index, const std::vector<Demand>& demands, Findings& findings) {
  const Resource& resource = nth(replay.problem.resources, index);
  BreachRun run(findings, BreachRun::Amount::kPeak);
  for (Minute t = 0; t < replay.problem.limit; ++t) {
    int taken = 0;
    for (const Resource::Taken& span : resource.taken)
      if (span.when.contains(t)) taken += span.amount;
    run.minute(overload(replay, demands, {.thing = index, .minute = t}, taken, resource.capacity));
  }
  run.close();
}

void auditUsedUp(const Replay& replay, int index, std::vector<Demand> demands, Findings& findings) {
  const Resource& resource = nth(replay.problem.resources, index);
  std::stable_sort(demands.begin(), demands.end(), [&](const Demand& a, const Demand& b) {
    return replay.at(a.step).start < replay.at(b.step).start;
  });
  int left = resource.capacity;
  for (const Resource::Taken& span : resource.taken) left -= span.amount;
  Breach breach{.thing = index};
  int before = -1;
  for (const Demand& demand : demands) {
    if (replay.at(demand.step).start >= replay.at(demand.step).end) continue;
    left -= demand.amount;
    if (left < 0 && breach.step < 0) {
      breach.step = demand.step;
      breach.otherStep = before;
      breach.minute = replay.at(demand.step).start;
    }
    before = demand.step;
  }
  breach.amount = -left;
  if (breach.step >= 0) findings.add(breach);
}

}  // namespace

void auditCapacity(const Replay& replay, Findings& findings) {
  for (int r = 0; r < sizeOf(replay.problem.resources); ++r) {
    std::vector<Demand> demands;
    for (const int i : replay.served)
      for (const Use& use : replay.mode(i).uses)
        if (use.resource == r && use.amount > 0) demands.push_back({i, use.amount});
    if (nth(replay.problem.resources, r).usedUp) {
      auditUsedUp(replay, r, demands, findings);
    } else {
      auditAtOnce(replay, r, demands, findings);
    }
  }
}

}  // namespace suppertide::planning
