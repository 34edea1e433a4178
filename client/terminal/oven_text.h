// The program of each oven: when it is set to what, and what goes in and out.
#pragma once

#include <string>

#include "client/terminal/plan_view.h"

namespace suppertide::terminal {

// Ovens that are not used are named in one line. Empty without oven programs.
std::string ovensText(const PlanView& view);

}  // namespace suppertide::terminal
