// What KitchenService.FitOven answers.
#pragma once

#include "server/service/failure.h"
#include "suppertide/v1/kitchen_service.pb.h"

namespace suppertide::service {

// Fills `answer` from the oven's readings. INVALID_ARGUMENT with every reading
// that no oven can give, every dial and every number that cannot be.
Failure fitOven(const v1::Oven& oven, v1::FitOvenResponse& answer);

}  // namespace suppertide::service
