// Rule 9, kPinned: each part of a pin is kept.
//
// Breach: the step, once for each part. Start or end: the pinned minute, and how
// far away it is. Mode or cook: its start, 1.
#include <cstdlib>

#include "server/planning/audit/rules/rules.h"

namespace suppertide::planning {

void auditPinned(const Replay& replay, Findings& findings) {
  for (const int i : replay.served) {
    const Pin& pin = replay.step(i).pin;
    const Placement& at = replay.at(i);
    const auto missed = [&](Minute minute, int amount) {
      findings.add({.step = i, .minute = minute, .amount = amount});
    };
    if (pin.start && *pin.start != at.start) missed(*pin.start, std::abs(*pin.start - at.start));
    if (pin.end && *pin.end != at.end) missed(*pin.end, std::abs(*pin.end - at.end));
    if (pin.mode && *pin.mode != at.mode) missed(at.start, 1);
    if (pin.cook && *pin.cook != at.cook) missed(at.start, 1);
  }
}

}  // namespace suppertide::planning
