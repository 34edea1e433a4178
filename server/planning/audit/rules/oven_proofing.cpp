// Rule 6, kOvenProofing: an oven with dough in it is not heated, and after baking
// it cools before dough enters: one setpoint at a time and changes that take
// their time, where one of the two setpoints is for proofing.
//
// Breach: as told at OvenReplay::auditSetpoints, the oven as the thing.
#include <algorithm>

#include "server/planning/audit/oven_replay.h"
#include "server/planning/audit/rules/rules.h"

namespace suppertide::planning {

void auditOvenProofing(const Replay& replay, Findings& findings) {
  const auto oneForProofing = [](int a, int b) { return std::min(a, b) < kProofingBelowCelsius; };
  for (int o = 0; o < sizeOf(replay.problem.ovens); ++o)
    OvenReplay(replay, o).auditSetpoints(oneForProofing, findings);
}

}  // namespace suppertide::planning
