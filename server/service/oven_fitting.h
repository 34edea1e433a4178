// What KitchenService.FitOven answers.
#pragma once

#include "server/service/failure.h"
#include "suppertide/v1/bundle.pb.h"
#include "suppertide/v1/kitchen_service.pb.h"

namespace suppertide::service {

// Fills `answer` from the oven's readings. INVALID_ARGUMENT with every reading
// that no oven can give, every dial and every number that cannot be.
Failure fitOven(const v1::Oven& oven, v1::FitOvenResponse& answer);

// The same with what was reported at an event of `bundle`, its only one; `before` is then the oven's
// curve as it is. FAILED_PRECONDITION when there is nothing to learn from.
Failure fitOvenByDay(const v1::Bundle& bundle, const v1::FitOvenRequest& request,
                     v1::FitOvenResponse& answer);

}  // namespace suppertide::service
