// A forecast drawn as a chart: rise upward, time along, the band of slow and fast around it.
#pragma once

#include <string>

#include "client/terminal/time_text.h"
#include "client/terminal/units.h"
#include "suppertide/v1/plan.pb.h"

namespace suppertide::terminal {

// Lines of at most `width` columns: the curve, its hours, how warm the dough is then, the readiness window.
// Empty with fewer than three samples or less than 40 columns.
std::string riseChart(const v1::FermentForecast& forecast, const Clock& clock, const Units& units, int width);

}  // namespace suppertide::terminal
