#include "server/planning/audit/oven_replay.h"

#include <algorithm>
#include <cstdlib>

namespace suppertide::planning {

OvenReplay::OvenReplay(const Replay& replay, int ovenIndex)
    : replay_(replay), ovenIndex_(ovenIndex), oven_(nth(replay.problem.ovens, ovenIndex)) {
  for (const int i : replay.served)
    if (replay.mode(i).oven && replay.mode(i).oven->oven == ovenIndex) users_.push_back(i);
  std::stable_sort(users_.begin(), users_.end(),
                   [&](int a, int b) { return replay_.at(a).start < replay_.at(b).start; });
}

int OvenReplay::setpointAt(int index, Minute minute) const {
  const std::vector<OvenPhase>& phases = replay_.mode(index).oven->phases;
  Minute phaseLimit = replay_.at(index).start;
  for (const OvenPhase& phase : phases) {
    phaseLimit += phase.length;
    if (minute < phaseLimit) return phase.setpoint;
  }
  return phases.back().setpoint;
}

void OvenReplay::auditSetpoints(Concerns concerns, Findings& findings) const {
  BreachRun clashes(findings, BreachRun::Amount::kPeak);
  for (Minute t = 0; t < replay_.problem.limit; ++t) clashes.minute(clashAt(t, concerns));
  clashes.close();
  for (const int i : users_) auditEntry(i, concerns, findings);
}

std::optional<Breach> OvenReplay::clashAt(Minute minute, Concerns concerns) const {
  for (const int late : users_) {
    if (!replay_.isAt(late, minute)) continue;
    for (const int early : users_) {
      if (early == late) break;
      if (!replay_.isAt(early, minute)) continue;
      const int a = nth(oven_.setpoints, setpointAt(early, minute));
      const int b = nth(oven_.setpoints, setpointAt(late, minute));
      if (a != b && concerns(a, b)) {
        return Breach{.step = late,
                      .otherStep = early,
                      .thing = ovenIndex_,
                      .minute = minute,
                      .amount = std::abs(a - b)};
      }
    }
  }
  return std::nullopt;
}

bool OvenReplay::anyClashAt(Minute minute) const {
  return clashAt(minute, [](int, int) { return true; }).has_value();
}

// Looks back minute by minute from where a preheated load enters.
void OvenReplay::auditEntry(int index, Concerns concerns, Findings& findings) const {
  const Placement& at = replay_.at(index);
  if (!replay_.mode(index).oven->preheated || at.start >= at.end || anyClashAt(at.start)) return;
  const int b = setpointAt(index, at.start);
  Breach worst{.step = index, .thing = ovenIndex_, .minute = at.start};
  for (Minute t = at.start - 1; t >= 0; --t) {
    for (const int other : users_) {
      if (!replay_.isAt(other, t)) continue;  // the load itself is not in yet
      const int a = setpointAt(other, t);
      if (a == b || !concerns(nth(oven_.setpoints, a), nth(oven_.setpoints, b))) continue;
      const Minute missing = nth(nth(oven_.change, a), b) - (at.start - (t + 1));
      if (missing <= worst.amount) continue;
      worst.otherStep = other;
      worst.amount = missing;
    }
  }
  if (worst.amount > 0) findings.add(worst);
}

}  // namespace suppertide::planning
