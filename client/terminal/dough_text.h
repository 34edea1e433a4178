// Each bread from its levain to the oven: places, times, when it is ready, how it rises.
#pragma once

#include <string>
#include <vector>

#include "client/terminal/plan_view.h"

namespace suppertide::terminal {

// Empty when the plan has no dough.
std::string doughsText(const PlanView& view);

// One line of blocks from the stage's start to its end and window, as the
// forecast rises; and below it the readiness window: "├──┤". Empty when there are
// fewer than three samples or `columns` is below 20.
std::string riseCurve(const v1::FermentForecast& stage, int columns, int indent);

// As wrap(), but a degree or percent sign stays with its number.
std::vector<std::string> wrapWords(std::string words, int width);

}  // namespace suppertide::terminal
