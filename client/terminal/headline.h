// What a host wants to know first: what is served when, whether all of it fits,
// how good the plan is, and what each cook begins the day with.
#pragma once

#include <string>

#include "client/terminal/plan_view.h"

namespace suppertide::terminal {

// Event, courses with slack, proof; then what is not served and rules not kept, if any.
std::string headlineText(const PlanView& view);

// "Proven best …", or in words how far from it the plan may be.
std::string proofText(const v1::Quality& quality);

// One sentence for a rule that is not kept.
std::string breachText(const PlanView& view, const v1::Breach& breach);

// The first thing of each cook on each day; of one cook when `cookId` is given.
std::string firstActionsText(const PlanView& view, const std::string& cookId = "");

// The cautions of the plan, or of one cook's steps, a sentence each, and the notice of safety.
std::string cautionsText(const PlanView& view, const std::string& cookId = "");

}  // namespace suppertide::terminal
