// The limits of food safety as the rule sets have them, side by side.
#pragma once

#include <vector>

#include "suppertide/v1/menu_service.pb.h"

namespace suppertide::service {

// By kind, then by class of food, each under every rule set that says something of it.
std::vector<v1::SafetyRule> safetyRules();

}  // namespace suppertide::service
