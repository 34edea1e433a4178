// The collisions in the ovens that simple timing would have had, and how each was settled.
#pragma once

#include <string>

#include "client/terminal/plan_view.h"

namespace suppertide::terminal {

// "X (205 °C) and Y (165 °C) both wanted Large oven on Sat 17:50. Settled: Y 40 min earlier."
std::string clashText(const PlanView& view, const v1::OvenClash& clash);

// One paragraph a clash; empty when there was none.
std::string clashesText(const PlanView& view);

}  // namespace suppertide::terminal
