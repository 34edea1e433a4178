// Breaches in words, for the messages of failing tests.
#pragma once

#include <string>
#include <vector>

#include "server/planning/audit/audit.h"

namespace suppertide::planning {

// "kOvenRacks: bake (with roast) at 300 by 5".
std::string breachText(const Problem& problem, const Breach& breach);

// All breaches of `schedule`, in the auditor's order.
std::vector<std::string> breachTexts(const Problem& problem, const Schedule& schedule);

}  // namespace suppertide::planning
