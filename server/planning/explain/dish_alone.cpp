#include "server/planning/explain/dish_alone.h"

#include <algorithm>
#include <cstdint>
#include <limits>
#include <map>

#include "server/planning/explain/oven_stay.h"

namespace suppertide::planning {
namespace {

// One number for the tiers that count here: a tier's whole range is below one unit of the tier above.
constexpr std::int64_t kLateMinute = std::int64_t{1} << 42;
constexpr std::int64_t kQualityUnit = std::int64_t{1} << 21;
constexpr std::int64_t kImpossible = std::numeric_limits<std::int64_t>::max() / 4;
// More ways to combine linked modes than this are cut off: real dishes have a dozen.
constexpr std::size_t kMostCombinations = 64;

struct Times {
  Minute start;
  Minute end;
};
struct Span {
  Minute low;
  Minute high;  // both included
};

// Least-cost placements of a step for each (start, end), all its branch included.
struct Candidate {
  Placement at;
  std::int64_t cost;
};

class DishTree {
 public:
  DishTree(const Problem& problem, int dish, Minute grid)
      : problem_(problem), dish_(nth(problem.dishes, dish)), grid_(grid), nodes_(problem.steps.size()) {
    for (int i = 0; i < static_cast<int>(problem.steps.size()); ++i)
      if (nth(problem.steps, i).dish == dish) steps_.push_back(i);
    growFrom(dish_.lastStep);
    findLinked();
  }

  std::optional<std::vector<std::pair<int, Placement>>> best() {
    std::vector<std::pair<int, Placement>> plan;
    tryModes(0, plan);
    if (plan.empty()) return std::nullopt;
    return plan;
  }

 private:
  struct Node {
    int parent = -1;
    std::vector<int> gaps;  // indices of the gaps to the parent
    std::vector<int> children;
    int onlyMode = -1;  // of a linked step, while a combination is tried
    Span starts{0, 0};
    std::vector<Candidate> candidates;  // by start, then end
  };

  Node& node(int step) { return nodes_[static_cast<std::size_t>(step)]; }
  const Step& step(int index) const { return nth(problem_.steps, index); }

  // Breadth first, so that each step hangs as near to the last one as it can; `order_` has parents first.
  void growFrom(int root) {
    order_ = {root};
    std::vector<bool> seen(problem_.steps.size(), false);
    seen[static_cast<std::size_t>(root)] = true;
    for (std::size_t next = 0; next < order_.size(); ++next) {
      const int parent = order_[next];
      for (int g = 0; g < static_cast<int>(problem_.gaps.size()); ++g) {
        const Gap& gap = nth(problem_.gaps, g);
        if (gap.from != parent && gap.to != parent) continue;
        const int child = gap.from == parent ? gap.to : gap.from;
        if (step(child).dish != step(root).dish) continue;
        if (!seen[static_cast<std::size_t>(child)]) {
          seen[static_cast<std::size_t>(child)] = true;
          order_.push_back(child);
          node(child).parent = parent;
          node(parent).children.push_back(child);
        }
        if (node(child).parent == parent) node(child).gaps.push_back(g);
      }
    }
  }

  void findLinked() {
    for (const int i : steps_)
      for (const Mode& mode : step(i).modes)
        for (const ModeLink& link : mode.links)
          if (step(link.step).dish == step(i).dish) {
            linked_.push_back(i);
            linked_.push_back(link.step);
          }
    std::sort(linked_.begin(), linked_.end());
    linked_.erase(std::unique(linked_.begin(), linked_.end()), linked_.end());
    std::size_t combinations = 1;
    for (const int i : linked_) combinations *= step(i).modes.size();
    if (combinations > kMostCombinations) linked_.clear();
  }

  bool linksHold() {
    for (const int i : linked_)
      for (const ModeLink& link : nth(step(i).modes, node(i).onlyMode).links) {
        if (step(link.step).dish != step(i).dish) continue;
        const int other = node(link.step).onlyMode;
        if (std::find(link.modes.begin(), link.modes.end(), other) == link.modes.end()) return false;
      }
    return true;
  }

  void tryModes(std::size_t depth, std::vector<std::pair<int, Placement>>& plan) {
    if (depth < linked_.size()) {
      const int i = linked_[depth];
      for (int m = 0; m < static_cast<int>(step(i).modes.size()); ++m) {
        node(i).onlyMode = m;
        tryModes(depth + 1, plan);
      }
      return;
    }
    if (!linksHold() || !boundStarts()) return;
    for (auto it = order_.rbegin(); it != order_.rend(); ++it) fill(*it);
    const auto& ends = node(order_.front()).candidates;
    const auto least = std::min_element(
        ends.begin(), ends.end(), [](const Candidate& a, const Candidate& b) { return a.cost < b.cost; });
    if (least == ends.end() || least->cost >= bestCost_) return;
    bestCost_ = least->cost;
    plan.clear();
    trace(order_.front(), least->at, plan);
  }

  // Least and greatest length over the modes that may be chosen.
  Span lengthsOf(int index) {
    Span span{kNoLimit, 0};
    forEachMode(index, [&](int m) {
      for (const Length& length : nth(step(index).modes, m).length.rows) {
        if (!length.possible()) continue;
        span.low = std::min(span.low, length.shortest);
        span.high = std::max(span.high, length.longest);
      }
    });
    return span;
  }

  template <typename Visit>
  void forEachMode(int index, Visit visit) {
    const Step& what = step(index);
    for (int m = 0; m < static_cast<int>(what.modes.size()); ++m) {
      if (what.pin.mode && *what.pin.mode != m) continue;
      if (node(index).onlyMode >= 0 && node(index).onlyMode != m) continue;
      visit(m);
    }
  }

  // Start windows from the serving window down the tree; false when one is empty.
  bool boundStarts() {
    std::vector<Span> ends(problem_.steps.size());
    for (const int i : order_) {
      const Span length = lengthsOf(i);
      if (length.low > length.high) return false;
      Span start{0, problem_.limit};
      Span end{0, problem_.limit};
      if (i == dish_.lastStep) {
        end = {dish_.serve - dish_.holdLimit, dish_.serve + std::min(dish_.lateLimit, problem_.limit)};
      } else {
        const int parent = node(i).parent;
        for (const int g : node(i).gaps) {
          const Gap& gap = nth(problem_.gaps, g);
          const bool childFirst = gap.from == i;
          const Edge mine = childFirst ? gap.fromEdge : gap.toEdge;
          const Edge theirs = childFirst ? gap.toEdge : gap.fromEdge;
          const Span other =
              theirs == Edge::kStart ? node(parent).starts : ends[static_cast<std::size_t>(parent)];
          Span& own = mine == Edge::kStart ? start : end;
          own.low = std::max(own.low, childFirst ? other.low - gap.most : other.low + gap.least);
          own.high = std::min(own.high, childFirst ? other.high - gap.least : other.high + gap.most);
        }
      }
      start.low = std::max({start.low, end.low - length.high, step(i).earliest, 0});
      start.high = std::min({start.high, end.high - length.low, problem_.limit});
      end.low = std::max(end.low, start.low + length.low);
      end.high = std::min({end.high, start.high + length.high, step(i).latest, problem_.limit});
      if (start.low > start.high || end.low > end.high) return false;
      node(i).starts = start;
      ends[static_cast<std::size_t>(i)] = end;
    }
    return true;
  }

  // All placements of one step that its own bounds, cooks and ovens allow, with the cost of its branch.
  void fill(int index) {
    Node& here = node(index);
    here.candidates.clear();
    branchCache_.clear();
    const Pin& pin = step(index).pin;
    const Minute first = (here.starts.low + grid_ - 1) / grid_ * grid_;
    if (pin.start)
      fillStart(index, *pin.start);
    else
      for (Minute start = first; start <= here.starts.high; start += grid_) fillStart(index, start);
    // Cheapest first, so that the first that goes with a parent is the best.
    std::stable_sort(here.candidates.begin(), here.candidates.end(),
                     [](const Candidate& a, const Candidate& b) { return a.cost < b.cost; });
  }

  void fillStart(int index, Minute start) {
    const Step& what = step(index);
    forEachMode(index, [&](int m) {
      const Mode& mode = nth(what.modes, m);
      const Length length = mode.length.at(start);
      if (!length.possible()) return;
      if (what.pin.end) {
        fillPlacement(index, length, {start, *what.pin.end, m, -1});
        return;
      }
      const bool fixed = length.shortest == length.longest;
      const Minute first =
          fixed ? start + length.shortest : (start + length.shortest + grid_ - 1) / grid_ * grid_;
      for (Minute end = first; end <= start + length.longest; end += grid_)
        fillPlacement(index, length, {start, end, m, -1});
    });
  }

  void fillPlacement(int index, const Length& length, Placement at) {
    if (at.end > std::min(problem_.limit, step(index).latest)) return;
    if (at.end - at.start < length.shortest || at.end - at.start > length.longest) return;
    std::int64_t cost = ownCost(index, length, at);
    if (cost >= kImpossible) return;
    for (const int child : node(index).children) {
      cost += branchCost(child, {at.start, at.end});
      if (cost >= kImpossible) return;
    }
    node(index).candidates.push_back({at, cost});
  }

  // Cost of the step itself, choosing its cook; kImpossible when nobody is there or its oven is closed.
  std::int64_t ownCost(int index, const Length& length, Placement& at) {
    const Mode& mode = nth(step(index).modes, at.mode);
    if (mode.oven)
      for (const Interval<Minute>& closed : nth(problem_.ovens, mode.oven->oven).closed)
        if (closed.overlaps({at.start, at.end})) return kImpossible;
    const Minute over = at.end - at.start - length.best;
    std::int64_t cost =
        kQualityUnit * (mode.qualityCost + (over < 0 ? std::int64_t{-over} * mode.shortMinuteCost
                                                     : std::int64_t{over} * mode.longMinuteCost));
    if (mode.attention > 0) cost += cookCost(index, at);
    if (index != dish_.lastStep) return cost;
    const Minute early = dish_.serve - at.end;
    if (early > dish_.holdLimit || -early > dish_.lateLimit) return kImpossible;
    return cost + (early < 0 ? kLateMinute * -early : kQualityUnit * dish_.waitCost.at(early));
  }

  std::int64_t cookCost(int index, Placement& at) const {
    std::int64_t least = kImpossible;
    for (const CookOption& option : nth(step(index).modes, at.mode).cooks) {
      if (step(index).pin.cook && *step(index).pin.cook != option.cook) continue;
      const Cook& cook = nth(problem_.cooks, option.cook);
      Minute there = 0;
      for (const Interval<Minute>& span : cook.available) there += overlap(span, at);
      if (there < at.end - at.start) continue;
      std::int64_t cost = option.cost;
      for (const Cook::SoftHours& hours : cook.unsocial)
        cost += std::int64_t{overlap(hours.when, at)} * hours.minuteCost;
      if (cost >= least) continue;
      least = cost;
      at.cook = option.cook;
    }
    return least;
  }

  static Minute overlap(const Interval<Minute>& span, const Placement& at) {
    return std::max(0, std::min(span.limit, at.end) - std::max(span.start, at.start));
  }

  bool gapsHold(int child, const Placement& at, const Times& parent) {
    for (const int g : node(child).gaps) {
      const Gap& gap = nth(problem_.gaps, g);
      const auto edge = [&](int which, Edge side) {
        if (which == child) return side == Edge::kStart ? at.start : at.end;
        return side == Edge::kStart ? parent.start : parent.end;
      };
      const Minute distance = edge(gap.to, gap.toEdge) - edge(gap.from, gap.fromEdge);
      if (distance < gap.least || distance > gap.most) return false;
    }
    return true;
  }

  // Whether any gap to the parent looks at that edge of it.
  bool looksAt(int child, Edge side) {
    return std::any_of(node(child).gaps.begin(), node(child).gaps.end(), [&](int g) {
      const Gap& gap = nth(problem_.gaps, g);
      return (gap.from == child ? gap.toEdge : gap.fromEdge) == side;
    });
  }

  const Candidate* bestOfBranch(int child, const Times& parent) {
    for (const Candidate& candidate : node(child).candidates)
      if (gapsHold(child, candidate.at, parent)) return &candidate;
    return nullptr;
  }

  // As bestOfBranch, remembered by the edges of the parent that matter while the parent is filled.
  std::int64_t branchCost(int child, const Times& parent) {
    const Times key{looksAt(child, Edge::kStart) ? parent.start : 0,
                    looksAt(child, Edge::kEnd) ? parent.end : 0};
    const auto [entry, isNew] = branchCache_.try_emplace({child, key.start, key.end}, kImpossible);
    if (isNew)
      if (const Candidate* best = bestOfBranch(child, parent)) entry->second = best->cost;
    return entry->second;
  }

  void trace(int index, const Placement& at, std::vector<std::pair<int, Placement>>& plan) {
    plan.emplace_back(index, at);
    for (const int child : node(index).children)
      if (const Candidate* best = bestOfBranch(child, {at.start, at.end})) trace(child, best->at, plan);
  }

  const Problem& problem_;
  const Dish& dish_;
  Minute grid_;
  std::vector<Node> nodes_;
  std::vector<int> steps_;
  std::vector<int> order_;
  std::vector<int> linked_;
  std::int64_t bestCost_ = kImpossible;
  std::map<std::tuple<int, Minute, Minute>, std::int64_t> branchCache_;
};

}  // namespace

std::optional<std::vector<std::pair<int, Placement>>> planAlone(const Problem& problem, int dish,
                                                                Minute grid) {
  return DishTree(problem, dish, grid).best();
}

}  // namespace suppertide::planning
