// One oven, minute by minute: what stands in it and at which setpoint.
#pragma once

#include <vector>

#include "server/planning/audit/replay.h"

namespace suppertide::planning {

class OvenReplay {
 public:
  OvenReplay(const Replay& replay, int ovenIndex);

  const Oven& oven() const { return oven_; }
  const std::vector<int>& users() const { return users_; }  // by start

  // Whether two setpoints (indices) may be judged by the rule in hand.
  using Concerns = bool (*)(int celsiusA, int celsiusB);
  // One setpoint at a time, and changes that take their time, for the pairs of
  // setpoints that `concerns` names. What is found, exactly:
  // - Two loads in it at once that ask for different setpoints: the later one,
  //   the earlier one, the first minute, degrees apart. Phases count from the
  //   step's start; a single phase of length 0 covers the whole step.
  // - A preheated load that enters at setpoint b sooner than change[a][b]
  //   minutes after the last minute at which another load stood at a setpoint a
  //   other than b: the load, that other one, its start, the most minutes
  //   missing. Before the oven's first use nothing is asked; a load's own later
  //   phases and loads that are not preheated wait for nothing.
  void auditSetpoints(Concerns concerns, Findings& findings) const;

 private:
  int setpointAt(int index, Minute minute) const;
  std::optional<Breach> clashAt(Minute minute, Concerns concerns) const;
  bool anyClashAt(Minute minute) const;
  void auditEntry(int index, Concerns concerns, Findings& findings) const;

  const Replay& replay_;
  int ovenIndex_;
  const Oven& oven_;
  std::vector<int> users_;
};

}  // namespace suppertide::planning
