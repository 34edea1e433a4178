// Tier kMoves: away from where people were told that a step lies.
#pragma once

#include <cstdint>

#include "server/planning/model/schedule.h"

namespace suppertide::planning {

// A start moved by less costs nothing: nobody cooks to the minute.
inline constexpr Minute kMoveFrom = 5;

// As Announced says; nothing for a step that was not announced.
std::int64_t moveCost(const Step& step, const Placement& at);

}  // namespace suppertide::planning
