// Random things that go otherwise than planned, on a plan that is under way.
#pragma once

#include <cstdint>
#include <string>

#include "server/planning/replan/happened.h"

namespace suppertide::planning {

struct Disturbed {
  Problem problem;  // with the change made
  Running running;
  std::string what;  // "Ana leaves at 3000 for 120"
};

// Everything went as planned until a random minute; then one thing happens: a
// step takes longer, ends early or late, is put off, a dough is quicker or
// slower, a cook leaves, an oven breaks, a dish is added, a step is dragged.
// The same seed, the same disturbance. `plan` keeps the rules of `problem`.
Disturbed randomDisturbance(const Problem& problem, const Schedule& plan, std::uint64_t seed);

// As planned until `now`.
Running asPlanned(const Problem& problem, const Schedule& plan, Minute now);

}  // namespace suppertide::planning
