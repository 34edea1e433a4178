// How sure each course is, in a sentence.
#pragma once

#include <string>

#include "client/terminal/plan_view.h"

namespace suppertide::terminal {

// One line a course; empty while nothing was simulated.
std::string chancesText(const PlanView& view);

}  // namespace suppertide::terminal
