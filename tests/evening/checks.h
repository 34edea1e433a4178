// What must hold at the end of every simulated evening; what does not is a fault of its outcome.
#pragma once

#include <string>
#include <vector>

#include "tests/evening/stage.h"

namespace suppertide::evening {

// Every course served or its lateness explained, all clients agree, no report of `told` lost.
void checkEvening(Stage& stage, const std::vector<std::string>& told);

}  // namespace suppertide::evening
