// Plans of test dinners, and their steps by id.
#pragma once

#include <string>

#include "server/compose/planner.h"

namespace suppertide::compose {

// Of the first event, with at most so many conflicts of search; an expectation fails where there is none,
// or where a second audit finds more or less than the plan tells. Empty then.
v1::Plan planOf(const v1::Bundle& bundle, std::int64_t workLimit = 20'000);
// The same; an expectation fails where it breaks a rule.
v1::Plan soundPlanOf(const v1::Bundle& bundle, std::int64_t workLimit = 20'000);

// An expectation fails where there is none.
const v1::PlannedStep& stepOf(const v1::Plan& plan, const std::string& id);
v1::Step& stepOf(v1::Bundle& bundle, int recipe, const std::string& id);

}  // namespace suppertide::compose
