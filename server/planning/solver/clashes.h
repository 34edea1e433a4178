// Where a plan asks more of the cooks, the things and the ovens than there is.
#pragma once

#include <random>
#include <vector>

#include "server/planning/model/schedule.h"

namespace suppertide::planning {

// A smallest set of steps that cannot all lie as they do.
struct Clash {
  enum class Kind { kAttention, kAmount, kSetpoint, kRacks, kUsedUp, kClock, kSeparation };
  Kind kind;
  int thing = 0;           // cook, resource, oven, clock or separation index
  std::vector<int> steps;  // ascending; two for kSetpoint, none for kClock and kSeparation
  bool taken = false;      // kAmount: together with what others took at `minute`
  Minute minute = 0;
  friend auto operator<=>(const Clash&, const Clash&) = default;
};

// Clashes of the served steps of `plan`; some, not all, but none only when there
// are none. `random` varies which of several sets are named.
// Quadratic in the steps of one cook, thing or oven.
std::vector<Clash> findClashes(const Problem& problem, const Schedule& plan, std::mt19937& random);

}  // namespace suppertide::planning
