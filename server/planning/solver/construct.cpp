#include "server/planning/solver/construct.h"

#include <algorithm>
#include <numeric>

#include "server/planning/solver/dish_placer.h"
#include "server/planning/solver/step_cost.h"

namespace suppertide::planning {
namespace {

constexpr int kOrders = 30;

Schedule emptyPlan(const Problem& problem) {
  return {std::vector<Placement>(problem.steps.size()), std::vector<bool>(problem.dishes.size(), true)};
}

// Long dishes with little room first: they find least places.
std::vector<int> firstOrder(const GridModel& model) {
  const Problem& problem = model.problem();
  std::vector<std::int64_t> rank(problem.dishes.size(), 0);
  for (int d = 0; d < sizeOf(problem.dishes); ++d)
    for (const int i : model.distances(d).steps)
      if (model.used(i))
        at(rank, d) += 1000 + 100'000 / (1 + sizeOf(model.step(i).starts) * sizeOf(model.step(i).choices));
  std::vector<int> order(problem.dishes.size());
  std::iota(order.begin(), order.end(), 0);
  std::stable_sort(order.begin(), order.end(), [&](int a, int b) { return at(rank, a) > at(rank, b); });
  return order;
}

// What a minute more of each cook's work costs when the cook is above the fair share.
std::vector<std::int64_t> cookPrices(const Problem& problem, const Schedule& plan) {
  std::vector<std::int64_t> prices(problem.cooks.size(), 0);
  if (problem.shareBlock <= 0 || problem.shareBlockCost == 0) return prices;
  const std::int64_t price = std::int64_t{1024} * problem.shareBlockCost / problem.shareBlock;
  std::vector<std::int64_t> work(problem.cooks.size(), 0);
  std::int64_t all = 0;
  std::int64_t shares = 0;
  for (const Cook& cook : problem.cooks) shares += cook.share;
  for (int i = 0; i < sizeOf(problem.steps); ++i) {
    const Placement& place = at(plan.steps, i);
    if (plan.unserved[static_cast<std::size_t>(at(problem.steps, i).dish)] || place.cook < 0) continue;
    const auto minutes = workMinutes(at(at(problem.steps, i).modes, place.mode), place.start, place.end);
    at(work, place.cook) += minutes;
    all += minutes;
  }
  for (int c = 0; c < sizeOf(prices); ++c) {
    const std::int64_t fair = shares > 0 ? all * at(problem.cooks, c).share / shares : all;
    at(prices, c) = at(work, c) >= fair ? price : price * at(work, c) / (2 * fair + 1);
  }
  return prices;
}

struct Planner {
  const GridModel& model;
  Schedule plan;
  Occupancy occupancy;
  DishPlacer placer;

  explicit Planner(const GridModel& grid) : Planner(grid, emptyPlan(grid.problem())) {}
  Planner(const GridModel& grid, const Schedule& start)
      : model(grid), plan(emptyPlan(grid.problem())), occupancy(grid.problem()), placer(grid, occupancy) {
    load(start);
  }
  bool served(int dish) const { return !plan.unserved[static_cast<std::size_t>(dish)]; }
  bool put(int dish) { return placer.place(dish, plan, cookPrices(model.problem(), plan)); }
  void take(int dish) {
    for (const int i : model.distances(dish).steps) occupancy.remove(i, at(plan.steps, i));
    plan.unserved[static_cast<std::size_t>(dish)] = true;
  }
  void load(const Schedule& other) {
    for (int d = 0; d < sizeOf(model.problem().dishes); ++d) {
      if (served(d)) take(d);
      if (other.unserved[static_cast<std::size_t>(d)]) continue;
      for (const int i : model.distances(d).steps) {
        at(plan.steps, i) = at(other.steps, i);
        occupancy.add(i, at(plan.steps, i));
      }
      plan.unserved[static_cast<std::size_t>(d)] = false;
    }
  }
};

}  // namespace

Schedule firstPlan(const GridModel& model, std::mt19937& random, const std::function<bool()>& stop) {
  const Problem& problem = model.problem();
  std::vector<int> order = firstOrder(model);
  Schedule best = emptyPlan(problem);
  TierCosts bestCost = costOf(problem, best).total;
  for (int attempt = 0; attempt < kOrders && !(attempt > 0 && stop()); ++attempt) {
    Planner planner(model);
    std::vector<int> failed;
    std::vector<int> placed;
    for (const int dish : order)
      if (!model.dropped(dish)) (planner.put(dish) ? placed : failed).push_back(dish);
    const TierCosts cost = costOf(problem, planner.plan).total;
    if (cost < bestCost) {
      best = planner.plan;
      bestCost = cost;
    }
    if (failed.empty()) break;
    // What found no room goes first next time; now and then the rest is mixed as well.
    if (attempt % 3 == 2) std::shuffle(placed.begin(), placed.end(), random);
    order = failed;
    order.insert(order.end(), placed.begin(), placed.end());
  }
  return best;
}

Schedule improvePlan(const GridModel& model, Schedule start, int rounds, std::mt19937& random,
                     const std::function<void(const Schedule&)>& better, const std::function<bool()>& stop) {
  const Problem& problem = model.problem();
  const int dishes = sizeOf(problem.dishes);
  Planner planner(model, start);
  TierCosts cost = costOf(problem, start).total;
  Schedule best = start;
  TierCosts bestCost = cost;
  for (int round = 0; round < rounds && !stop(); ++round) {
    const Schedule before = planner.plan;
    std::vector<int> out;
    for (int d = 0; d < dishes; ++d)
      if (!planner.served(d) && !model.dropped(d)) out.push_back(d);
    const int taken = 1 + static_cast<int>(random() % 3);
    for (int k = 0; k < taken; ++k) {
      const int d = static_cast<int>(random() % static_cast<unsigned>(dishes));
      if (!planner.served(d)) continue;
      planner.take(d);
      out.push_back(d);
    }
    std::shuffle(out.begin(), out.end(), random);
    for (const int d : out) planner.put(d);
    const TierCosts now = costOf(problem, planner.plan).total;
    if (now > cost) {
      planner.load(before);
      continue;
    }
    cost = now;
    if (now < bestCost) {
      bestCost = now;
      best = planner.plan;
      better(best);
    }
  }
  return best;
}

}  // namespace suppertide::planning
