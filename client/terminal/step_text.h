// The parts of one step of the run sheet.
#pragma once

#include <string>
#include <vector>

#include "client/terminal/plan_view.h"

namespace suppertide::terminal {

// Oven, temperature, racks, place, burners, equipment: "Large oven at 200 instead of 180 °C, rack 2".
std::string whereText(const PlanView& view, const v1::PlannedStep& step);
// "slack 20 min", "no slack".
std::string slackText(const v1::PlannedStep& step);
// What is poured into a mix: "water", or "liquid" when the formula has milk and no water.
std::string mixingLiquid(const v1::PlannedStep& step);
// What to weigh, the water, the levain, the cautions, the food-safety limits: one line each, none when there
// is nothing.
std::vector<std::string> stepNotes(const PlanView& view, const v1::PlannedStep& step);

}  // namespace suppertide::terminal
