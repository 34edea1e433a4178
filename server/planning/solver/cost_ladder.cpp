#include "server/planning/solver/cost_ladder.h"

#include <algorithm>

namespace suppertide::planning {

void CostSum::add(Lit lit, std::int64_t weight, bool late) {
  if (lit == kTrue) constant += weight;
  if (lit == kTrue || lit == kFalse || weight == 0) return;
  terms.push_back({lit, weight, late});
}

CostLadder::CostLadder(Sat& sat, std::vector<std::int64_t> levels, CostSum& sum, bool late) {
  std::sort(levels.begin(), levels.end());
  levels.erase(std::unique(levels.begin(), levels.end()), levels.end());
  var_ = OrderVar(sat, {levels.begin(), levels.end()});
  sum.add(kTrue, levels.front());
  for (std::size_t k = 1; k < levels.size(); ++k)
    sum.add(atLeast(levels[k]), levels[k] - levels[k - 1], late);
}

}  // namespace suppertide::planning
