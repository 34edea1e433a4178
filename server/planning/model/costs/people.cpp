#include "server/planning/model/costs/people.h"

#include <algorithm>
#include <cstddef>

namespace suppertide::planning {

std::int64_t cookCost(const Problem& problem, const Mode& mode, int cook, int optionCost, Minute start,
                      Minute end) {
  if (cook < 0 || mode.attention == 0) return 0;
  std::int64_t cost = optionCost;
  for (const Cook::SoftHours& hours : problem.cooks[static_cast<std::size_t>(cook)].unsocial) {
    const auto inside = hours.when.intersect({start, end});
    if (!inside.empty()) cost += std::int64_t{inside.limit - inside.start} * hours.minuteCost;
  }
  return cost;
}

std::int64_t workMinutes(const Mode& mode, Minute start, Minute end) {
  return std::int64_t{mode.attention} * (end - start) / 100;
}

std::vector<std::int64_t> overShares(const Problem& problem, const std::vector<std::int64_t>& work) {
  std::vector<std::int64_t> over(problem.cooks.size(), 0);
  if (problem.shareBlockCost == 0 || problem.shareBlock <= 0) return over;
  std::int64_t all = 0;
  std::int64_t shares = 0;
  for (std::size_t c = 0; c < work.size(); ++c) {
    all += work[c];
    shares += problem.cooks[c].share;
  }
  if (shares == 0) return over;
  for (std::size_t c = 0; c < work.size(); ++c) {
    const std::int64_t fair = all * problem.cooks[c].share / shares;
    const std::int64_t beyond = std::max<std::int64_t>(0, work[c] - fair);
    over[c] = (beyond + problem.shareBlock - 1) / problem.shareBlock * problem.shareBlockCost;
  }
  return over;
}

}  // namespace suppertide::planning
