// Rule 7, kReadiness: a ferment ends inside the window that its mode gives for its start.
//
// Breach: the ferment; ended too soon: its end; too late: the first minute past
// its window; by how many minutes. Never ready from that start: the start, its length.
#include "server/planning/audit/rules/rules.h"

namespace suppertide::planning {

void auditReadiness(const Replay& replay, Findings& findings) {
  for (const int i : replay.served) {
    if (replay.step(i).kind != StepKind::kFerment) continue;
    if (const auto breach = lengthBreach(replay, i)) findings.add(*breach);
  }
}

}  // namespace suppertide::planning
