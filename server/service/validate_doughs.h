// What is wrong with a request about a dough; paths are within the request: "stays[1].duration".
#pragma once

#include "server/compose/validate.h"
#include "suppertide/v1/bread_service.pb.h"

namespace suppertide::compose {

// All that stands outlast this at most.
inline constexpr int kMostDoughHours = 72;

Violations validate(const v1::ForecastDoughRequest& request);
Violations validate(const v1::FitDoughRequest& request);
Violations validate(const v1::WorkOutDoughRequest& request);
Violations validate(const v1::AddBreadReadingsRequest& request);

}  // namespace suppertide::compose
