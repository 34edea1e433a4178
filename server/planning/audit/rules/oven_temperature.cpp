// Rule 5, kOvenTemperature: an oven has one setpoint at a time, and changing it
// takes its time, between setpoints that are all for baking.
//
// Breach: as told at OvenReplay::auditSetpoints, the oven as the thing.
#include <algorithm>

#include "server/planning/audit/oven_replay.h"
#include "server/planning/audit/rules/rules.h"

namespace suppertide::planning {

void auditOvenTemperature(const Replay& replay, Findings& findings) {
  const auto bothForBaking = [](int a, int b) { return std::min(a, b) >= kProofingBelowCelsius; };
  for (int o = 0; o < sizeOf(replay.problem.ovens); ++o)
    OvenReplay(replay, o).auditSetpoints(bothForBaking, findings);
}

}  // namespace suppertide::planning
