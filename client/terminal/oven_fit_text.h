// An oven's fitted curve in words and columns.
#pragma once

#include <string>

#include "absl/time/time.h"
#include "client/terminal/units.h"
#include "suppertide/v1/kitchen_service.pb.h"

namespace suppertide::terminal {

// What the readings make of the oven, before and after, reading by reading, and
// what that means for heating and cooling. Lines of at most `width` columns.
std::string ovenFitText(const std::string& ovenName, const v1::FitOvenResponse& fit, const Units& units,
                        const absl::TimeZone& zone, int width, bool colour);

}  // namespace suppertide::terminal
