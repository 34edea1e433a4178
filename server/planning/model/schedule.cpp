#include "server/planning/model/schedule.h"

#include <algorithm>
#include <cstddef>

namespace suppertide::planning {
namespace {

std::int64_t workMinutes(const Mode& mode, const Placement& at) {
  return std::int64_t{mode.attention} * (at.end - at.start) / 100;
}

std::int64_t lengthCost(const Mode& mode, const Placement& at) {
  const Length length = mode.length.at(at.start);
  const Minute over = at.end - at.start - length.best;
  return over < 0 ? std::int64_t{-over} * mode.shortMinuteCost : std::int64_t{over} * mode.longMinuteCost;
}

std::int64_t peopleCost(const Problem& problem, const Mode& mode, const Placement& at) {
  if (at.cook < 0 || mode.attention == 0) return 0;
  std::int64_t cost = 0;
  for (const CookOption& option : mode.cooks)
    if (option.cook == at.cook) cost += option.cost;
  for (const Cook::SoftHours& hours : problem.cooks[static_cast<std::size_t>(at.cook)].unsocial) {
    const auto inside = hours.when.intersect({at.start, at.end});
    if (!inside.empty()) cost += std::int64_t{inside.limit - inside.start} * hours.minuteCost;
  }
  return cost;
}

// Started blocks above each cook's fair share of all work, by cook.
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

}  // namespace

CostBreakdown costOf(const Problem& problem, const Schedule& schedule) {
  CostBreakdown cost;
  cost.byDish.assign(problem.dishes.size(), {});
  std::vector<std::int64_t> work(problem.cooks.size(), 0);
  for (std::size_t i = 0; i < problem.steps.size(); ++i) {
    const Step& step = problem.steps[i];
    const auto dish = static_cast<std::size_t>(step.dish);
    if (schedule.unserved[dish]) continue;
    const Placement& at = schedule.steps[i];
    const Mode& mode = step.modes[static_cast<std::size_t>(at.mode)];
    cost.byDish[dish][2] += mode.qualityCost + lengthCost(mode, at);
    cost.byDish[dish][3] += peopleCost(problem, mode, at);
    if (at.cook >= 0) work[static_cast<std::size_t>(at.cook)] += workMinutes(mode, at);
  }
  for (std::size_t d = 0; d < problem.dishes.size(); ++d) {
    const Dish& dish = problem.dishes[d];
    if (schedule.unserved[d]) {
      cost.byDish[d][0] += dish.unservedCost;
      continue;
    }
    const Minute early = dish.serve - schedule.steps[static_cast<std::size_t>(dish.lastStep)].end;
    if (early < 0) cost.byDish[d][1] += -early;
    if (early >= 0) cost.byDish[d][2] += dish.waitCost.at(early);
  }
  cost.overShareByCook = overShares(problem, work);
  for (const TierCosts& dish : cost.byDish)
    for (std::size_t t = 0; t < dish.size(); ++t) cost.total[t] += dish[t];
  for (const std::int64_t over : cost.overShareByCook) cost.total[3] += over;
  return cost;
}

}  // namespace suppertide::planning
