// What stands elsewhere in one plan than in another.
#pragma once

#include "suppertide/v1/plan.pb.h"

namespace suppertide {

// By new start, dropped steps by their old one; causes are left open. Starts less than five
// minutes apart are the same; a step that is left out is in no plan.
google::protobuf::RepeatedPtrField<v1::MovedStep> movedBetween(const v1::Plan& before, const v1::Plan& after);

}  // namespace suppertide
