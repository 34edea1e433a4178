// The rules that tie steps together beyond gaps and overlaps: clocks, separations, what is used up.
#pragma once

#include <cstdint>

#include "server/planning/model/schedule.h"

namespace suppertide::planning {

// The minutes of one span of a clock; 0 in a mode that does not count.
Minute spanMinutes(const Problem& problem, const Clock::Span& span, const Schedule& plan);
// All minutes of a clock; its dish is served.
Minute clockMinutes(const Problem& problem, const Clock& clock, const Schedule& plan);

// Whether the separation asks anything of the two steps in these modes.
bool asksOf(const Separation& separation, int cleanMode, int otherMode);
// Whether the two lie as the separation asks; both in modes it asks something of.
bool apart(const Separation& separation, const Placement& clean, const Placement& other);
// Whether both are served, last some time, are in such modes and not apart.
bool breaks(const Problem& problem, const Separation& separation, const Schedule& plan);

// What is gone of a resource that is used up.
std::int64_t usedOf(const Problem& problem, int resource, const Schedule& plan);

}  // namespace suppertide::planning
