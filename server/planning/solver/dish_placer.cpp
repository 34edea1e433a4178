#include "server/planning/solver/dish_placer.h"

#include <algorithm>

#include "server/planning/model/costs/calm.h"
#include "server/planning/model/costs/moves.h"
#include "server/planning/model/costs/quality.h"

namespace suppertide::planning {
namespace {

constexpr std::int64_t kNever = std::int64_t{1} << 60;
// The tiers in one number. Only a heuristic's measure: what it finds is judged by costOf.
constexpr std::int64_t kLateWeight = std::int64_t{1} << 47;
constexpr std::int64_t kMovesWeight = std::int64_t{1} << 39;
constexpr std::int64_t kQualityWeight = std::int64_t{1} << 31;
constexpr std::int64_t kPeopleWeight = std::int64_t{1} << 19;
constexpr std::int64_t kCalmWeight = std::int64_t{1} << 9;
constexpr std::int64_t kOvensWeight = 1;
// A cook's price is in 1/1024 of what a people cost of 1 is.
constexpr std::int64_t kPriceWeight = kPeopleWeight / 1024;

// The least of `costs` whose value lies in [low, high] for windows that move up, remembered by index.
class SlidingLeast {
 public:
  SlidingLeast(const std::vector<Minute>& values, const std::vector<std::int64_t>& costs)
      : values_(values), costs_(costs) {}
  // The index of the least cost, the last of equals; -1 when there is none.
  int in(Minute low, Minute high) {
    for (; next_ < sizeOf(values_) && nth(values_, next_) <= high; ++next_) {
      while (sizeOf(queue_) > head_ && nth(costs_, queue_.back()) >= nth(costs_, next_)) queue_.pop_back();
      queue_.push_back(next_);
    }
    while (head_ < sizeOf(queue_) && nth(values_, nth(queue_, head_)) < low) ++head_;
    return head_ < sizeOf(queue_) && nth(costs_, nth(queue_, head_)) < kNever ? nth(queue_, head_) : -1;
  }

 private:
  const std::vector<Minute>& values_;
  const std::vector<std::int64_t>& costs_;
  std::vector<int> queue_;
  int head_ = 0;
  int next_ = 0;
};

}  // namespace

bool DishPlacer::place(int dish, Schedule& plan, const std::vector<std::int64_t>& cookPrice) {
  if (model_.dropped(dish)) return false;
  constexpr int kCapTries = 4;
  dish_ = dish;
  caps_.clear();
  for (int k = 0; k < kCapTries; ++k) {
    fixed_.assign(model_.problem().steps.size(), false);
    tables_.resize(fixed_.size());
    messages_.resize(fixed_.size());
    plantTree(dish);
    if (!placeWithin(plan, cookPrice)) return false;
    if (!capClocks(plan)) return true;
    takeBack(plan);
  }
  return false;
}

// Settles the steps, solving again for the rest whenever some do not go together.
bool DishPlacer::placeWithin(Schedule& plan, const std::vector<std::int64_t>& cookPrice) {
  int left = sizeOf(order_);
  banned_.clear();
  while (solve(plan, cookPrice, 0)) {
    const bool done = fixSteps(plan);
    const int still = static_cast<int>(
        std::count_if(order_.begin(), order_.end(), [&](int step) { return !placed(step, plan); }));
    if (done) {
      plan.unserved[static_cast<std::size_t>(dish_)] = false;
      return true;
    }
    if (still == left) break;
    left = still;
  }
  takeBack(plan);
  return false;
}

void DishPlacer::takeBack(const Schedule& plan) {
  for (const int step : order_)
    if (fixed_[static_cast<std::size_t>(step)]) occupancy_.remove(step, nth(plan.steps, step));
}

void DishPlacer::plantTree(int dish) {
  const Problem& problem = model_.problem();
  gaps_.clear();
  const auto inside = [&](int step) { return nth(problem.steps, step).dish == dish; };
  for (const int step : model_.distances(dish).steps)
    for (const int g : model_.gapsOf(step)) {
      const Gap& gap = nth(model_.gaps(), g);
      if (gap.from == step && inside(gap.to)) gaps_.push_back(gap);
    }
  for (const Cap& cap : caps_) {
    const int to = cap.span.to < 0 ? nth(problem.dishes, dish).lastStep : cap.span.to;
    const Edge edge = cap.span.to < 0 ? Edge::kEnd : cap.span.toEdge;
    gaps_.push_back({cap.span.from, cap.span.fromEdge, to, edge, -kNoLimit, cap.most});
  }
  const auto& steps = model_.distances(dish).steps;
  std::vector<int> roots{nth(problem.dishes, dish).lastStep};
  roots.insert(roots.end(), steps.begin(), steps.end());
  std::vector<bool> seen(problem.steps.size(), false);
  order_.clear();
  links_.clear();
  for (const int root : roots) {
    if (seen[static_cast<std::size_t>(root)] || !inside(root)) continue;
    seen[static_cast<std::size_t>(root)] = true;
    links_.push_back({root, -1, Edge::kEnd, Edge::kStart, true, 0, 0});
    order_.push_back(root);
    for (std::size_t k = order_.size() - 1; k < order_.size(); ++k)
      for (const Gap& gap : gaps_) hang(gap, order_[k], seen);
  }
  for (const Gap& gap : gaps_) tighten(gap);
}

// Hangs the gap's other step on `parent` when it hangs nowhere yet.
void DishPlacer::hang(const Gap& gap, int parent, std::vector<bool>& seen) {
  if (gap.from != parent && gap.to != parent) return;
  const bool childFirst = gap.to == parent;
  const int child = childFirst ? gap.from : gap.to;
  if (seen[static_cast<std::size_t>(child)]) return;
  seen[static_cast<std::size_t>(child)] = true;
  links_.push_back({child, parent, childFirst ? gap.fromEdge : gap.toEdge,
                    childFirst ? gap.toEdge : gap.fromEdge, childFirst, gap.least, gap.most});
  order_.push_back(child);
}

// A second gap between the edges of a link narrows it.
void DishPlacer::tighten(const Gap& gap) {
  for (Link& link : links_) {
    const int from = link.childFirst ? link.child : link.parent;
    const int to = link.childFirst ? link.parent : link.child;
    const Edge fromEdge = link.childFirst ? link.childEdge : link.parentEdge;
    const Edge toEdge = link.childFirst ? link.parentEdge : link.childEdge;
    if (gap.from != from || gap.to != to || gap.fromEdge != fromEdge || gap.toEdge != toEdge) continue;
    link.least = std::max(link.least, gap.least);
    link.most = std::min(link.most, gap.most);
  }
}

// Solves by the tables; where that breaks a link between modes, once without the
// linking mode and once with the modes it asks for, and keeps what costs less.
bool DishPlacer::solve(Schedule& plan, const std::vector<std::int64_t>& cookPrice, int depth) {
  constexpr int kLinksDecided = 4;
  if (!fillTables(plan, cookPrice)) return false;
  int step = -1;
  const ModeLink* link = brokenLink(plan, step);
  if (link == nullptr || depth == kLinksDecided) return true;
  const auto before = banned_;
  banned_.emplace_back(step, nth(plan.steps, step).mode);
  const bool without = solve(plan, cookPrice, depth + 1);
  const std::vector<Placement> otherSteps = plan.steps;
  const std::int64_t otherCost = cost_;
  const auto otherBanned = banned_;
  banned_ = before;
  banOthers(link->step, link->modes);
  const bool with = solve(plan, cookPrice, depth + 1);
  if (without && (!with || otherCost < cost_)) {
    plan.steps = otherSteps;
    cost_ = otherCost;
    banned_ = otherBanned;
  }
  return with || without;
}

bool DishPlacer::fillTables(Schedule& plan, const std::vector<std::int64_t>& cookPrice) {
  for (const int step : order_) {
    limitWindows(step, plan, nth(tables_, step));
    nth(tables_, step).startExtra.clear();
    nth(tables_, step).endExtra.clear();
  }
  for (int k = sizeOf(order_) - 1; k >= 0; --k) {
    const int step = nth(order_, k);
    if (nth(tables_, step).starts.empty() || nth(tables_, step).ends.empty()) return false;
    fillTable(step, plan, cookPrice);
    if (nth(links_, k).parent >= 0) sendUp(nth(links_, k));
  }
  cost_ = 0;
  for (int k = 0; k < sizeOf(order_); ++k) {
    if (nth(links_, k).parent >= 0) continue;
    const Table& table = nth(tables_, nth(order_, k));
    const auto least = std::min_element(table.startCost.begin(), table.startCost.end());
    if (*least >= kNever) return false;
    cost_ += *least;
    readBack(nth(order_, k), table.byStart[static_cast<std::size_t>(least - table.startCost.begin())], plan);
  }
  return true;
}

std::int64_t DishPlacer::servingCost(int step, Minute end) const {
  const Dish& dish = nth(model_.problem().dishes, dish_);
  if (dish.lastStep != step) return 0;
  return std::max(0, end - dish.serve) * kLateWeight + waitCost(dish, end) * kQualityWeight;
}

// What the starts and ends cost whatever the choice: serving, and moves from what was announced.
void DishPlacer::addOwnCosts(int step) {
  Table& table = nth(tables_, step);
  if (nth(model_.problem().dishes, dish_).lastStep == step)
    for (std::size_t j = 0; j < table.ends.size(); ++j)
      table.endExtra[j] = std::min(kNever, table.endExtra[j] + servingCost(step, table.ends[j]));
  const Step& data = nth(model_.problem().steps, step);
  if (!data.announced) return;
  for (std::size_t k = 0; k < table.starts.size(); ++k) {
    const Placement moved{table.starts[k], 0, data.announced->mode, data.announced->cook};
    table.startExtra[k] = std::min(kNever, table.startExtra[k] + moveCost(data, moved) * kMovesWeight);
  }
}

void DishPlacer::fillTable(int step, const Schedule& plan, const std::vector<std::int64_t>& cookPrice) {
  Table& table = nth(tables_, step);
  table.startExtra.resize(table.starts.size(), 0);
  table.endExtra.resize(table.ends.size(), 0);
  table.startCost.assign(table.starts.size(), kNever);
  table.endCost.assign(table.ends.size(), kNever);
  table.byStart.assign(table.starts.size(), {});
  table.byEnd.assign(table.ends.size(), {});
  addOwnCosts(step);
  if (placed(step, plan)) {
    table.startCost[0] = table.endCost[0] = std::min(kNever, table.startExtra[0] + table.endExtra[0]);
    table.byStart[0] = table.byEnd[0] = {-1, -1, 0, 0};
  } else {
    const auto& choices = model_.step(step).choices;
    for (int c = 0; c < sizeOf(choices); ++c) {
      const Choice& choice = nth(choices, c);
      if (!mayUse(step, choice.mode, plan)) continue;
      const Mode& mode = nth(nth(model_.problem().steps, step).modes, choice.mode);
      if (choice.cooks.empty()) tryChoice(step, c, -1, 0, 0);
      for (const CookOption& option : choice.cooks)
        tryChoice(step, c, option.cook, option.cost,
                  nth(cookPrice, option.cook) * kPriceWeight * mode.attention / 100);
    }
  }
  table.startExtra.clear();
  table.endExtra.clear();
}

// What calm and empty heating cost at each start and end; only an estimate, since others pay too.
void DishPlacer::setSoftCosts(const Mode& mode, int cook, const Table& table) {
  soft_ = false;
  startSoft_.assign(table.starts.size(), 0);
  endSoft_.assign(table.ends.size(), 0);
  const auto add = [&](const std::vector<int>& costs, const std::vector<Minute>& minutes, std::int64_t weight,
                       std::vector<std::int64_t>& soft) {
    if (costs.empty()) return;
    soft_ = true;
    for (std::size_t k = 0; k < minutes.size(); ++k) soft[k] += nth(costs, minutes[k]) * weight;
  };
  if (cook >= 0 && mode.attention >= kTaskAttention) {
    add(occupancy_.calmBefore(cook), table.starts, kCalmWeight, startSoft_);
    add(occupancy_.calmAfter(cook), table.ends, kCalmWeight, endSoft_);
  }
  if (mode.oven) {
    const int oven = mode.oven->oven;
    if (mode.oven->preheated)
      add(occupancy_.heatBefore(oven, mode.oven->phases.front().setpoint), table.starts, kOvensWeight,
          startSoft_);
    add(occupancy_.heatAfter(oven), table.ends, kOvensWeight, endSoft_);
  }
}

void DishPlacer::tryChoice(int step, int choice, int cook, std::int64_t optionCost, std::int64_t workPrice) {
  Table& table = nth(tables_, step);
  const Step& data = nth(model_.problem().steps, step);
  const int modeIndex = nth(model_.step(step).choices, choice).mode;
  const Mode& mode = nth(data.modes, modeIndex);
  const StartRow* rows = &nth(model_.rows(step, choice), table.firstStart);
  occupancy_.roomsUntil(step, modeIndex, cook, table.starts, room_);
  std::int64_t always = mode.qualityCost * kQualityWeight + optionCost * kPeopleWeight;
  if (data.announced) {
    const int asCook = mode.attention > 0 ? cook : data.pin.cook.value_or(-1);
    always += moveCost(data, {data.announced->start, 0, modeIndex, asCook}) * kMovesWeight;
  }
  const std::int64_t shortPrice = mode.shortMinuteCost * kQualityWeight;
  const std::int64_t longPrice = mode.longMinuteCost * kQualityWeight;
  setSoftCosts(mode, cook, table);
  for (int k = 0; k < sizeOf(table.starts); ++k) {
    if (nth(table.startExtra, k) >= kNever) continue;
    const Minute start = nth(table.starts, k);
    const Minute room = std::max(
        start, caps_.empty() ? nth(room_, k) : std::min(nth(room_, k), lastEnd(step, modeIndex, start)));
    const StartRow& row = rows[k];
    const int last = std::min(row.lastEnd - table.firstEnd, sizeOf(table.ends) - 1);
    for (int j = std::max(0, row.firstEnd - table.firstEnd); j <= last; ++j) {
      const Minute end = nth(table.ends, j);
      if (end > room) break;
      // Leaving a hot oven to the next bake costs less than nothing: it must not make up for a child
      // that has no place.
      if (nth(table.endExtra, j) >= kNever) continue;
      const Minute over = end - row.best;
      std::int64_t cost = always + nth(table.startExtra, k) + nth(table.endExtra, j) +
                          (over < 0 ? -over * shortPrice : over * longPrice) + workPrice * (end - start);
      if (soft_) cost += nth(startSoft_, k) + nth(endSoft_, j);
      if (cook >= 0 && mode.attention > 0) cost += model_.unsocialCost(cook, start, end) * kPeopleWeight;
      if (cost < nth(table.startCost, k)) {
        nth(table.startCost, k) = cost;
        nth(table.byStart, k) = {choice, cook, k, j};
      }
      if (cost < nth(table.endCost, j)) {
        nth(table.endCost, j) = cost;
        nth(table.byEnd, j) = {choice, cook, k, j};
      }
    }
  }
}

void DishPlacer::sendUp(const Link& link) {
  const Table& child = nth(tables_, link.child);
  Table& parent = nth(tables_, link.parent);
  const bool atStart = link.parentEdge == Edge::kStart;
  const auto& values = atStart ? parent.starts : parent.ends;
  auto& extra = atStart ? parent.startExtra : parent.endExtra;
  extra.resize(values.size(), 0);
  SlidingLeast least(link.childEdge == Edge::kStart ? child.starts : child.ends,
                     link.childEdge == Edge::kStart ? child.startCost : child.endCost);
  auto& index = nth(messages_, link.child).childIndex;
  index.assign(values.size(), -1);
  for (std::size_t k = 0; k < values.size(); ++k) {
    const Minute low = link.childFirst ? values[k] - link.most : values[k] + link.least;
    const Minute high = link.childFirst ? values[k] - link.least : values[k] + link.most;
    index[k] = least.in(low, high);
    const std::int64_t cost =
        index[k] < 0 ? kNever
                     : nth(link.childEdge == Edge::kStart ? child.startCost : child.endCost, index[k]);
    extra[k] = std::min(kNever, extra[k] + cost);
  }
}

void DishPlacer::readBack(int step, const Decision& decision, Schedule& plan) const {
  const Table& table = nth(tables_, step);
  if (!fixed_[static_cast<std::size_t>(step)]) {
    const Step& data = nth(model_.problem().steps, step);
    const int mode = nth(model_.step(step).choices, decision.choice).mode;
    const int cook = nth(data.modes, mode).attention > 0 ? decision.cook : data.pin.cook.value_or(-1);
    nth(plan.steps, step) = {nth(table.starts, decision.start), nth(table.ends, decision.end), mode, cook};
  }
  for (const Link& link : links_) {
    if (link.parent != step) continue;
    const int index = nth(nth(messages_, link.child).childIndex,
                          link.parentEdge == Edge::kStart ? decision.start : decision.end);
    const Table& child = nth(tables_, link.child);
    readBack(link.child, link.childEdge == Edge::kStart ? nth(child.byStart, index) : nth(child.byEnd, index),
             plan);
  }
}

// Settles steps from the root outward until one does not go with those before it; true when all do.
bool DishPlacer::fixSteps(Schedule& plan) {
  for (const int step : order_) {
    if (placed(step, plan)) continue;
    const Placement& place = nth(plan.steps, step);
    if (!keepsGaps(step, plan) || !mayUse(step, place.mode, plan) || !occupancy_.fitsOnce(step, place))
      return false;
    occupancy_.add(step, place);
    fixed_[static_cast<std::size_t>(step)] = true;
  }
  return true;
}

}  // namespace suppertide::planning
