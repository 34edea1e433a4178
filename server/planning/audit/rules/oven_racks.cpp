// Rule 5, kOvenRacks: all that stands in an oven at once passes its RackFit, and
// nothing stands in a closed oven.
//
// Breach: the oven as the thing, the first minute, how many minutes. Racks: the
// load that came last. Closed: the load that stands in it.
#include <algorithm>

#include "server/planning/audit/oven_replay.h"
#include "server/planning/audit/rules/rules.h"

namespace suppertide::planning {
namespace {

std::optional<Breach> overfullAt(const Replay& replay, const OvenReplay& oven, int ovenIndex, Minute minute) {
  std::vector<Load> loads;
  int last = -1;
  for (const int i : oven.users()) {
    if (!replay.isAt(i, minute)) continue;
    loads.push_back(replay.mode(i).oven->load);
    last = i;
  }
  if (loads.empty() || oven.oven().racks->fits(loads)) return std::nullopt;
  return Breach{.step = last, .thing = ovenIndex, .minute = minute};
}

void auditClosed(const Replay& replay, const Oven& oven, int ovenIndex, int index, Findings& findings) {
  BreachRun closed(findings, BreachRun::Amount::kMinutes);
  for (Minute t = replay.at(index).start; t < replay.at(index).end; ++t) {
    const bool shut = std::any_of(oven.closed.begin(), oven.closed.end(),
                                  [&](const Interval<Minute>& span) { return span.contains(t); });
    if (shut) {
      closed.minute(Breach{.step = index, .thing = ovenIndex, .minute = t});
    } else {
      closed.minute({});
    }
  }
  closed.close();
}

}  // namespace

void auditOvenRacks(const Replay& replay, Findings& findings) {
  for (int o = 0; o < sizeOf(replay.problem.ovens); ++o) {
    const OvenReplay oven(replay, o);
    BreachRun racks(findings, BreachRun::Amount::kMinutes);
    for (Minute t = 0; t < replay.problem.limit; ++t) racks.minute(overfullAt(replay, oven, o, t));
    racks.close();
    for (const int i : oven.users()) auditClosed(replay, oven.oven(), o, i, findings);
  }
}

}  // namespace suppertide::planning
