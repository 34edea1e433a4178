// kModeLink: a mode that asks for modes of another step gets one of them, and
// every chosen mode exists.
//
// Breach: the step, the other one it asks (-1: its own mode does not exist), its start, 1.
#include <algorithm>

#include "server/planning/audit/rules/rules.h"

namespace suppertide::planning {

void auditModeLink(const Replay& replay, Findings& findings) {
  for (int i = 0; i < sizeOf(replay.problem.steps); ++i) {
    const bool unserved = replay.schedule.unserved[static_cast<std::size_t>(replay.step(i).dish)];
    if (!unserved && !replay.modeExists(i))
      findings.add({.step = i, .minute = replay.at(i).start, .amount = 1});
  }
  for (const int i : replay.served) {
    for (const ModeLink& link : replay.mode(i).links) {
      if (!replay.isServed(link.step)) continue;
      if (std::count(link.modes.begin(), link.modes.end(), replay.at(link.step).mode) == 0)
        findings.add({.step = i, .otherStep = link.step, .minute = replay.at(i).start, .amount = 1});
    }
  }
}

}  // namespace suppertide::planning
