#include "server/planning/model/schedule.h"

#include <cstddef>

#include "server/planning/model/costs/calm.h"
#include "server/planning/model/costs/idle_heat.h"
#include "server/planning/model/costs/moves.h"
#include "server/planning/model/costs/people.h"
#include "server/planning/model/costs/quality.h"

namespace suppertide::planning {
namespace {

int optionCost(const Mode& mode, int cook) {
  int cost = 0;
  for (const CookOption& option : mode.cooks)
    if (option.cook == cook) cost += option.cost;
  return cost;
}

void addSteps(const Problem& problem, const Schedule& schedule, CostBreakdown& cost) {
  const std::vector<std::int64_t> calm = calmCosts(problem, schedule);
  const std::vector<std::int64_t> idle = idleHeatCosts(problem, schedule);
  for (std::size_t i = 0; i < problem.steps.size(); ++i) {
    const Step& step = problem.steps[i];
    const auto dish = static_cast<std::size_t>(step.dish);
    if (schedule.unserved[dish]) continue;
    const Placement& at = schedule.steps[i];
    const Mode& mode = step.modes[static_cast<std::size_t>(at.mode)];
    TierCosts& costs = cost.byDish[dish];
    costIn(costs, Tier::kMoves) += moveCost(step, at);
    costIn(costs, Tier::kQuality) += qualityCost(mode, at.start, at.end);
    costIn(costs, Tier::kPeople) +=
        cookCost(problem, mode, at.cook, optionCost(mode, at.cook), at.start, at.end);
    costIn(costs, Tier::kCalm) += calm[i];
    costIn(costs, Tier::kOvens) += idle[i];
  }
}

void addServing(const Problem& problem, const Schedule& schedule, CostBreakdown& cost) {
  for (std::size_t d = 0; d < problem.dishes.size(); ++d) {
    const Dish& dish = problem.dishes[d];
    TierCosts& costs = cost.byDish[d];
    if (schedule.unserved[d]) {
      costIn(costs, Tier::kUnserved) += dish.unservedCost;
      continue;
    }
    const Minute ready = schedule.steps[static_cast<std::size_t>(dish.lastStep)].end;
    if (ready > dish.serve) costIn(costs, Tier::kLateness) += ready - dish.serve;
    costIn(costs, Tier::kQuality) += waitCost(dish, ready);
  }
}

void addShares(const Problem& problem, const Schedule& schedule, CostBreakdown& cost) {
  std::vector<std::int64_t> work(problem.cooks.size(), 0);
  for (std::size_t i = 0; i < problem.steps.size(); ++i) {
    const Step& step = problem.steps[i];
    const Placement& at = schedule.steps[i];
    if (schedule.unserved[static_cast<std::size_t>(step.dish)] || at.cook < 0) continue;
    work[static_cast<std::size_t>(at.cook)] +=
        workMinutes(step.modes[static_cast<std::size_t>(at.mode)], at.start, at.end);
  }
  cost.overShareByCook = overShares(problem, work);
}

}  // namespace

CostBreakdown costOf(const Problem& problem, const Schedule& schedule) {
  CostBreakdown cost;
  cost.byDish.assign(problem.dishes.size(), {});
  addSteps(problem, schedule, cost);
  addServing(problem, schedule, cost);
  addShares(problem, schedule, cost);
  for (const TierCosts& dish : cost.byDish)
    for (std::size_t t = 0; t < dish.size(); ++t) cost.total[t] += dish[t];
  for (const std::int64_t over : cost.overShareByCook) costIn(cost.total, Tier::kPeople) += over;
  return cost;
}

}  // namespace suppertide::planning
