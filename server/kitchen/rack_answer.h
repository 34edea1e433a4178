// Whether pans fit into an oven, with what is not sure about it.
#pragma once

#include <vector>

#include "server/kitchen/racks.h"

namespace suppertide::kitchen {

// Unproven: no way was found to lay them in the time for it, nor that there is none.
enum class RackAnswer { kNo, kUnproven, kYes };

// As packRacks, without the places.
RackAnswer rackAnswer(const Oven& oven, const std::vector<Pan>& pans);

}  // namespace suppertide::kitchen
