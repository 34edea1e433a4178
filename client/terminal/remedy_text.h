// Remedies in words: what to change, and what that costs.
#pragma once

#include <string>
#include <vector>

#include "client/terminal/plan_view.h"
#include "suppertide/v1/plan_service.pb.h"

namespace suppertide::terminal {

// "Bake the gratin anywhere from 170 to 205 °C, and borrow another mixer." `view` is
// of the event as it was.
std::string remedyText(const PlanView& view, const v1::FindRemediesResponse& found);
// "12 min of waiting or off its best, 20 min at unsocial hours; in time in 9 of 10 evenings".
std::string remedyCostText(const v1::Plan& plan);

// All of them numbered, cheapest first.
std::string remediesText(const PlanView& view, const std::vector<v1::FindRemediesResponse>& ranked);

}  // namespace suppertide::terminal
