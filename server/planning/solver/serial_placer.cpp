#include "server/planning/solver/serial_placer.h"

#include <algorithm>
#include <iterator>
#include <set>

#include "server/planning/solver/side_rules.h"

namespace suppertide::planning {

int ringCount(const GridModel& model, int dish) {
  std::set<std::pair<int, int>> pairs;
  const auto& steps = model.problem().steps;
  for (const Gap& gap : model.gaps())
    if (nth(steps, gap.from).dish == dish && nth(steps, gap.to).dish == dish)
      pairs.insert(std::minmax(gap.from, gap.to));
  return static_cast<int>(pairs.size()) - sizeOf(model.distances(dish).steps) + 1;
}

SerialPlacer::SerialPlacer(const GridModel& model, int dish) : model_(model), dish_(dish) {
  before_.resize(model.distances(dish).steps.size());
  after_.resize(before_.size());
  for (const Gap& gap : model.gaps()) {
    const bool inside =
        nth(model.problem().steps, gap.from).dish == dish && nth(model.problem().steps, gap.to).dish == dish;
    if (!inside || gap.least < 0) continue;
    nth(before_, model.positionInDish(gap.to)).push_back(gap.from);
    nth(after_, model.positionInDish(gap.from)).push_back(gap.to);
  }
}

bool SerialPlacer::place(Schedule& plan, Occupancy& occupancy, std::mt19937& random, double noise,
                         bool like) const {
  std::vector<double> priority;
  std::normal_distribution<double> spread(0.0, 1.0);
  for (const int i : model_.distances(dish_).steps) {
    const Minute minute = like ? nth(plan.steps, i).start : model_.step(i).starts.back();
    priority.push_back(minute + (noise > 0 ? noise * spread(random) : 0.0));
  }
  std::vector<int> done;
  if (placeAll(priority, Side::kEarly, done, plan, occupancy)) {
    plan.unserved[static_cast<std::size_t>(dish_)] = false;
    if (keepsRules(plan)) return true;
    plan.unserved[static_cast<std::size_t>(dish_)] = true;
  }
  for (const int i : done) occupancy.remove(i, nth(plan.steps, i));
  return false;
}

bool SerialPlacer::justify(Schedule& plan, Occupancy& occupancy) const {
  const auto& steps = model_.distances(dish_).steps;
  const int last = nth(model_.problem().dishes, dish_).lastStep;
  const std::vector<Placement> before = plan.steps;
  std::vector<int> done = steps;
  const auto takeOut = [&](int but) {
    for (const int i : done)
      if (i != but) occupancy.remove(i, nth(plan.steps, i));
    done.clear();
    if (but >= 0) done.push_back(but);
  };
  const auto priorities = [&](auto of) {
    std::vector<double> priority;
    for (const int i : steps) priority.push_back(of(nth(plan.steps, i)));
    return priority;
  };
  takeOut(last);
  const auto latest = priorities([](const Placement& place) { return -1.0 * place.end; });
  bool placed = placeAll(latest, Side::kLate, done, plan, occupancy);
  if (placed) {
    takeOut(-1);
    const auto earliest = priorities([](const Placement& place) { return 1.0 * place.start; });
    placed = placeAll(earliest, Side::kEarly, done, plan, occupancy) && keepsRules(plan);
  }
  if (placed) return true;
  takeOut(-1);
  plan.steps = before;
  for (const int i : steps) occupancy.add(i, nth(plan.steps, i));
  return false;
}

bool SerialPlacer::placeAll(const std::vector<double>& priority, Side side, std::vector<int>& done,
                            Schedule& plan, Occupancy& occupancy) const {
  const auto& steps = model_.distances(dish_).steps;
  const auto& firsts = side == Side::kEarly ? before_ : after_;
  std::vector<bool> placed(plan.steps.size(), false);
  for (const int i : done) placed[static_cast<std::size_t>(i)] = true;
  while (done.size() < steps.size()) {
    int next = -1;
    for (int k = 0; k < sizeOf(steps); ++k) {
      if (placed[static_cast<std::size_t>(nth(steps, k))]) continue;
      const auto& first = nth(firsts, k);
      const bool ready =
          std::all_of(first.begin(), first.end(), [&](int i) { return placed[static_cast<std::size_t>(i)]; });
      if (ready && (next < 0 || nth(priority, k) < nth(priority, next))) next = k;
    }
    if (next < 0 || !placeStep(nth(steps, next), side, placed, plan, occupancy)) return false;
    placed[static_cast<std::size_t>(nth(steps, next))] = true;
    done.push_back(nth(steps, next));
  }
  return true;
}

// Gaps, mode links and clocks, also those with other served dishes.
bool SerialPlacer::keepsRules(const Schedule& plan) const {
  const Problem& problem = model_.problem();
  for (const int k : model_.clocks(dish_)) {
    const Clock& clock = nth(problem.clocks, k);
    if (clockMinutes(problem, clock, plan) > clock.most) return false;
  }
  const auto& steps = model_.distances(dish_).steps;
  return std::all_of(steps.begin(), steps.end(),
                     [&](int step) { return keepsGaps(step, plan) && keepsLinks(step, plan); });
}

bool SerialPlacer::served(int step, const Schedule& plan) const {
  return !plan.unserved[static_cast<std::size_t>(nth(model_.problem().steps, step).dish)];
}

bool SerialPlacer::keepsGaps(int step, const Schedule& plan) const {
  for (const int g : model_.gapsOf(step)) {
    const Gap& gap = nth(model_.gaps(), g);
    if (!served(gap.from, plan) || !served(gap.to, plan)) continue;
    const Placement& from = nth(plan.steps, gap.from);
    const Placement& to = nth(plan.steps, gap.to);
    const Minute distance = (gap.toEdge == Edge::kStart ? to.start : to.end) -
                            (gap.fromEdge == Edge::kStart ? from.start : from.end);
    if (distance < gap.least || distance > gap.most) return false;
  }
  return true;
}

// The links of the step's mode, and of others to it.
bool SerialPlacer::keepsLinks(int step, const Schedule& plan) const {
  const auto kept = [&](int from) {
    const auto& links = nth(nth(model_.problem().steps, from).modes, nth(plan.steps, from).mode).links;
    return std::all_of(links.begin(), links.end(), [&](const ModeLink& link) {
      return !served(link.step, plan) || std::find(link.modes.begin(), link.modes.end(),
                                                   nth(plan.steps, link.step).mode) != link.modes.end();
    });
  };
  const auto& linked = model_.linkedTo(step);
  return kept(step) && std::all_of(linked.begin(), linked.end(),
                                   [&](int other) { return !served(other, plan) || kept(other); });
}

bool SerialPlacer::placeStep(int step, Side side, const std::vector<bool>& placed, Schedule& plan,
                             Occupancy& occupancy) const {
  const GridStep& grid = model_.step(step);
  Interval<Minute> window{grid.starts.front(), grid.starts.back()};
  Interval<Minute> ends{grid.ends.front(), grid.ends.back()};
  for (const int other : model_.distances(dish_).steps) {
    if (!placed[static_cast<std::size_t>(other)]) continue;
    const Placement& there = nth(plan.steps, other);
    for (const Edge edge : {Edge::kStart, Edge::kEnd}) {
      const Minute minute = edge == Edge::kStart ? there.start : there.end;
      for (const Edge own : {Edge::kStart, Edge::kEnd}) {
        Interval<Minute>& bounds = own == Edge::kStart ? window : ends;
        const int least = model_.leastBetween(other, edge, step, own);
        const int back = model_.leastBetween(step, own, other, edge);
        if (least != Distances::kNone) bounds.start = std::max(bounds.start, minute + least);
        if (back != Distances::kNone) bounds.limit = std::min(bounds.limit, minute - back);
      }
    }
  }
  const auto first = std::lower_bound(grid.starts.begin(), grid.starts.end(), window.start);
  const auto limit = std::upper_bound(first, grid.starts.end(), window.limit);
  const auto fits = [&](Minute start) { return placeAt(step, start, ends, plan, occupancy); };
  if (side == Side::kEarly) return std::any_of(first, limit, fits);
  return std::any_of(std::make_reverse_iterator(limit), std::make_reverse_iterator(first), fits);
}

// In the first mode and with the first cook that fit.
bool SerialPlacer::placeAt(int step, Minute start, const Interval<Minute>& ends, Schedule& plan,
                           Occupancy& occupancy) const {
  const GridStep& grid = model_.step(step);
  for (const Choice& choice : grid.choices) {
    const EndRange range = model_.endRange(step, choice.mode, start);
    const auto end = std::lower_bound(grid.ends.begin(), grid.ends.end(), std::max(range.first, ends.start));
    if (range.empty() || end == grid.ends.end() || *end > std::min(range.last, ends.limit)) continue;
    const auto pinned = nth(model_.problem().steps, step).pin.cook.value_or(-1);
    std::vector<int> cooks;
    for (const CookOption& option : choice.cooks) cooks.push_back(option.cook);
    if (cooks.empty()) cooks.push_back(pinned);
    for (const int cook : cooks) {
      const Placement place{start, *end, choice.mode, cook};
      if (!occupancy.fitsOnce(step, place)) continue;
      nth(plan.steps, step) = place;
      occupancy.add(step, place);
      return true;
    }
  }
  return false;
}

}  // namespace suppertide::planning
