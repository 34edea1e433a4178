#include "server/planning/replan/rescue.h"

#include <algorithm>

#include "server/planning/explain/order_network.h"
#include "server/planning/solver/grid_model.h"
#include "server/planning/solver/plan_rules.h"
#include "server/planning/solver/repair.h"

namespace suppertide::planning {
namespace {

// How far limits are overrun, the least that helps. Common practice, no source.
constexpr Minute kStrains[] = {15, 30, 60};
constexpr Minute kMostStrain = 60;
constexpr int kRounds = 2;  // of improving what was put back

std::int64_t unservedIn(const Problem& problem, const Schedule& plan) {
  return costIn(costOf(problem, plan).total, Tier::kUnserved);
}

}  // namespace

std::optional<Schedule> Rescue::mended(const Schedule& plan) const {
  const std::vector<int> begun = underWay();
  const auto now = unservedIn(problem(), plan);
  const Problem patient = strained(begun, kMostStrain);
  if (!anyFits(patient, lost(plan))) return std::nullopt;
  if (const auto shifted = shiftedRight(patient, remains_, running_, search_.grid);
      shifted && keepsRules(patient, *shifted) && unservedIn(problem(), *shifted) < now)
    return shifted;
  RepairOptions options;
  options.search = search_;
  options.rounds = kRounds;
  for (const auto& dishes : {lost(plan), begun})
    for (const Minute by : kStrains) {
      const auto repaired = repairPlan(strained(dishes, by), plan, options);
      if (repaired && unservedIn(problem(), repaired->schedule) < now) return repaired->schedule;
    }
  return std::nullopt;
}

std::optional<Schedule> Rescue::plannedAnew(const Schedule& plan, Monitor* monitor) const {
  const Problem patient = strained(underWay(), kMostStrain);
  if (!anyFits(patient, lost(plan))) return std::nullopt;
  const auto made = makePlan(patient, search_, monitor);
  if (!made.ok() || unservedIn(problem(), made->schedule) >= unservedIn(problem(), plan)) return std::nullopt;
  return made->schedule;
}

Minute Rescue::overrun(const Schedule& plan, int dish) const {
  const auto index = static_cast<std::size_t>(dish);
  if (plan.unserved[index]) return 0;
  const Dish& served = problem().dishes[index];
  const Minute ready = plan.steps[static_cast<std::size_t>(served.lastStep)].end;
  Minute over = std::max(0, ready - served.serve - served.lateLimit);
  for (std::size_t i = 0; i < plan.steps.size(); ++i)
    if (problem().steps[i].dish == dish) over += std::max(0, plan.steps[i].end - problem().steps[i].latest);
  const auto minuteOf = [&](int step, Edge edge) {
    const Placement& at = plan.steps[static_cast<std::size_t>(step)];
    return edge == Edge::kStart ? at.start : at.end;
  };
  for (const Gap& gap : problem().gaps)
    if (gap.most < kNoLimit && problem().steps[static_cast<std::size_t>(gap.from)].dish == dish)
      over += std::max(0, minuteOf(gap.to, gap.toEdge) - minuteOf(gap.from, gap.fromEdge) - gap.most);
  return over;
}

Minute Rescue::overrun(const Schedule& plan) const {
  Minute over = 0;
  for (int d = 0; d < static_cast<int>(problem().dishes.size()); ++d) over += overrun(plan, d);
  return over;
}

bool Rescue::keepsAllElse(const Schedule& plan) const {
  return keepsRules(strained(underWay(), kMostStrain), plan);
}

// With the kitchen to itself.
bool Rescue::anyFits(const Problem& patient, const std::vector<int>& dishes) const {
  const GridModel model(patient, std::max(1, search_.grid));
  return std::any_of(dishes.begin(), dishes.end(), [&](int dish) { return !model.dropped(dish); });
}

bool Rescue::isPatient(std::size_t gap) const {
  if (!running_.patient.empty()) return running_.patient[gap];
  const auto kindOf = [&](int step) { return problem().steps[static_cast<std::size_t>(step)].kind; };
  const Gap& asked = problem().gaps[gap];
  return kindOf(asked.from) == StepKind::kFerment || kindOf(asked.to) == StepKind::kFerment ||
         (kindOf(asked.from) == StepKind::kChill && asked.fromEdge == Edge::kEnd);
}

bool Rescue::hasBegun(int dish) const {
  for (std::size_t i = 0; i < problem().steps.size(); ++i)
    if (problem().steps[i].dish == dish && remains_.past[i]) return true;
  return false;
}

std::vector<int> Rescue::lost(const Schedule& plan) const {
  std::vector<int> dishes = underWay();
  std::erase_if(dishes, [&](int dish) { return !plan.unserved[static_cast<std::size_t>(dish)]; });
  return dishes;
}

std::vector<int> Rescue::underWay() const {
  std::vector<int> dishes;
  for (int d = 0; d < static_cast<int>(problem().dishes.size()); ++d)
    if (hasBegun(d)) dishes.push_back(d);
  return dishes;
}

Problem Rescue::strained(const std::vector<int>& dishes, Minute by) const {
  Problem strained = problem();
  const auto among = [&](int dish) { return std::find(dishes.begin(), dishes.end(), dish) != dishes.end(); };
  for (std::size_t g = 0; g < strained.gaps.size(); ++g) {
    Gap& gap = strained.gaps[g];
    if (gap.most < kNoLimit && among(strained.steps[static_cast<std::size_t>(gap.from)].dish) && isPatient(g))
      gap.most += by;
  }
  for (Step& step : strained.steps)
    if (step.latest < kNoLimit && among(step.dish)) step.latest += by;
  for (const int dish : dishes) strained.dishes[static_cast<std::size_t>(dish)].lateLimit += by;
  return strained;
}

std::optional<Schedule> shiftedRight(const Problem& problem, const Remaining& remains, const Running& running,
                                     Minute grid) {
  Schedule from = remains.expected;
  for (std::size_t i = 0; i < from.steps.size(); ++i) {
    if (remains.past[i]) continue;
    Placement& at = from.steps[i];
    const Minute later = std::max(0, problem.steps[i].earliest - at.start);
    at.start += later;
    at.end += later;
  }
  // Of what is over only the order towards the rest counts; the plan that ran has it.
  return OrderNetwork(problem, running.plan).shifted(from, std::max(1, grid));
}

}  // namespace suppertide::planning
