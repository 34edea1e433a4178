#include "server/planning/model/cost_curve.h"

#include <cstddef>
#include <cstdint>

namespace suppertide::planning {

int CostCurve::at(int position) const {
  if (knots.empty()) return 0;
  if (position <= knots.front().at) return knots.front().cost;
  for (std::size_t i = 1; i < knots.size(); ++i) {
    if (position > knots[i].at) continue;
    const auto& a = knots[i - 1];
    const auto& b = knots[i];
    const std::int64_t rise = std::int64_t{b.cost - a.cost} * (position - a.at);
    const std::int64_t run = b.at - a.at;
    std::int64_t step = rise / run;
    if (rise % run != 0 && rise < 0) --step;
    return a.cost + static_cast<int>(step);
  }
  return knots.back().cost;
}

}  // namespace suppertide::planning
