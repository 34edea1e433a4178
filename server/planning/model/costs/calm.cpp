#include "server/planning/model/costs/calm.h"

#include <algorithm>
#include <cstddef>

namespace suppertide::planning {
namespace {

struct Task {
  std::size_t step;
  Placement at;
};

std::vector<std::vector<Task>> tasksByCook(const Problem& problem, const Schedule& schedule) {
  std::vector<std::vector<Task>> tasks(problem.cooks.size());
  for (std::size_t i = 0; i < problem.steps.size(); ++i) {
    const Step& step = problem.steps[i];
    const Placement& at = schedule.steps[i];
    if (schedule.unserved[static_cast<std::size_t>(step.dish)] || at.cook < 0 || at.start == at.end) continue;
    if (step.modes[static_cast<std::size_t>(at.mode)].attention >= kTaskAttention)
      tasks[static_cast<std::size_t>(at.cook)].push_back({i, at});
  }
  return tasks;
}

void addTasks(const Problem& problem, const Schedule& schedule, std::vector<std::int64_t>& costs) {
  if (problem.airBetweenTasks == 0 && problem.interruptionCost == 0) return;
  for (const auto& tasks : tasksByCook(problem, schedule))
    for (const Task& task : tasks)
      for (const Task& before : tasks)
        if (problem.steps[before.step].dish != problem.steps[task.step].dish)
          costs[task.step] = std::max(costs[task.step], airCost(problem, before.at, task.at));
}

}  // namespace

std::int64_t airCost(const Problem& problem, const Placement& before, const Placement& task) {
  if (before.start < task.start && task.start < before.end) return problem.interruptionCost;
  const Minute free = task.start - before.end;
  return free >= 0 && free < problem.airBetweenTasks ? problem.airBetweenTasks - free : 0;
}

std::int64_t gapAirCost(const Gap& gap, Minute distance) {
  return std::max(0, gap.least + gap.air - std::max(distance, gap.least));
}

std::vector<std::int64_t> calmCosts(const Problem& problem, const Schedule& schedule) {
  std::vector<std::int64_t> costs(problem.steps.size(), 0);
  addTasks(problem, schedule, costs);
  const auto served = [&](int step) {
    return !schedule.unserved[static_cast<std::size_t>(problem.steps[static_cast<std::size_t>(step)].dish)];
  };
  for (const Gap& gap : problem.gaps) {
    if (gap.air == 0 || !served(gap.from) || !served(gap.to)) continue;
    const Placement& from = schedule.steps[static_cast<std::size_t>(gap.from)];
    const Placement& to = schedule.steps[static_cast<std::size_t>(gap.to)];
    const Minute distance = (gap.toEdge == Edge::kStart ? to.start : to.end) -
                            (gap.fromEdge == Edge::kStart ? from.start : from.end);
    costs[static_cast<std::size_t>(gap.to)] += gapAirCost(gap, distance);
  }
  return costs;
}

}  // namespace suppertide::planning
