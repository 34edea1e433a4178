// What settled steps and other dishes leave open for the steps of a dish being placed.
#include <algorithm>

#include "server/planning/solver/dish_placer.h"
#include "server/planning/solver/side_rules.h"

namespace suppertide::planning {
namespace {

Minute edgeOf(const Placement& place, Edge edge) {
  return edge == Edge::kStart ? place.start : place.end;
}

bool contains(const std::vector<int>& items, int item) {
  return std::find(items.begin(), items.end(), item) != items.end();
}

}  // namespace

// The step's place when it is settled: fixed in this dish, or of another served dish.
const Placement* DishPlacer::placed(int step, const Schedule& plan) const {
  const int dish = nth(model_.problem().steps, step).dish;
  const bool settled =
      dish == dish_ ? fixed_[static_cast<std::size_t>(step)] : !plan.unserved[static_cast<std::size_t>(dish)];
  return settled ? &nth(plan.steps, step) : nullptr;
}

// The candidates that settled steps leave open.
void DishPlacer::limitWindows(int step, const Schedule& plan, Table& table) const {
  const GridStep& grid = model_.step(step);
  if (const Placement* here = placed(step, plan)) {
    table.starts = {here->start};
    table.ends = {here->end};
    table.firstStart = table.firstEnd = 0;
    return;
  }
  Interval<Minute> start{0, kNoLimit};
  Interval<Minute> end{0, kNoLimit};
  const auto limit = [](Interval<Minute>& window, int least, int back, Minute other) {
    if (least != Distances::kNone) window.start = std::max(window.start, other + least);
    if (back != Distances::kNone) window.limit = std::min(window.limit, other - back);
  };
  for (const int other : order_)
    if (const Placement* there = placed(other, plan))
      for (const Edge edge : {Edge::kStart, Edge::kEnd}) {
        limit(start, model_.leastBetween(other, edge, step, Edge::kStart),
              model_.leastBetween(step, Edge::kStart, other, edge), edgeOf(*there, edge));
        limit(end, model_.leastBetween(other, edge, step, Edge::kEnd),
              model_.leastBetween(step, Edge::kEnd, other, edge), edgeOf(*there, edge));
      }
  const auto narrow = [&](const Gap& gap) {
    const Placement* there = placed(gap.from == step ? gap.to : gap.from, plan);
    if (!there) return;
    const Edge mine = gap.from == step ? gap.fromEdge : gap.toEdge;
    const Minute other = edgeOf(*there, gap.from == step ? gap.toEdge : gap.fromEdge);
    const int most = gap.most < kNoLimit ? gap.most : -Distances::kNone;
    Interval<Minute>& window = mine == Edge::kStart ? start : end;
    if (gap.from == step)
      limit(window, most == -Distances::kNone ? Distances::kNone : -most, gap.least, other);
    else
      limit(window, gap.least, most == -Distances::kNone ? Distances::kNone : -most, other);
  };
  const auto keep = [](const std::vector<Minute>& all, const Interval<Minute>& window,
                       std::vector<Minute>& kept) {
    const auto first = std::lower_bound(all.begin(), all.end(), window.start);
    kept.assign(first, std::upper_bound(first, all.end(), std::max(window.start - 1, window.limit)));
    return static_cast<int>(first - all.begin());
  };
  for (const int g : model_.gapsOf(step)) narrow(nth(model_.gaps(), g));
  for (const Gap& gap : gaps_)
    if (!caps_.empty() && (gap.from == step || gap.to == step)) narrow(gap);
  for (const Cap& cap : caps_) {
    if (cap.span.to >= 0 || cap.span.from != step) continue;
    Interval<Minute>& window = cap.span.fromEdge == Edge::kStart ? start : end;
    window.start = std::max(window.start, nth(model_.problem().dishes, dish_).serve - cap.most);
  }
  table.firstStart = keep(grid.starts, start, table.starts);
  table.firstEnd = keep(grid.ends, end, table.ends);
}

bool DishPlacer::mayUse(int step, int mode, const Schedule& plan) const {
  const Problem& problem = model_.problem();
  if (std::find(banned_.begin(), banned_.end(), std::pair(step, mode)) != banned_.end()) return false;
  for (const ModeLink& link : nth(nth(problem.steps, step).modes, mode).links)
    if (const Placement* there = placed(link.step, plan))
      if (!contains(link.modes, there->mode)) return false;
  for (const int other : model_.linkedTo(step)) {
    const Placement* there = placed(other, plan);
    if (!there) continue;
    for (const ModeLink& link : nth(nth(problem.steps, other).modes, there->mode).links)
      if (link.step == step && !contains(link.modes, mode)) return false;
  }
  return true;
}

// The first link between modes of this dish that the plan breaks, and the step that has it.
const ModeLink* DishPlacer::brokenLink(const Schedule& plan, int& step) const {
  const Problem& problem = model_.problem();
  for (const int i : order_)
    for (const ModeLink& link : nth(nth(problem.steps, i).modes, nth(plan.steps, i).mode).links) {
      if (nth(problem.steps, link.step).dish != dish_ ||
          contains(link.modes, nth(plan.steps, link.step).mode))
        continue;
      step = i;
      return &link;
    }
  return nullptr;
}

void DishPlacer::banOthers(int step, const std::vector<int>& modes) {
  for (const Choice& choice : model_.step(step).choices)
    if (!contains(modes, choice.mode)) banned_.emplace_back(step, choice.mode);
}

bool DishPlacer::keepsGaps(int step, const Schedule& plan) const {
  const auto kept = [&](int index) {
    const Gap& gap = nth(model_.gaps(), index);
    const int other = gap.from == step ? gap.to : gap.from;
    if (other != step && !placed(other, plan)) return true;
    const Minute distance =
        edgeOf(nth(plan.steps, gap.to), gap.toEdge) - edgeOf(nth(plan.steps, gap.from), gap.fromEdge);
    return distance >= gap.least && distance <= gap.most;
  };
  return std::all_of(model_.gapsOf(step).begin(), model_.gapsOf(step).end(), kept);
}

// The latest end that a cap on the step's own minutes allows.
Minute DishPlacer::lastEnd(int step, int mode, Minute start) const {
  Minute last = kNoLimit;
  for (const Cap& cap : caps_) {
    const Clock::Span& span = cap.span;
    const bool own = span.from == step && span.to == step && span.fromEdge == Edge::kStart &&
                     span.toEdge == Edge::kEnd && (span.modes.empty() || contains(span.modes, mode));
    if (own) last = std::min(last, start + cap.most);
  }
  return last;
}

// Caps the spans of the dish's clocks that run over, each by its part; false when none does.
bool DishPlacer::capClocks(const Schedule& plan) {
  const Problem& problem = model_.problem();
  bool over = false;
  for (const int k : model_.clocks(dish_)) {
    const Clock& clock = nth(problem.clocks, k);
    const Minute sum = clockMinutes(problem, clock, plan);
    if (sum <= clock.most) continue;
    over = true;
    for (const Clock::Span& span : clock.spans) {
      const Minute minutes = spanMinutes(problem, span, plan);
      if (minutes > 0) caps_.push_back({span, static_cast<Minute>(std::int64_t{minutes} * clock.most / sum)});
    }
  }
  return over;
}

}  // namespace suppertide::planning
