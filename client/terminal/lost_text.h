// What a dish that a running plan leaves out has lost.
#pragma once

#include <string>

#include "suppertide/v1/plan.pb.h"

namespace suppertide::terminal {

// And what to do instead; follows the dish's name. Empty where only the other dishes are in its way.
std::string lostWords(v1::Cause cause);

}  // namespace suppertide::terminal
