#include "server/planning/model/costs/idle_heat.h"

#include <algorithm>
#include <cstddef>

namespace suppertide::planning {
namespace {

struct Stay {
  Minute start;
  std::size_t step;
  Minute end;
  const OvenNeed* need;
};

std::vector<std::vector<Stay>> staysByOven(const Problem& problem, const Schedule& schedule) {
  std::vector<std::vector<Stay>> stays(problem.ovens.size());
  for (std::size_t i = 0; i < problem.steps.size(); ++i) {
    const Step& step = problem.steps[i];
    const Placement& at = schedule.steps[i];
    if (schedule.unserved[static_cast<std::size_t>(step.dish)] || at.start == at.end) continue;
    const auto& need = step.modes[static_cast<std::size_t>(at.mode)].oven;
    if (need) stays[static_cast<std::size_t>(need->oven)].push_back({at.start, i, at.end, &*need});
  }
  return stays;
}

}  // namespace

std::vector<std::int64_t> idleHeatCosts(const Problem& problem, const Schedule& schedule) {
  std::vector<std::int64_t> costs(problem.steps.size(), 0);
  auto byOven = staysByOven(problem, schedule);
  for (std::size_t o = 0; o < problem.ovens.size(); ++o) {
    const Oven& oven = problem.ovens[o];
    if (oven.idleMinuteCost == 0) continue;
    std::sort(byOven[o].begin(), byOven[o].end(), [](const Stay& a, const Stay& b) {
      return a.start < b.start || (a.start == b.start && a.step < b.step);
    });
    Minute lastUse = -kNoLimit;
    for (const Stay& stay : byOven[o]) {
      const auto setpoint = static_cast<std::size_t>(stay.need->phases.front().setpoint);
      if (stay.need->preheated && stay.start > lastUse)
        costs[stay.step] =
            std::int64_t{std::min(stay.start - lastUse, oven.heatFromCold[setpoint])} * oven.idleMinuteCost;
      lastUse = std::max(lastUse, stay.end);
    }
  }
  return costs;
}

}  // namespace suppertide::planning
