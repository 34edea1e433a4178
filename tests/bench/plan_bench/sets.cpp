#include "tests/bench/plan_bench/sets.h"

#include <algorithm>

#include "server/planning/solver/solver.h"

namespace suppertide::planning {
namespace {

constexpr Minute kShrinkBy = 30;
constexpr std::int64_t kAloneWork = 100'000;

// The steps of `dish` and what joins them, with the whole kitchen.
Problem alone(const Problem& problem, int dish) {
  Problem part = problem;
  part.steps.clear();
  part.gaps.clear();
  part.clocks.clear();
  part.separations.clear();
  std::vector<int> place(problem.steps.size(), -1);
  for (std::size_t i = 0; i < problem.steps.size(); ++i) {
    if (problem.steps[i].dish != dish) continue;
    place[i] = static_cast<int>(part.steps.size());
    part.steps.push_back(problem.steps[i]);
    part.steps.back().dish = 0;
  }
  const auto placeOf = [&](int step) { return place[static_cast<std::size_t>(step)]; };
  for (Step& step : part.steps)
    for (Mode& mode : step.modes)
      for (ModeLink& link : mode.links) link.step = placeOf(link.step);
  for (Gap gap : problem.gaps) {
    gap.from = placeOf(gap.from);
    gap.to = placeOf(gap.to);
    if (gap.from >= 0 && gap.to >= 0) part.gaps.push_back(gap);
  }
  part.dishes = {problem.dishes[static_cast<std::size_t>(dish)]};
  part.dishes.front().lastStep = placeOf(part.dishes.front().lastStep);
  return part;
}

bool fitsAlone(const Problem& problem, int dish) {
  const auto outcome =
      makePlan(alone(problem, dish), {.seed = 1, .workLimit = kAloneWork, .grid = kDinnerGrid});
  return outcome.ok() && (!outcome->schedule.unserved.front() || outcome->provenTiers < 1);
}

void shrinkOne(Problem& problem, std::uint64_t seed) {
  const int dish = static_cast<int>(seed % problem.dishes.size());
  const Dish& squeezed = problem.dishes[static_cast<std::size_t>(dish)];
  const Minute last = squeezed.serve + squeezed.lateLimit;
  for (Minute earliest = 0; earliest < last; earliest += kShrinkBy) {
    for (Step& step : problem.steps)
      if (step.dish == dish) step.earliest = std::max(step.earliest, earliest);
    if (!fitsAlone(problem, dish)) return;
  }
}

}  // namespace

std::vector<DinnerSet> allSets() {
  struct NamedLoad {
    const char* name;
    DinnerLoad load;
  };
  constexpr NamedLoad kLoads[] = {
      {"light", DinnerLoad::kLight}, {"middling", DinnerLoad::kMiddling}, {"crowded", DinnerLoad::kCrowded}};
  std::vector<DinnerSet> sets;
  for (const bool twin : {false, true})
    for (const int dishes : {6, 12, 18, 24, 40})
      for (const NamedLoad& load : kLoads)
        sets.push_back(
            {std::to_string(dishes) + "-" + load.name + (twin ? "-twin" : ""), dishes, load.load, twin});
  return sets;
}

Problem dinnerOf(const DinnerSet& set, std::uint64_t seed) {
  Problem problem = randomDinner(seed, set.dishes, set.load);
  if (set.twin) shrinkOne(problem, seed);
  return problem;
}

}  // namespace suppertide::planning
