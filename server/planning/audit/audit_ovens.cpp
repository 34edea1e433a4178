// Ovens, minute by minute: one setpoint at a time, changes that take their time, racks, closed hours.
#include <algorithm>
#include <cstdlib>

#include "server/planning/audit/replay.h"

namespace suppertide::planning {
namespace {

// The setpoint (an index) that a step in the oven asks for at `minute`.
int setpointAt(const Replay& replay, int index, Minute minute) {
  const std::vector<OvenPhase>& phases = replay.mode(index).oven->phases;
  Minute phaseLimit = replay.at(index).start;
  for (const OvenPhase& phase : phases) {
    phaseLimit += phase.length;
    if (minute < phaseLimit) return phase.setpoint;
  }
  return phases.back().setpoint;
}

class OvenReplay {
 public:
  OvenReplay(Replay& replay, int ovenIndex)
      : replay_(replay), ovenIndex_(ovenIndex), oven_(nth(replay.problem.ovens, ovenIndex)) {
    for (const int i : replay.served)
      if (replay.mode(i).oven && replay.mode(i).oven->oven == ovenIndex) users_.push_back(i);
    std::stable_sort(users_.begin(), users_.end(),
                     [&](int a, int b) { return replay_.at(a).start < replay_.at(b).start; });
  }

  void run() {
    BreachRun setpoints(replay_, BreachRun::Amount::kPeak);
    BreachRun racks(replay_, BreachRun::Amount::kMinutes);
    for (Minute t = 0; t < replay_.problem.limit; ++t) {
      setpoints.minute(clashAt(t));
      racks.minute(overfullAt(t));
    }
    setpoints.close();
    racks.close();
    for (const int i : users_) {
      auditEntry(i);
      auditClosed(i);
    }
  }

 private:
  int celsius(int setpoint) const { return nth(oven_.setpoints, setpoint); }

  Rule ruleFor(int setpointA, int setpointB) const {
    const bool proofing = std::min(celsius(setpointA), celsius(setpointB)) < kProofingBelowCelsius;
    return proofing ? Rule::kOvenProofing : Rule::kOvenTemperature;
  }

  // Two loads that want different setpoints in this minute; the later one is at fault.
  std::optional<Breach> clashAt(Minute minute) const {
    for (const int late : users_) {
      if (!replay_.isAt(late, minute)) continue;
      for (const int early : users_) {
        if (early == late) break;
        if (!replay_.isAt(early, minute)) continue;
        const int a = setpointAt(replay_, early, minute);
        const int b = setpointAt(replay_, late, minute);
        if (a != b)
          return Breach{ruleFor(a, b), late, early, ovenIndex_, minute, std::abs(celsius(a) - celsius(b))};
      }
    }
    return std::nullopt;
  }

  std::optional<Breach> overfullAt(Minute minute) const {
    std::vector<Load> loads;
    int last = -1;
    for (const int i : users_) {
      if (!replay_.isAt(i, minute)) continue;
      loads.push_back(replay_.mode(i).oven->load);
      last = i;
    }
    if (loads.empty() || oven_.racks->fits(loads)) return std::nullopt;
    return Breach{Rule::kOvenRacks, last, -1, ovenIndex_, minute, 1};
  }

  // The change before a preheated load enters, looking back minute by minute.
  void auditEntry(int index) {
    const Placement& at = replay_.at(index);
    if (!replay_.mode(index).oven->preheated || at.start >= at.end || clashAt(at.start)) return;
    const int b = setpointAt(replay_, index, at.start);
    Breach worst{Rule::kOvenTemperature, index, -1, ovenIndex_, at.start, 0};
    for (Minute t = at.start - 1; t >= 0; --t) {
      for (const int other : users_) {
        if (!replay_.isAt(other, t)) continue;  // the load itself is not in yet
        const int a = setpointAt(replay_, other, t);
        if (a == b) continue;
        const Minute missing = nth(nth(oven_.change, a), b) - (at.start - (t + 1));
        if (missing <= worst.amount) continue;
        worst.rule = ruleFor(a, b);
        worst.otherStep = other;
        worst.amount = missing;
      }
    }
    if (worst.amount > 0) replay_.breaches.push_back(worst);
  }

  void auditClosed(int index) {
    BreachRun closed(replay_, BreachRun::Amount::kMinutes);
    for (Minute t = replay_.at(index).start; t < replay_.at(index).end; ++t) {
      const bool shut = std::any_of(oven_.closed.begin(), oven_.closed.end(),
                                    [&](const Interval<Minute>& span) { return span.contains(t); });
      if (shut) {
        closed.minute(Breach{Rule::kOvenRacks, index, -1, ovenIndex_, t, 1});
      } else {
        closed.minute({});
      }
    }
    closed.close();
  }

  Replay& replay_;
  int ovenIndex_;
  const Oven& oven_;
  std::vector<int> users_;  // by start
};

}  // namespace

void auditOvens(Replay& replay) {
  for (int o = 0; o < static_cast<int>(replay.problem.ovens.size()); ++o) OvenReplay(replay, o).run();
}

}  // namespace suppertide::planning
