// What is wanted beyond the rules: air between tasks and after uncertain steps, few interruptions,
// no oven heated for nothing.
#include <algorithm>

#include "server/compose/parts.h"

namespace suppertide::compose {
namespace {

// Common practice, no source: time to wash hands, put away and read the next recipe.
constexpr int kAirBetweenTasks = 10;
constexpr int kInterruptionCost = 10;
constexpr int kIdleMinuteCost = 1;
// Air after an uncertain step covers half of what it may run over, up to this.
constexpr int kMostAir = 15;
constexpr int kGrid = 5;

// Minutes that the step may run over its likely length, in its slowest mode.
int mayRunOver(const planning::Step& step) {
  double most = 0;
  for (const planning::Mode& mode : step.modes)
    for (const planning::Length& length : mode.length.rows)
      if (length.possible()) most = std::max(most, (mode.spread.most - 1) * length.best);
  return static_cast<int>(most);
}

}  // namespace

absl::Status addComfort(Composition& composition) {
  planning::Problem& problem = composition.problem;
  problem.airBetweenTasks = kAirBetweenTasks;
  problem.interruptionCost = kInterruptionCost;
  for (planning::Oven& oven : problem.ovens) oven.idleMinuteCost = kIdleMinuteCost;
  for (planning::Gap& gap : problem.gaps) {
    const planning::Step& from = problem.steps[static_cast<std::size_t>(gap.from)];
    const planning::Step& to = problem.steps[static_cast<std::size_t>(gap.to)];
    const bool follows = gap.fromEdge == planning::Edge::kEnd && gap.toEdge == planning::Edge::kStart;
    // A ferment ends when the dough is ready: what follows it cannot wait for the clock.
    const bool watched = from.kind == planning::StepKind::kFerment || to.kind == planning::StepKind::kFerment;
    if (!follows || watched || gap.least < 0) continue;
    const int air = std::min(kMostAir, mayRunOver(from) / 2 / kGrid * kGrid);
    gap.air = std::min(air, gap.most < planning::kNoLimit ? gap.most - gap.least : air);
  }
  return absl::OkStatus();
}

}  // namespace suppertide::compose
