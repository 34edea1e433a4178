#include "server/planning/solver/calm_costs.h"

#include <algorithm>

#include "server/planning/model/costs/calm.h"

namespace suppertide::planning {

CalmCosts::CalmCosts(Encoder& encoder, CostSum& sum)
    : encoder_(encoder), sum_(sum), ladders_(encoder.model().problem().steps.size()) {
  const std::set<Minute> rests = restsOfTasks();
  for (int i = 0; i < sizeOf(ladders_); ++i)
    if (encoder_.model().used(i) && mayBeTask(i)) makeTask(i, rests);
  for (const Gap& gap : problem().gaps)
    if (gap.air > 0 && encoder_.model().used(gap.from) && encoder_.model().used(gap.to)) makeGap(gap);
}

bool CalmCosts::isTask(int step, int mode) const {
  return nth(nth(problem().steps, step).modes, mode).attention >= kTaskAttention;
}

bool CalmCosts::mayBeTask(int step) const {
  const auto& choices = encoder_.model().step(step).choices;
  return std::any_of(choices.begin(), choices.end(),
                     [&](const Choice& choice) { return isTask(step, choice.mode); });
}

// How many minutes past the grid a task may end.
std::set<Minute> CalmCosts::restsOfTasks() const {
  std::set<Minute> rests;
  for (int i = 0; i < sizeOf(ladders_); ++i)
    if (encoder_.model().used(i) && mayBeTask(i)) {
      const auto own = encoder_.model().offGrid(i, Edge::kEnd);
      rests.insert(own.begin(), own.end());
    }
  return rests;
}

// The levels are what the pauses that can be between two tasks cost.
void CalmCosts::makeTask(int step, const std::set<Minute>& rests) {
  if (problem().airBetweenTasks == 0 && problem().interruptionCost == 0) return;
  const Minute grid = encoder_.model().grid();
  std::vector<std::int64_t> levels{0, problem().interruptionCost};
  for (const Minute start : encoder_.model().offGrid(step, Edge::kStart))
    for (const Minute rest : rests)
      for (Minute free = (start - rest + grid) % grid; free < problem().airBetweenTasks; free += grid)
        levels.push_back(problem().airBetweenTasks - free);
  nth(ladders_, step).emplace(encoder_.sat(), std::move(levels), sum_);
}

// What the two edges can be closer than wanted.
void CalmCosts::makeGap(const Gap& gap) {
  const GridModel& model = encoder_.model();
  std::vector<std::int64_t> levels{0};
  for (const Minute from : model.offGrid(gap.from, gap.fromEdge))
    for (const Minute to : model.offGrid(gap.to, gap.toEdge))
      for (Minute more = 0; more < gap.air; ++more)
        if ((from + gap.least + more - to) % model.grid() == 0) levels.push_back(gap.air - more);
  const CostLadder ladder(encoder_.sat(), levels, sum_);
  for (const std::int64_t lacking : levels) {
    if (lacking == 0) continue;
    const auto distance = static_cast<Minute>(gap.least + gap.air - lacking + 1);
    encoder_.sat().add({-encoder_.servedStep(gap.from), -encoder_.servedStep(gap.to),
                        encoder_.before(gap.from, gap.fromEdge, distance, gap.to, gap.toEdge),
                        ladder.atLeast(lacking)});
  }
}

// Adds for every cook: `task` costs as much as here while `before` ends as close or it begins inside.
int CalmCosts::explain(int before, int task, std::int64_t cost, Minute free) {
  std::vector<Lit> clause{nth(ladders_, task)->atLeast(cost)};
  for (const int i : {before, task}) {
    clause.push_back(-encoder_.servedStep(i));
    clause.push_back(encoder_.emptyStep(i));
    for (const Choice& choice : encoder_.model().step(i).choices)
      if (!isTask(i, choice.mode)) clause.push_back(encoder_.mode(i, choice.mode));
  }
  if (free < 0) {
    clause.push_back(encoder_.before(task, Edge::kStart, 0, before, Edge::kStart));
    clause.push_back(encoder_.before(before, Edge::kEnd, 0, task, Edge::kStart));
  } else {
    clause.push_back(encoder_.before(task, Edge::kStart, 1, before, Edge::kEnd));
    clause.push_back(encoder_.before(before, Edge::kEnd, free + 1, task, Edge::kStart));
  }
  int added = 0;
  for (int c = 0; c < sizeOf(problem().cooks); ++c) {
    if (encoder_.cook(before, c) == kFalse || encoder_.cook(task, c) == kFalse) continue;
    std::vector<Lit> of = clause;
    of.push_back(-encoder_.cook(before, c));
    of.push_back(-encoder_.cook(task, c));
    encoder_.sat().add(of);
    ++added;
  }
  return added;
}

int CalmCosts::refineTask(int task, const std::vector<int>& others, const Schedule& plan) {
  std::int64_t charged = nth(ladders_, task)->value(encoder_.sat());
  int added = 0;
  for (const int other : others) {
    if (nth(problem().steps, other).dish == nth(problem().steps, task).dish) continue;
    const Placement& before = nth(plan.steps, other);
    const Placement& here = nth(plan.steps, task);
    const std::int64_t cost = airCost(problem(), before, here);
    if (cost <= charged) continue;
    const bool inside = before.start < here.start && here.start < before.end;
    added += explain(other, task, cost, inside ? -1 : here.start - before.end);
  }
  return added;
}

int CalmCosts::refine(const Schedule& plan) {
  std::vector<std::vector<int>> byCook(problem().cooks.size());
  for (int i = 0; i < sizeOf(ladders_); ++i) {
    const Placement& place = nth(plan.steps, i);
    const auto dish = static_cast<std::size_t>(nth(problem().steps, i).dish);
    if (nth(ladders_, i) && !plan.unserved[dish] && place.cook >= 0 && place.start < place.end &&
        isTask(i, place.mode))
      nth(byCook, place.cook).push_back(i);
  }
  int added = 0;
  for (const auto& tasks : byCook)
    for (const int task : tasks) added += refineTask(task, tasks, plan);
  return added;
}

}  // namespace suppertide::planning
