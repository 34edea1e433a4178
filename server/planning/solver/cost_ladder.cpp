#include "server/planning/solver/cost_ladder.h"

#include <algorithm>

namespace suppertide::planning {

void CostSum::add(Lit lit, std::int64_t weight) {
  if (lit == kTrue) constant += weight;
  if (lit == kTrue || lit == kFalse || weight == 0) return;
  terms.push_back({lit, weight});
}

CostLadder::CostLadder(Sat& sat, std::vector<std::int64_t> levels, CostSum& sum) {
  std::sort(levels.begin(), levels.end());
  levels.erase(std::unique(levels.begin(), levels.end()), levels.end());
  var_ = OrderVar(sat, {levels.begin(), levels.end()});
  sum.add(kTrue, levels.front());
  for (std::size_t k = 1; k < levels.size(); ++k) sum.add(atLeast(levels[k]), levels[k] - levels[k - 1]);
}

}  // namespace suppertide::planning
