#include "server/planning/solver/grid_model.h"

#include <algorithm>

#include "server/planning/solver/occupancy.h"

namespace suppertide::planning {
namespace {

// Dishes above this many steps keep only their direct distances.
constexpr int kClosureSteps = 160;

Minute roundUp(Minute minute, Minute grid) {
  const Minute rest = ((minute % grid) + grid) % grid;
  return rest == 0 ? minute : minute + grid - rest;
}
Minute roundDown(Minute minute, Minute grid) {
  return roundUp(minute - grid + 1, grid);
}

void keepUnique(std::vector<Minute>& minutes) {
  std::sort(minutes.begin(), minutes.end());
  minutes.erase(std::unique(minutes.begin(), minutes.end()), minutes.end());
}

bool trim(std::vector<Minute>& minutes, const Interval<Minute>& bounds) {
  const auto before = minutes.size();
  std::erase_if(minutes, [&](Minute t) { return t < bounds.start || t > bounds.limit; });
  return minutes.size() != before;
}

}  // namespace

GridModel::GridModel(const Problem& problem, Minute grid, Minute lateness)
    : problem_(problem), grid_(std::max(1, grid)), lateness_(lateness) {
  steps_.resize(problem.steps.size());
  dropped_.assign(problem.dishes.size(), false);
  distances_.resize(problem.dishes.size());
  position_.assign(problem.steps.size(), 0);
  startBounds_.resize(problem.steps.size());
  endBounds_.resize(problem.steps.size());
  for (int i = 0; i < sizeOf(problem.steps); ++i) {
    auto& members = nth(distances_, nth(problem.steps, i).dish).steps;
    nth(position_, i) = sizeOf(members);
    members.push_back(i);
    chooseModes(i);
  }
  readClocks();
  indexSteps();
  Occupancy free(problem);
  for (int d = 0; d < sizeOf(problem.dishes); ++d) {
    measureDish(d);
    const bool possible = boundDish(d) && fillStarts(d) && settleWindows(d, free);
    if (!possible) nth(dropped_, d) = true;
  }
  rows_.resize(problem.steps.size());
  for (int i = 0; i < sizeOf(problem.steps); ++i)
    if (used(i)) fillRows(i);
  sumUnsocial();
  for (int d = 0; d < sizeOf(problem.dishes); ++d)
    if (dropped(nth(problem.steps, nth(problem.dishes, d).lastStep).dish)) nth(dropped_, d) = true;
}

// A clock with one span that always counts is a gap, or a bound before serving.
void GridModel::readClocks() {
  gaps_ = problem_.gaps;
  clocks_.resize(problem_.dishes.size());
  servedFrom_.assign(2 * problem_.steps.size(), 0);
  for (int k = 0; k < sizeOf(problem_.clocks); ++k) {
    const Clock& clock = nth(problem_.clocks, k);
    const Clock::Span& span = clock.spans.front();
    const int dishIndex = nth(problem_.steps, span.from).dish;
    const Dish& dish = nth(problem_.dishes, dishIndex);
    if (clock.spans.size() > 1 || !span.modes.empty()) {
      nth(clocks_, dishIndex).push_back(k);
      continue;
    }
    const int to = span.to < 0 ? dish.lastStep : span.to;
    const Edge toEdge = span.to < 0 ? Edge::kEnd : span.toEdge;
    gaps_.push_back({span.from, span.fromEdge, to, toEdge, -kNoLimit, clock.most});
    if (span.to >= 0) continue;
    Minute& from = nth(servedFrom_, 2 * span.from + (span.fromEdge == Edge::kEnd ? 1 : 0));
    from = std::max(from, dish.serve - clock.most);
  }
}

void GridModel::indexSteps() {
  gapsOf_.resize(problem_.steps.size());
  linkedTo_.resize(problem_.steps.size());
  for (int g = 0; g < sizeOf(gaps_); ++g) {
    nth(gapsOf_, nth(gaps_, g).from).push_back(g);
    if (nth(gaps_, g).to != nth(gaps_, g).from) nth(gapsOf_, nth(gaps_, g).to).push_back(g);
  }
  for (int i = 0; i < sizeOf(problem_.steps); ++i)
    for (const Mode& mode : nth(problem_.steps, i).modes)
      for (const ModeLink& link : mode.links) {
        auto& linked = nth(linkedTo_, link.step);
        if (linked.empty() || linked.back() != i) linked.push_back(i);
      }
}

void GridModel::chooseModes(int index) {
  const Step& step = nth(problem_.steps, index);
  for (int m = 0; m < sizeOf(step.modes); ++m) {
    if (step.pin.mode && *step.pin.mode != m) continue;
    const Mode& mode = nth(step.modes, m);
    Choice choice{m, {}};
    if (mode.attention > 0)
      for (const CookOption& option : mode.cooks) {
        if (step.pin.cook && *step.pin.cook != option.cook) continue;
        auto same = std::find_if(choice.cooks.begin(), choice.cooks.end(),
                                 [&](const CookOption& other) { return other.cook == option.cook; });
        if (same == choice.cooks.end())
          choice.cooks.push_back(option);
        else
          same->cost += option.cost;
      }
    if (mode.attention == 0 || !choice.cooks.empty()) nth(steps_, index).choices.push_back(std::move(choice));
  }
}

EndRange GridModel::endRange(int index, int mode, Minute start) const {
  const Step& step = nth(problem_.steps, index);
  const Length length = nth(step.modes, mode).length.at(start);
  if (!length.possible()) return {};
  const Minute first = start + length.shortest;
  const Minute last = start + length.longest;
  if (step.pin.end)
    return first <= *step.pin.end && *step.pin.end <= last ? EndRange{*step.pin.end, *step.pin.end}
                                                           : EndRange{};
  if (first == last) return {first, last};
  const EndRange onGrid{roundUp(first, grid_), roundDown(last, grid_)};
  return onGrid.empty() ? EndRange{start + length.best, start + length.best} : onGrid;
}

// Shortest and longest of all choices at any start, both included.
Interval<Minute> GridModel::lengthSpan(int index) const {
  const Step& step = nth(problem_.steps, index);
  Interval<Minute> span{kNoLimit, -kNoLimit};
  for (const Choice& choice : nth(steps_, index).choices)
    for (const Length& length : nth(step.modes, choice.mode).length.rows) {
      if (!length.possible()) continue;
      span.start = std::min(span.start, length.shortest);
      span.limit = std::max(span.limit, length.longest);
    }
  return span;
}

void GridModel::measureDish(int dish) {
  Distances& distances = nth(distances_, dish);
  const int edges = distances.edges();
  distances.least.assign(static_cast<std::size_t>(edges * edges), Distances::kNone);
  for (int e = 0; e < edges; ++e) distances.of(e, e) = 0;
  const auto tighten = [&](int from, int to, int least) {
    distances.of(from, to) = std::max(distances.of(from, to), least);
  };
  for (const int i : distances.steps) {
    const auto span = lengthSpan(i);
    if (span.start > span.limit) continue;
    const int p = 2 * positionInDish(i);
    tighten(p, p + 1, span.start);
    tighten(p + 1, p, -span.limit);
  }
  for (const Gap& gap : gaps_) {
    if (nth(problem_.steps, gap.from).dish != dish || nth(problem_.steps, gap.to).dish != dish) continue;
    const int from = 2 * positionInDish(gap.from) + (gap.fromEdge == Edge::kEnd ? 1 : 0);
    const int to = 2 * positionInDish(gap.to) + (gap.toEdge == Edge::kEnd ? 1 : 0);
    if (gap.least > -kNoLimit) tighten(from, to, gap.least);
    if (gap.most < kNoLimit) tighten(to, from, -gap.most);
  }
  if (sizeOf(distances.steps) > kClosureSteps) return;
  for (int k = 0; k < edges; ++k)
    for (int a = 0; a < edges; ++a) {
      const int head = distances.of(a, k);
      if (head == Distances::kNone) continue;
      for (int b = 0; b < edges; ++b)
        if (distances.of(k, b) != Distances::kNone) tighten(a, b, head + distances.of(k, b));
    }
}

// Sets the first bounds of the dish's edges from limits, pins, serving and
// distances; false when they contradict each other.
bool GridModel::boundDish(int dish) {
  const Distances& distances = nth(distances_, dish);
  const int edges = distances.edges();
  for (int e = 0; e < edges; ++e)
    if (distances.of(e, e) > 0) return false;
  std::vector<Minute> low(static_cast<std::size_t>(edges), 0);
  std::vector<Minute> high(static_cast<std::size_t>(edges), problem_.limit);
  for (const int i : distances.steps) {
    const Step& step = nth(problem_.steps, i);
    if (nth(steps_, i).choices.empty()) return false;
    const int p = 2 * positionInDish(i);
    nth(low, p) = std::max({0, step.earliest, nth(servedFrom_, 2 * i)});
    nth(low, p + 1) = nth(servedFrom_, 2 * i + 1);
    nth(high, p + 1) = std::min(problem_.limit, step.latest);
    const auto pin = [&](int edge, Minute minute) {
      nth(low, edge) = std::max(nth(low, edge), minute);
      nth(high, edge) = std::min(nth(high, edge), minute);
    };
    if (step.pin.start) pin(p, *step.pin.start);
    if (step.pin.end) pin(p + 1, *step.pin.end);
  }
  const Dish& data = nth(problem_.dishes, dish);
  if (nth(problem_.steps, data.lastStep).dish == dish) {
    const int ready = 2 * positionInDish(data.lastStep) + 1;
    nth(low, ready) = std::max(nth(low, ready), data.serve - data.holdLimit);
    nth(high, ready) = std::min(nth(high, ready), data.serve + std::min(data.lateLimit, lateness_));
  }
  const int rounds = sizeOf(distances.steps) > kClosureSteps ? edges : 1;
  for (int round = 0; round < rounds; ++round)
    for (int a = 0; a < edges; ++a)
      for (int b = 0; b < edges; ++b) {
        const int least = distances.of(a, b);
        if (least == Distances::kNone) continue;
        nth(low, b) = std::max(nth(low, b), nth(low, a) + least);
        nth(high, a) = std::min(nth(high, a), nth(high, b) - least);
      }
  for (const int i : distances.steps) {
    const int p = 2 * positionInDish(i);
    nth(startBounds_, i) = {nth(low, p), nth(high, p)};
    nth(endBounds_, i) = {nth(low, p + 1), nth(high, p + 1)};
    if (nth(low, p) > nth(high, p) || nth(low, p + 1) > nth(high, p + 1)) return false;
  }
  return true;
}

bool GridModel::fillStarts(int dish) {
  for (const int i : nth(distances_, dish).steps) {
    const Step& step = nth(problem_.steps, i);
    GridStep& grid = nth(steps_, i);
    const auto& bounds = nth(startBounds_, i);
    if (step.pin.start) {
      grid.starts.push_back(*step.pin.start);
    } else {
      for (Minute t = roundUp(bounds.start, grid_); t <= bounds.limit; t += grid_) grid.starts.push_back(t);
      if (step.pin.end)
        for (const Choice& choice : grid.choices)
          for (const Length& length : nth(step.modes, choice.mode).length.rows)
            if (length.possible() && length.shortest == length.longest)
              grid.starts.push_back(*step.pin.end - length.shortest);
      keepUnique(grid.starts);
      trim(grid.starts, bounds);
    }
  }
  return true;
}

// Drops the starts and ends of a step that fit no choice; true when its bounds moved.
bool GridModel::filterStep(int index) {
  GridStep& step = nth(steps_, index);
  auto& startBounds = nth(startBounds_, index);
  auto& endBounds = nth(endBounds_, index);
  const auto before = std::pair(startBounds, endBounds);
  trim(step.starts, startBounds);
  const auto possible = [&](Minute start) {
    return std::any_of(step.choices.begin(), step.choices.end(), [&](const Choice& choice) {
      const EndRange range = endRange(index, choice.mode, start);
      return !range.empty() && range.first <= endBounds.limit && range.last >= endBounds.start;
    });
  };
  std::erase_if(step.starts, [&](Minute start) { return !possible(start); });
  Interval<Minute> reach{kNoLimit, -kNoLimit};
  for (const Minute start : step.starts)
    for (const Choice& choice : step.choices) {
      const EndRange range = endRange(index, choice.mode, start);
      if (range.empty()) continue;
      reach.start = std::min(reach.start, range.first);
      reach.limit = std::max(reach.limit, range.last);
    }
  if (!step.starts.empty()) startBounds = startBounds.intersect({step.starts.front(), step.starts.back()});
  endBounds = endBounds.intersect(reach);
  return before != std::pair(startBounds, endBounds);
}

bool GridModel::settleWindows(int dish, Occupancy& free) {
  const Distances& distances = nth(distances_, dish);
  for (const int i : distances.steps) {
    GridStep& step = nth(steps_, i);
    std::erase_if(step.starts, [&](Minute start) {
      for (const Choice& choice : step.choices) {
        const EndRange range = endRange(i, choice.mode, start);
        if (range.empty()) continue;
        if (range.first == start) return false;
        if (choice.cooks.empty() && free.roomUntil(i, choice.mode, -1, start) >= range.first) return false;
        for (const CookOption& option : choice.cooks)
          if (free.roomUntil(i, choice.mode, option.cook, start) >= range.first) return false;
      }
      return true;
    });
  }
  bool moved = true;
  while (moved) {
    moved = false;
    for (const int i : distances.steps) {
      moved |= filterStep(i);
      if (nth(steps_, i).starts.empty() || nth(endBounds_, i).start > nth(endBounds_, i).limit) return false;
    }
    for (const int a : distances.steps)
      for (const int b : distances.steps)
        for (int edge = 0; edge < 4; ++edge) {
          auto& from = edge & 1 ? nth(endBounds_, a) : nth(startBounds_, a);
          auto& to = edge & 2 ? nth(endBounds_, b) : nth(startBounds_, b);
          const int least =
              distances.of(2 * positionInDish(a) + (edge & 1), 2 * positionInDish(b) + (edge >> 1));
          if (a == b || least == Distances::kNone) continue;
          if (to.start < from.start + least) to.start = from.start + least, moved = true;
          if (from.limit > to.limit - least) from.limit = to.limit - least, moved = true;
          if (from.start > from.limit || to.start > to.limit) return false;
        }
  }
  for (const int i : distances.steps) fillEnds(i);
  return true;
}

void GridModel::fillEnds(int index) {
  GridStep& step = nth(steps_, index);
  const auto& bounds = nth(endBounds_, index);
  std::vector<char> reached(static_cast<std::size_t>(std::max(0, bounds.limit - bounds.start + 1)), 0);
  const auto reach = [&](Minute end) {
    if (end >= bounds.start && end <= bounds.limit) nth(reached, end - bounds.start) = 1;
  };
  for (const Minute start : step.starts)
    for (const Choice& choice : step.choices) {
      const EndRange range = endRange(index, choice.mode, start);
      for (Minute end = range.first; end <= std::min(range.last, bounds.limit); end += grid_) reach(end);
    }
  for (Minute end = bounds.start; end <= bounds.limit; ++end)
    if (nth(reached, end - bounds.start)) step.ends.push_back(end);
  const auto span = lengthSpan(index);
  if (span.start == span.limit) step.fixedLength = span.start;
}

void GridModel::fillRows(int index) {
  const GridStep& step = nth(steps_, index);
  auto& rows = nth(rows_, index);
  for (const Choice& choice : step.choices) {
    auto& row = rows.emplace_back();
    row.reserve(step.starts.size());
    for (const Minute start : step.starts) {
      const EndRange range = endRange(index, choice.mode, start);
      const auto first = std::lower_bound(step.ends.begin(), step.ends.end(), range.first);
      const auto last = std::upper_bound(first, step.ends.end(), range.last);
      const Minute best = start + nth(nth(problem_.steps, index).modes, choice.mode).length.at(start).best;
      row.push_back({static_cast<int>(first - step.ends.begin()),
                     range.empty() ? -1 : static_cast<int>(last - step.ends.begin()) - 1, best});
    }
  }
}

std::vector<Minute> GridModel::offGrid(int index, Edge edge) const {
  std::vector<Minute> rests;
  for (const Minute t : edge == Edge::kStart ? step(index).starts : step(index).ends)
    if (std::find(rests.begin(), rests.end(), t % grid_) == rests.end()) rests.push_back(t % grid_);
  return rests;
}

void GridModel::sumUnsocial() {
  for (const Cook& cook : problem_.cooks) {
    std::vector<std::int64_t> costs(static_cast<std::size_t>(problem_.limit) + 1, 0);
    for (const Cook::SoftHours& hours : cook.unsocial) {
      const auto when = hours.when.intersect({0, problem_.limit});
      for (Minute t = when.start; t < when.limit; ++t) nth(costs, t + 1) += hours.minuteCost;
    }
    for (std::size_t t = 1; t < costs.size(); ++t) costs[t] += costs[t - 1];
    unsocialUpTo_.push_back(std::move(costs));
  }
}

int GridModel::leastBetween(int fromStep, Edge fromEdge, int toStep, Edge toEdge) const {
  const int dish = nth(problem_.steps, fromStep).dish;
  if (nth(problem_.steps, toStep).dish != dish) return Distances::kNone;
  return distances(dish).of(2 * positionInDish(fromStep) + (fromEdge == Edge::kEnd ? 1 : 0),
                            2 * positionInDish(toStep) + (toEdge == Edge::kEnd ? 1 : 0));
}

}  // namespace suppertide::planning
