// A small dinner as documents: rolls, a roast and a gratin that share one oven.
#pragma once

#include "server/compose/planner.h"

namespace suppertide::compose {

// A bundle that keeps every rule of the documents.
v1::Bundle smallDinner();
// The same, taken apart for planning.
Documents documentsOf(const v1::Bundle& bundle);

}  // namespace suppertide::compose
