// Wishes that cannot all be had, as a cook would say it.
#pragma once

#include <string>

#include "client/terminal/plan_view.h"

namespace suppertide::terminal {

// "These cannot all be had: the loaf at 240 °C and the roast at 165 °C, both due
// 18:30, one range oven." One sentence.
std::string wishClashText(const PlanView& view, const v1::Clash& clash);

// A section with all of the plan's; empty when it has none.
std::string wishClashesText(const PlanView& view);

}  // namespace suppertide::terminal
