// The auditor: replays a schedule minute by minute against the hard rules.
//
// Deliberately slow and plain. It shares nothing with the solver but the data
// types, so a mistake in one is not repeated in the other. Each rule has a file
// of its own under rules/, which says what the rule asks exactly and what the
// fields of its breaches mean; audit() is a loop over them.
//
// Steps of unserved dishes are not looked at, nor what touches them: gaps,
// links, clocks, separations.
#pragma once

#include <vector>

#include "server/planning/model/schedule.h"

namespace suppertide::planning {

enum class Rule {
  kGap,              // 1 order, with least and most gaps; bounds and lengths of a step
  kServing,          // 2 ready in the course's window, held no longer than it may be
  kCook,             // 3 a cook who is there, able, and not over 100 % attention
  kCapacity,         // 4 burners, pans, mixers, places, what is used up
  kOvenTemperature,  // 5 one setpoint at a time, changes take their time
  kOvenRacks,        // 5 everything stands on racks that exist, in an oven that is open
  kOvenProofing,     // 6 kOvenTemperature where one of the two setpoints is a proofing one
  kReadiness,        // 7 a ferment ends inside its window
  kFoodSafety,       // 8 minutes that count together stay below their limit
  kPinned,           // 9 what happened or was pinned is kept
  kAllergen,         // 10 free of an allergen first, or cleaning between
  kModeLink,         // a mode that asks for another step's mode, or that does not exist
};

// Setpoints below this are for proofing, never for baking.
inline constexpr int kProofingBelowCelsius = 45;

// One breach: which rule, where, when it first happens and by how much.
struct Breach {
  Rule rule = Rule::kGap;
  int step = -1;       // the step at fault: of two in each other's way, the one that came later
  int otherStep = -1;  // the other one, if any
  int thing = -1;      // cook, resource, oven, dish, clock or separation index, by rule
  Minute minute = 0;   // first minute of the breach
  // Minutes too early, late, short, long or away; per cent of attention or
  // units of a resource over; degrees apart for two setpoints at once; 1 for
  // a wrong mode or cook.
  int amount = 0;
  friend bool operator==(const Breach&, const Breach&) = default;
};

// Every breach, ordered by minute. Empty means the schedule keeps all rules.
// `problem` passed check() and `schedule` fits it in size.
// Cost: minutes of the axis times steps.
std::vector<Breach> audit(const Problem& problem, const Schedule& schedule);

}  // namespace suppertide::planning
