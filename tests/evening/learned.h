// What an evening taught, beside what was really so.
#pragma once

#include <vector>

#include "tests/evening/stage.h"

namespace suppertide::evening {

// The lessons of the evening's review whose truth is known: starters, step lengths, ovens. Breads have no
// pace of their own in truth. Empty when there is no review.
std::vector<Learned> learnedOn(Stage& stage);

}  // namespace suppertide::evening
