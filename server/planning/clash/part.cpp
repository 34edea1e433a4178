#include "server/planning/clash/part.h"

#include <algorithm>

#include "server/base/index.h"

namespace suppertide::planning {
namespace {

// Old index to new one; -1 for what is not kept.
class Numbers {
 public:
  explicit Numbers(std::size_t size) : of_(size, -1) {}
  void keep(int index) { of_[at(index)] = next_++; }
  int operator[](int index) const { return index < 0 ? index : of_[at(index)]; }
  bool has(int index) const { return of_[at(index)] >= 0; }

 private:
  std::vector<int> of_;
  int next_ = 0;
};

void renumberLinks(Step& step, const Numbers& steps) {
  for (Mode& mode : step.modes) {
    std::erase_if(mode.links, [&](const ModeLink& link) { return !steps.has(link.step); });
    for (ModeLink& link : mode.links) link.step = steps[link.step];
  }
}

void keepClock(const Clock& from, const Numbers& steps, std::vector<Clock>& clocks) {
  const auto kept = [&](const Clock::Span& span) { return steps.has(span.from); };
  if (from.spans.empty() || !std::all_of(from.spans.begin(), from.spans.end(), kept)) return;
  clocks.push_back(from);
  for (Clock::Span& span : clocks.back().spans) {
    span.from = steps[span.from];
    span.to = steps[span.to];
  }
}

// All but the steps and what concerns them; they may be large.
Problem kitchenOf(const Problem& problem) {
  Problem kitchen;
  kitchen.limit = problem.limit;
  kitchen.resources = problem.resources;
  kitchen.ovens = problem.ovens;
  kitchen.cooks = problem.cooks;
  kitchen.unknowns = problem.unknowns;
  kitchen.airBetweenTasks = problem.airBetweenTasks;
  kitchen.interruptionCost = problem.interruptionCost;
  kitchen.shareBlock = problem.shareBlock;
  kitchen.shareBlockCost = problem.shareBlockCost;
  return kitchen;
}

}  // namespace

Problem partOf(const Problem& problem, const std::vector<int>& dishes) {
  Numbers dishNumbers(problem.dishes.size());
  Numbers steps(problem.steps.size());
  Problem part = kitchenOf(problem);
  for (const int dish : dishes) dishNumbers.keep(dish);
  for (std::size_t i = 0; i < problem.steps.size(); ++i) {
    if (!dishNumbers.has(problem.steps[i].dish)) continue;
    steps.keep(static_cast<int>(i));
    part.steps.push_back(problem.steps[i]);
    part.steps.back().dish = dishNumbers[problem.steps[i].dish];
  }
  for (Step& step : part.steps) renumberLinks(step, steps);
  for (const int dish : dishes) {
    part.dishes.push_back(problem.dishes[at(dish)]);
    part.dishes.back().lastStep = steps[part.dishes.back().lastStep];
  }
  for (Gap gap : problem.gaps) {
    if (!steps.has(gap.from) || !steps.has(gap.to)) continue;
    gap.from = steps[gap.from];
    gap.to = steps[gap.to];
    part.gaps.push_back(gap);
  }
  for (const Clock& clock : problem.clocks) keepClock(clock, steps, part.clocks);
  for (Separation separation : problem.separations) {
    if (!steps.has(separation.clean) || !steps.has(separation.other)) continue;
    separation.clean = steps[separation.clean];
    separation.other = steps[separation.other];
    part.separations.push_back(separation);
  }
  return part;
}

void forgetCosts(Problem& problem) {
  for (Step& step : problem.steps) {
    step.announced.reset();
    for (Mode& mode : step.modes) {
      mode.qualityCost = mode.shortMinuteCost = mode.longMinuteCost = 0;
      for (CookOption& option : mode.cooks) option.cost = 0;
    }
  }
  for (Gap& gap : problem.gaps) gap.air = 0;
  for (Dish& dish : problem.dishes) {
    dish.lateLimit = 0;
    dish.waitCost.knots.clear();
    dish.unservedCost = 1;
  }
  for (Oven& oven : problem.ovens) oven.idleMinuteCost = 0;
  for (Cook& cook : problem.cooks) cook.unsocial.clear();
  problem.airBetweenTasks = 0;
  problem.interruptionCost = 0;
  problem.shareBlockCost = 0;
}

}  // namespace suppertide::planning
