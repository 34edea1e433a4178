// Rule 2, kServing: a dish is ready, which is when its last step ends, at most
// `holdLimit` minutes before it is served and at most `lateLimit` after.
//
// Breach: the last step, the dish as the thing; when it was ready too early, or
// the first minute that was too late; by how many minutes.
#include "server/planning/audit/rules/rules.h"

namespace suppertide::planning {

void auditServing(const Replay& replay, Findings& findings) {
  for (int d = 0; d < sizeOf(replay.problem.dishes); ++d) {
    const Dish& dish = nth(replay.problem.dishes, d);
    if (replay.schedule.unserved[static_cast<std::size_t>(d)] || !replay.isServed(dish.lastStep)) continue;
    const Minute ready = replay.at(dish.lastStep).end;
    const Minute wait = dish.serve - ready;
    Breach breach{.step = dish.lastStep, .thing = d};
    if (wait > dish.holdLimit) {
      breach.minute = ready;
      breach.amount = wait - dish.holdLimit;
      findings.add(breach);
    }
    if (-wait > dish.lateLimit) {
      breach.minute = dish.serve + dish.lateLimit;
      breach.amount = -wait - dish.lateLimit;
      findings.add(breach);
    }
  }
}

}  // namespace suppertide::planning
