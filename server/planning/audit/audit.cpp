#include "server/planning/audit/audit.h"

#include <algorithm>
#include <cassert>

#include "server/planning/audit/replay.h"
#include "server/planning/audit/rules/rules.h"

namespace suppertide::planning {

std::vector<Breach> audit(const Problem& problem, const Schedule& schedule) {
  assert(schedule.steps.size() == problem.steps.size());
  assert(schedule.unserved.size() == problem.dishes.size());
  const Replay replay(problem, schedule);
  std::vector<Breach> breaches;
  for (const HardRule& rule : kHardRules) {
    Findings findings(rule.id, breaches);
    rule.check(replay, findings);
  }
  std::stable_sort(breaches.begin(), breaches.end(),
                   [](const Breach& a, const Breach& b) { return a.minute < b.minute; });
  return breaches;
}

}  // namespace suppertide::planning
