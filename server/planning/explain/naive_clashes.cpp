// Oven clashes that each dish's own best timing would have, and what became of them.
#include <algorithm>

#include "server/planning/explain/dish_alone.h"
#include "server/planning/explain/explain.h"
#include "server/planning/explain/oven_stay.h"

namespace suppertide::planning {
namespace {

constexpr Minute kNaiveGrid = 5;

std::vector<std::vector<OvenStay>> naiveStays(const Problem& problem) {
  Schedule naive;
  naive.steps.resize(problem.steps.size());  // without length: in no oven
  naive.unserved.assign(problem.dishes.size(), false);
  for (int d = 0; d < static_cast<int>(problem.dishes.size()); ++d) {
    const auto plan = planAlone(problem, d, kNaiveGrid);
    if (!plan) continue;
    for (const auto& [step, at] : *plan) naive.steps[static_cast<std::size_t>(step)] = at;
  }
  return staysByOven(problem, naive);
}

int celsiusOf(const Problem& problem, const OvenStay& stay) {
  return nth(nth(problem.ovens, stay.oven).setpoints, stay.phases.front().setpoint);
}

bool clash(const Oven& oven, const std::vector<const OvenStay*>& all, const OvenStay& a, const OvenStay& b) {
  if (setpointsClash(oven, a, b)) return true;
  const auto both = a.when.intersect(b.when);
  return !both.empty() && racksOverflow(oven, all, both);
}

std::optional<OvenStay> stayIn(const Problem& problem, const Schedule& schedule, int step) {
  if (schedule.unserved[static_cast<std::size_t>(nth(problem.steps, step).dish)]) return std::nullopt;
  return stayOf(problem, step, nth(schedule.steps, step));
}

}  // namespace

std::vector<NaiveClash> naiveOvenClashes(const Problem& problem) {
  std::vector<NaiveClash> clashes;
  const auto byOven = naiveStays(problem);
  for (std::size_t o = 0; o < byOven.size(); ++o) {
    std::vector<const OvenStay*> all;
    for (const OvenStay& stay : byOven[o]) all.push_back(&stay);
    for (std::size_t i = 0; i < all.size(); ++i) {
      for (std::size_t j = i + 1; j < all.size(); ++j) {
        const OvenStay& a = *all[i];
        const OvenStay& b = *all[j];
        if (nth(problem.steps, a.step).dish == nth(problem.steps, b.step).dish) continue;
        if (!clash(problem.ovens[o], all, a, b)) continue;
        clashes.push_back(
            {a.step, b.step, a.oven, celsiusOf(problem, a), celsiusOf(problem, b), a.when, b.when});
      }
    }
  }
  std::stable_sort(clashes.begin(), clashes.end(), [](const NaiveClash& a, const NaiveClash& b) {
    return std::max(a.whenA.start, a.whenB.start) < std::max(b.whenA.start, b.whenB.start);
  });
  return clashes;
}

Settlement settlementOf(const Problem& problem, const Schedule& schedule, const NaiveClash& clash) {
  const auto a = stayIn(problem, schedule, clash.stepA);
  const auto b = stayIn(problem, schedule, clash.stepB);
  if (!a || !b) return {};
  Settlement settlement;
  settlement.otherOven = a->oven != b->oven;
  settlement.sharedSetpoint = !settlement.otherOven && celsiusOf(problem, *a) == celsiusOf(problem, *b);
  settlement.movedA = a->when.start - clash.whenA.start;
  settlement.movedB = b->when.start - clash.whenB.start;
  settlement.degreesA = celsiusOf(problem, *a) - clash.setpointA;
  settlement.degreesB = celsiusOf(problem, *b) - clash.setpointB;
  return settlement;
}

}  // namespace suppertide::planning
