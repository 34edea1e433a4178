#include "server/planning/model/costs/moves.h"

#include <cstdlib>

namespace suppertide::planning {
namespace {

constexpr int kMoving = 10;
constexpr int kOtherMode = 10;
constexpr int kOtherCook = 15;

}  // namespace

std::int64_t moveCost(const Step& step, const Placement& at) {
  if (!step.announced) return 0;
  const Announced& told = *step.announced;
  const int moved = std::abs(at.start - told.start);
  std::int64_t cost = moved >= kMoveFrom ? kMoving + moved : 0;
  if (at.mode != told.mode) cost += kOtherMode;
  if (at.cook != told.cook) cost += kOtherCook;
  return cost * told.weight;
}

}  // namespace suppertide::planning
