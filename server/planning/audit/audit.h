// The auditor: replays a schedule minute by minute against the hard rules.
//
// Deliberately slow and plain. It shares nothing with the solver but the data
// types, so a mistake in one is not repeated in the other.
#pragma once

#include <vector>

#include "server/planning/model/schedule.h"

namespace suppertide::planning {

enum class Rule {
  kGap,              // 1 order, with least and most gaps; bounds and lengths of a step
  kServing,          // 2 ready in the course's window, held no longer than it may be
  kCook,             // 3 a cook who is there, able, and not over 100 % attention
  kCapacity,         // 4 burners, pans, mixers, places
  kOvenTemperature,  // 5 one setpoint at a time, changes take their time
  kOvenRacks,        // 5 everything stands on racks that exist
  kOvenProofing,     // 6 the oven as a proofing place: cool enough, emptied first
  kReadiness,        // 7 a ferment ends inside its window
  kPinned,           // 9 what happened or was pinned is kept
  kModeLink,         // a mode that asks for another step's mode
};

// One breach: which rule, where, when it first happens and by how much.
struct Breach {
  Rule rule;
  int step = -1;       // the step at fault
  int otherStep = -1;  // the other one, if any
  int thing = -1;      // cook, resource or oven index, by rule
  Minute minute = 0;   // first minute of the breach
  int amount = 0;      // minutes, units or degrees over
};

// Every breach, ordered by minute. Empty means the schedule keeps all rules.
// Cost: minutes of the axis times steps.
std::vector<Breach> audit(const Problem& problem, const Schedule& schedule);

}  // namespace suppertide::planning
