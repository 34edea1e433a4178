// A plan of many steps, for measuring what a screen costs.
#pragma once

#include <memory>

#include "client/link/replica.h"

namespace suppertide::bench {

inline constexpr char kCrowdedEvent[] = "crowd";

// `bars` steps over four days: of six cooks, two ovens, four burners, with every eighth a ferment of
// one of four doughs with its forecast.
std::shared_ptr<const link::Replica> crowdedHousehold(int bars);
// Its last plan with one step later by five minutes.
std::shared_ptr<const link::Replica> withStepLater(const link::Replica& household, int step);

}  // namespace suppertide::bench
