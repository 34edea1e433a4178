#include "server/planning/solver/construct.h"

#include <algorithm>
#include <numeric>

#include "server/planning/solver/draft.h"

namespace suppertide::planning {
namespace {

// Changes of cooks tried after each change of dishes; they cost far less.
constexpr int kCookMoves = 30;
// Orders of its steps tried for a dish with many rings, at first and when it is put back.
constexpr int kFirstTries = 100;
constexpr int kLaterTries = 2;
// Stays in an oven that are so far apart still hinder each other: it has to heat up between them.
constexpr Minute kNear = 60;
// Rounds without a better plan before a search that only looks at lateness goes back to the best.
constexpr int kMostIdle = 100;

// Long dishes with little room first: they find least places.
std::vector<int> firstOrder(const GridModel& model) {
  const Problem& problem = model.problem();
  std::vector<std::int64_t> rank(problem.dishes.size(), 0);
  for (int d = 0; d < sizeOf(problem.dishes); ++d)
    for (const int i : model.distances(d).steps)
      if (model.used(i))
        nth(rank, d) += 1000 + 100'000 / (1 + sizeOf(model.step(i).starts) * sizeOf(model.step(i).choices));
  std::vector<int> order(problem.dishes.size());
  std::iota(order.begin(), order.end(), 0);
  std::stable_sort(order.begin(), order.end(), [&](int a, int b) { return nth(rank, a) > nth(rank, b); });
  return order;
}

// Whether to go on from a plan that is no better, while the best is late: others as late may lead further.
bool isAsTimely(const TierCosts& now, const TierCosts& best) {
  return costIn(best, Tier::kUnserved) == 0 && costIn(best, Tier::kLateness) > 0 &&
         costIn(now, Tier::kUnserved) == 0 && costIn(now, Tier::kLateness) <= costIn(best, Tier::kLateness);
}

int pick(const std::vector<int>& dishes, std::mt19937& random) {
  return dishes[random() % dishes.size()];
}

std::vector<int> lateDishes(const Draft& draft) {
  const Problem& problem = draft.model().problem();
  std::vector<int> late;
  for (int d = 0; d < sizeOf(problem.dishes); ++d) {
    const Dish& dish = nth(problem.dishes, d);
    if (draft.served(d) && nth(draft.plan().steps, dish.lastStep).end > dish.serve) late.push_back(d);
  }
  return late;
}

// When the dish is in which oven.
std::vector<std::pair<int, Interval<Minute>>> staysOf(const Draft& draft, int dish) {
  std::vector<std::pair<int, Interval<Minute>>> stays;
  for (const int i : draft.model().distances(dish).steps) {
    const Placement& place = nth(draft.plan().steps, i);
    const auto& oven = nth(nth(draft.model().problem().steps, i).modes, place.mode).oven;
    if (oven) stays.push_back({oven->oven, {place.start, place.end}});
  }
  return stays;
}

// Served dishes that are in an oven of this one's shortly before or after it, or with it.
std::vector<int> neighboursOf(const Draft& draft, int dish) {
  const auto own = staysOf(draft, dish);
  std::vector<int> neighbours;
  for (int d = 0; d < sizeOf(draft.model().problem().dishes); ++d) {
    if (d == dish || !draft.served(d)) continue;
    const auto others = staysOf(draft, d);
    const bool near = std::any_of(own.begin(), own.end(), [&](const auto& a) {
      return std::any_of(others.begin(), others.end(), [&](const auto& b) {
        return a.first == b.first && b.second.start < a.second.limit + kNear &&
               a.second.start < b.second.limit + kNear;
      });
    });
    if (near) neighbours.push_back(d);
  }
  return neighbours;
}

// Up to three dishes: any, or one that is late and others in its oven about then.
std::vector<int> dishesToMove(const Draft& draft, std::mt19937& random) {
  const int dishes = sizeOf(draft.model().problem().dishes);
  const int count = 1 + static_cast<int>(random() % 3);
  std::vector<int> all(static_cast<std::size_t>(dishes));
  std::iota(all.begin(), all.end(), 0);
  std::vector<int> chosen;
  std::vector<int> from;
  if (const auto late = lateDishes(draft); !late.empty() && random() % 2 == 0) {
    chosen.push_back(pick(late, random));
    from = neighboursOf(draft, chosen.front());
  }
  while (sizeOf(chosen) < count) chosen.push_back(pick(from.empty() ? all : from, random));
  return chosen;
}

// Takes out up to three dishes and puts them and the unserved ones back in any order.
void replaceDishes(Draft& draft, std::mt19937& random) {
  const GridModel& model = draft.model();
  const int dishes = sizeOf(model.problem().dishes);
  std::vector<int> out;
  for (int d = 0; d < dishes; ++d)
    if (!draft.served(d) && !model.dropped(d)) out.push_back(d);
  for (const int d : dishesToMove(draft, random)) {
    if (!draft.served(d)) continue;
    draft.take(d);
    out.push_back(d);
  }
  std::shuffle(out.begin(), out.end(), random);
  for (const int d : out) draft.put(d, random, kLaterTries);
}

}  // namespace

Schedule firstPlan(const GridModel& model, int orders, std::mt19937& random,
                   const std::function<void(const Schedule&)>& better, const std::function<bool()>& stop) {
  const Problem& problem = model.problem();
  std::vector<int> order = firstOrder(model);
  Schedule best = Draft(model).plan();
  TierCosts bestCost = costOf(problem, best).total;
  for (int attempt = 0; attempt < orders && !(attempt > 0 && stop()); ++attempt) {
    Draft draft(model);
    std::vector<int> failed;
    std::vector<int> placed;
    for (const int dish : order)
      if (!model.dropped(dish)) (draft.put(dish, random, kFirstTries) ? placed : failed).push_back(dish);
    const TierCosts cost = costOf(problem, draft.plan()).total;
    if (cost < bestCost) {
      best = draft.plan();
      bestCost = cost;
      better(best);
    }
    if (failed.empty()) break;
    // What found no room goes first next time; now and then the rest is mixed as well.
    if (attempt % 3 == 2) std::shuffle(placed.begin(), placed.end(), random);
    order = failed;
    order.insert(order.end(), placed.begin(), placed.end());
  }
  return best;
}

Schedule improvePlan(const GridModel& model, const Schedule& start, const ImproveOptions& options,
                     std::mt19937& random, const std::function<void(const Schedule&)>& better,
                     const std::function<bool()>& stop) {
  const Problem& problem = model.problem();
  Draft draft(model);
  draft.load(start);
  TierCosts cost = costOf(problem, start).total;
  TierCosts bestCost = cost;
  Schedule best = start;
  int idle = 0;  // rounds since the best was found, or gone back to
  const auto keep = [&](const TierCosts& now) {
    cost = now;
    if (now >= bestCost) return;
    idle = 0;
    best = draft.plan();
    bestCost = now;
    better(best);
  };
  for (int round = 0; round < options.rounds && !stop(); ++round) {
    if (++idle > kMostIdle && cost != bestCost) {
      draft.load(best);
      cost = bestCost;
      idle = 0;
    }
    const Schedule before = draft.plan();
    replaceDishes(draft, random);
    const TierCosts now = costOf(problem, draft.plan()).total;
    if (now <= cost || (options.wander && isAsTimely(now, bestCost)))
      keep(now);
    else
      draft.load(before);
    for (int move = 0; move < kCookMoves; ++move) {
      if (!draft.moveCooks(random)) continue;
      const TierCosts moved = costOf(problem, draft.plan()).total;
      if (moved <= cost)
        keep(moved);
      else
        draft.undoCooks();
    }
  }
  return best;
}

}  // namespace suppertide::planning
