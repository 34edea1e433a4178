#include "server/planning/solver/people_costs.h"

#include <algorithm>
#include <set>

#include "server/planning/model/costs/people.h"

namespace suppertide::planning {

PeopleCosts::PeopleCosts(Encoder& encoder, CostSum& sum)
    : encoder_(encoder), sum_(sum), ladders_(encoder.model().problem().steps.size()) {
  for (int i = 0; i < sizeOf(ladders_); ++i)
    if (encoder_.model().used(i)) makeStep(i);
}

void PeopleCosts::makeStep(int step) {
  const GridModel& model = encoder_.model();
  std::vector<Option> options;
  std::set<std::int64_t> levels;
  bool free = encoder_.servedStep(step) != kTrue;
  for (const Choice& choice : model.step(step).choices) {
    free |= choice.cooks.empty();
    const Mode& mode = nth(nth(model.problem().steps, step).modes, choice.mode);
    for (const CookOption& option : choice.cooks) {
      options.push_back({choice.mode, option});
      for (const Minute start : model.step(step).starts) {
        const EndRange range = model.endRange(step, choice.mode, start);
        for (Minute end = range.first; end <= range.last; end += model.grid())
          levels.insert(cookCost(model.problem(), mode, option.cook, 0, start, end));
      }
    }
  }
  if (free) levels.insert(0);
  if (levels.empty() || *levels.rbegin() == 0) return;
  nth(ladders_, step).emplace(encoder_.sat(), std::vector<std::int64_t>(levels.begin(), levels.end()), sum_);
  explainStep(step, options);
}

// What the step costs at least when this option starts it at `start`; -1 when it can't.
std::int64_t PeopleCosts::leastCost(int step, const Option& option, Minute start) const {
  const GridModel& model = encoder_.model();
  const EndRange range = model.endRange(step, option.mode, start);
  if (range.empty()) return -1;
  const Mode& mode = nth(nth(model.problem().steps, step).modes, option.mode);
  return cookCost(model.problem(), mode, option.cook.cook, 0, start, range.first);
}

void PeopleCosts::explainStep(int step, const std::vector<Option>& options) {
  const auto& starts = encoder_.model().step(step).starts;
  std::vector<std::int64_t> least(starts.size(), kNoLimit);
  for (const Option& option : options) {
    std::vector<std::int64_t> costs;
    for (std::size_t k = 0; k < starts.size(); ++k) {
      costs.push_back(leastCost(step, option, starts[k]));
      if (costs.back() >= 0) least[k] = std::min(least[k], costs.back());
    }
    addRuns(step, costs, -encoder_.mode(step, option.mode), -encoder_.cook(step, option.cook.cook));
  }
  bool always = true;
  for (const Choice& choice : encoder_.model().step(step).choices) always &= !choice.cooks.empty();
  for (auto& cost : least)
    if (cost == kNoLimit) cost = -1;
  if (always && options.size() > 1) addRuns(step, least, kFalse, kFalse);
}

void PeopleCosts::addRuns(int step, const std::vector<std::int64_t>& costs, Lit otherMode, Lit otherCook) {
  const auto& starts = encoder_.model().step(step).starts;
  const Point from = encoder_.start(step);
  const std::set<std::int64_t> levels(costs.begin(), costs.end());
  for (const std::int64_t level : levels) {
    if (level <= 0) continue;
    for (std::size_t k = 0; k < starts.size(); ++k) {
      if (costs[k] < level) continue;
      std::size_t last = k;
      while (last + 1 < starts.size() && costs[last + 1] >= level) ++last;
      encoder_.sat().add({-encoder_.servedStep(step), otherMode, otherCook, from.atMost(starts[k] - 1),
                          from.atLeast(starts[last] + 1), nth(ladders_, step)->atLeast(level)});
      k = last;
    }
  }
}

int PeopleCosts::refine(const Schedule& plan) {
  const Problem& problem = encoder_.model().problem();
  int added = 0;
  for (int i = 0; i < sizeOf(ladders_); ++i) {
    const Step& step = nth(problem.steps, i);
    const Placement& place = nth(plan.steps, i);
    if (!nth(ladders_, i) || plan.unserved[static_cast<std::size_t>(step.dish)]) continue;
    const Mode& mode = nth(step.modes, place.mode);
    if (mode.attention == 0) continue;
    for (const Choice& choice : encoder_.model().step(i).choices)
      for (const CookOption& option : choice.cooks) {
        if (choice.mode != place.mode || option.cook != place.cook) continue;
        const std::int64_t cost = cookCost(problem, mode, place.cook, 0, place.start, place.end);
        if (nth(ladders_, i)->value(encoder_.sat()) >= cost) continue;
        // A longer stay around this one has at least the same minutes inside.
        encoder_.sat().add({-encoder_.servedStep(i), -encoder_.mode(i, place.mode),
                            -encoder_.cook(i, place.cook), -encoder_.start(i).atMost(place.start),
                            -encoder_.end(i).atLeast(place.end), nth(ladders_, i)->atLeast(cost)});
        ++added;
      }
  }
  return added;
}

}  // namespace suppertide::planning
