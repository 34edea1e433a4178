#include "tests/property/every_schedule.h"

#include <algorithm>
#include <cstddef>
#include <utility>
#include <vector>

#include "server/base/index.h"
#include "server/planning/audit/audit.h"

namespace suppertide::planning {
namespace {

TierCosts plus(const TierCosts& a, const TierCosts& b) {
  TierCosts sum = a;
  for (std::size_t t = 0; t < sum.size(); ++t) sum[t] += b[t];
  return sum;
}

// One way to make one dish, all other dishes left out.
struct DishPlan {
  std::vector<std::pair<int, Placement>> steps;
  TierCosts cost{};
  bool unserved = false;
};

class Trial {
 public:
  Trial(const Problem& problem, Minute grid, std::int64_t auditLimit)
      : problem_(problem), grid_(grid), auditsLeft_(auditLimit) {
    schedule_.steps.resize(problem.steps.size());
    schedule_.unserved.assign(problem.dishes.size(), true);
    best_ = {schedule_, costOf(problem, schedule_).total};
  }

  std::optional<BestSchedule> run() {
    for (int d = 0; d < static_cast<int>(problem_.dishes.size()) && auditsLeft_ > 0; ++d) findPlansOf(d);
    if (auditsLeft_ <= 0) return std::nullopt;
    leastOfRest_.assign(plans_.size() + 1, {});
    for (std::size_t d = plans_.size(); d-- > 0;)
      leastOfRest_[d] = plus(leastOfRest_[d + 1], plans_[d].front().cost);
    combine(0, {});
    if (auditsLeft_ <= 0) return std::nullopt;
    return best_;
  }

 private:
  // Steps from the last one back, so that the serving window cuts early.
  std::vector<int> backwards(int dish) const {
    std::vector<int> order = {problem_.dishes[at(dish)].lastStep};
    for (int i = static_cast<int>(problem_.steps.size()) - 1; i >= 0; --i)
      if (problem_.steps[at(i)].dish == dish && i != order.front()) order.push_back(i);
    return order;
  }

  // `problem_` with the steps not placed yet moved to a dish that nobody serves.
  Problem partOf(const std::vector<int>& order, std::size_t placed) const {
    Problem part = problem_;
    Dish later = part.dishes.front();
    later.lastStep = order.back();
    part.dishes.push_back(later);
    for (std::size_t k = placed; k < order.size(); ++k)
      part.steps[at(order[k])].dish = static_cast<int>(part.dishes.size()) - 1;
    return part;
  }

  void findPlansOf(int dish) {
    dish_ = dish;
    order_ = backwards(dish);
    parts_.clear();
    for (std::size_t placed = 1; placed <= order_.size(); ++placed) parts_.push_back(partOf(order_, placed));
    plans_.emplace_back();
    DishPlan without;
    without.unserved = true;
    without.cost[0] = problem_.dishes[at(dish)].unservedCost;
    plans_.back().push_back(without);
    trial_ = schedule_;
    trial_.unserved.push_back(true);
    trial_.unserved[at(dish)] = false;
    placeNext(0);
    std::stable_sort(plans_.back().begin(), plans_.back().end(),
                     [](const DishPlan& a, const DishPlan& b) { return a.cost < b.cost; });
  }

  void placeNext(std::size_t depth) {
    if (depth == order_.size()) return keepPlan();
    const int index = order_[depth];
    const Step& step = problem_.steps[at(index)];
    for (int m = 0; m < static_cast<int>(step.modes.size()); ++m) {
      const Mode& mode = step.modes[at(m)];
      std::vector<int> cooks = {-1};
      if (mode.attention > 0) {
        cooks.clear();
        for (const CookOption& option : mode.cooks) cooks.push_back(option.cook);
      }
      for (Minute start = 0; start <= problem_.limit; start += grid_) {
        const Length length = mode.length.at(start);
        for (Minute end = start; end <= start + length.longest && auditsLeft_ > 0; end += grid_) {
          if (end < start + length.shortest) continue;
          for (const int cook : cooks) {
            trial_.steps[at(index)] = {start, end, m, cook};
            --auditsLeft_;
            if (audit(parts_[depth], trial_).empty()) placeNext(depth + 1);
          }
        }
      }
    }
  }

  void keepPlan() {
    DishPlan plan;
    Schedule alone = schedule_;
    alone.unserved[at(dish_)] = false;
    for (const int index : order_) {
      plan.steps.emplace_back(index, trial_.steps[at(index)]);
      alone.steps[at(index)] = trial_.steps[at(index)];
    }
    plan.cost = costOf(problem_, alone).byDish[at(dish_)];
    // Beside others a load may find the oven in use, so alone is no least cost here.
    costIn(plan.cost, Tier::kOvens) = 0;
    plans_.back().push_back(std::move(plan));
  }

  void combine(std::size_t dish, const TierCosts& soFar) {
    if (dish == plans_.size()) {
      const TierCosts total = costOf(problem_, schedule_).total;
      if (total < best_.cost) best_ = {schedule_, total};
      return;
    }
    for (const DishPlan& plan : plans_[dish]) {
      const TierCosts cost = plus(soFar, plan.cost);
      if (auditsLeft_ <= 0 || plus(cost, leastOfRest_[dish + 1]) >= best_.cost) return;
      schedule_.unserved[dish] = plan.unserved;
      for (const auto& [index, placement] : plan.steps) schedule_.steps[at(index)] = placement;
      --auditsLeft_;
      if (audit(problem_, schedule_).empty()) combine(dish + 1, cost);
      schedule_.unserved[dish] = true;
    }
  }

  const Problem& problem_;
  Minute grid_;
  std::int64_t auditsLeft_;
  Schedule schedule_;  // dishes before the one in hand as chosen, the rest unserved
  BestSchedule best_;
  std::vector<std::vector<DishPlan>> plans_;  // by dish, cheapest first
  std::vector<TierCosts> leastOfRest_;        // of the dishes from this one on
  int dish_ = 0;
  std::vector<int> order_;
  std::vector<Problem> parts_;
  Schedule trial_;
};

}  // namespace

std::optional<BestSchedule> bestOfEverySchedule(const Problem& problem, Minute grid,
                                                std::int64_t auditLimit) {
  return Trial(problem, grid, auditLimit).run();
}

}  // namespace suppertide::planning
