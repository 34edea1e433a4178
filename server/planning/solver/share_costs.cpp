#include "server/planning/solver/share_costs.h"

#include <algorithm>
#include <functional>

#include "server/planning/model/costs/people.h"

namespace suppertide::planning {
namespace {

// Groups of cooks are looked at among this many; the whole kitchen always is.
constexpr int kCooksInSubsets = 6;
constexpr int kCapacityClauses = 3000;
constexpr int kRestClauses = 200;

// Which sums some of the parts can have, from 0 to all of them.
std::vector<bool> sumsOf(const std::vector<WorkPart>& parts) {
  std::vector<bool> sums{true};
  for (const WorkPart& part : parts) {
    const std::size_t before = sums.size();
    sums.resize(before + static_cast<std::size_t>(part.most), false);
    for (std::size_t sum = before; sum-- > 0;)
      for (std::int64_t work = part.least; sums[sum] && work <= part.most; ++work)
        if (work > 0) sums[sum + static_cast<std::size_t>(work)] = true;
  }
  return sums;
}

}  // namespace

ShareCosts::ShareCosts(Encoder& encoder, const AskingCosts& asking, CostSum& sum)
    : encoder_(encoder), asking_(asking), sum_(sum) {
  const Problem& problem = encoder.model().problem();
  ladders_.resize(problem.cooks.size());
  for (const Cook& cook : problem.cooks) shares_ += cook.share;
  if (problem.shareBlockCost == 0 || problem.shareBlock <= 0 || shares_ == 0) return;
  const std::int64_t all = mostWork();
  for (const Cook& cook : problem.cooks) fair_.push_back(all * cook.share / shares_);
  for (int c = 0; c < sizeOf(problem.cooks); ++c) {
    reach_.push_back(sumsOf(workParts(encoder_, c)));
    makeCook(c);
  }
  addCapacities();
}

// What only certain cooks can do must fit into their work together. It follows
// from the sums, but a search would find it only by trying all ways to share.
void ShareCosts::addCapacities() {
  const GridModel& model = encoder_.model();
  std::map<std::vector<int>, std::int64_t> workOf;  // by the cooks who may do it
  for (int i = 0; i < sizeOf(model.problem().steps); ++i) {
    if (!model.used(i) || encoder_.servedStep(i) != kTrue) continue;
    std::vector<int> able;
    for (int c = 0; c < sizeOf(ladders_); ++c)
      if (encoder_.cook(i, c) != kFalse) able.push_back(c);
    if (const std::int64_t least = leastWork(i); least > 0) workOf[able] += least;
  }
  const int cooks = sizeOf(ladders_);
  for (int c = 0; c < cooks; ++c)
    if (asking_.costs(c)) addRest(c);
  for (int mask = 1; mask < (1 << std::min(cooks, kCooksInSubsets)); ++mask) {
    const bool whole = mask == (1 << std::min(cooks, kCooksInSubsets)) - 1;
    std::vector<int> group;
    for (int c = 0; c < cooks; ++c)
      if (c >= kCooksInSubsets ? whole : (mask >> c & 1) != 0) group.push_back(c);
    std::int64_t demand = 0;
    for (const auto& [able, work] : workOf)
      if (std::includes(group.begin(), group.end(), able.begin(), able.end())) demand += work;
    if (demand == 0) continue;
    addCapacity(group, demand, -1);
    for (const int c : group)
      if (asking_.costs(c)) addCapacity(group, demand, c);
  }
}

// The least work of a step whatever its mode; 0 when it may need nobody or go unserved.
std::int64_t ShareCosts::leastWork(int step) const {
  const GridModel& model = encoder_.model();
  if (!model.used(step) || encoder_.servedStep(step) != kTrue) return 0;
  std::int64_t least = kNoLimit;
  for (const Choice& choice : model.step(step).choices) {
    if (choice.cooks.empty()) return 0;
    const Mode& mode = nth(nth(model.problem().steps, step).modes, choice.mode);
    for (const Minute start : model.step(step).starts) {
      const EndRange range = model.endRange(step, choice.mode, start);
      if (!range.empty()) least = std::min(least, workMinutes(mode, start, range.first));
    }
  }
  return least == kNoLimit ? 0 : least;
}

// Sums what `helper` leaves to the others and holds it against their shares, so
// that too little work for the helper shows before all of it is given out.
void ShareCosts::addRest(int helper) {
  std::vector<Sums> leaves;
  std::int64_t always = 0;
  std::int64_t most = 0;
  for (int i = 0; i < sizeOf(encoder_.model().problem().steps); ++i) {
    const std::int64_t work = leastWork(i);
    if (work == 0) continue;
    most += work;
    const Lit does = encoder_.cook(i, helper);
    if (does == kFalse) always += work;
    if (does != kFalse && does != kTrue) leaves.push_back({{work, -does}});
  }
  // By what the others can take with so many blocks each: one of them has more.
  std::map<std::int64_t, std::vector<std::vector<Lit>>> beyond;
  std::vector<Lit> clause;
  int clauses = 0;
  const std::function<void(int, std::int64_t)> descend = [&](int c, std::int64_t others) {
    if (others >= most || clauses > kRestClauses) return;
    if (c == helper) return descend(c + 1, others);
    if (c == sizeOf(ladders_)) {
      ++clauses;
      if (others >= always) beyond[others + 1 - always].push_back(clause);
      return;
    }
    const std::int64_t all = sizeOf(nth(reach_, c)) - 1;
    for (std::int64_t blocks = 0;; ++blocks) {
      const Minute block = encoder_.model().problem().shareBlock;
      const std::int64_t work = reachable(c, nth(fair_, c) + blocks * block);
      const std::size_t size = clause.size();
      if (nth(ladders_, c) && work < all)
        clause.push_back(nth(ladders_, c)->atLeast((blocks + 1) * encoder_.model().problem().shareBlockCost));
      descend(c + 1, others + work);
      clause.resize(size);
      if (work == all || others + work >= most) break;
    }
  };
  descend(0, 0);
  std::vector<std::int64_t> wanted;
  for (const auto& [amount, more] : beyond) wanted.push_back(amount);
  for (const auto& [amount, lit] : sumUp(encoder_.sat(), std::move(leaves), wanted))
    for (std::vector<Lit>& more : beyond[amount]) {
      more.push_back(-lit);
      encoder_.sat().add(more);
    }
}

// Adds, for blocks above the fair share of each cook that together leave work
// undone: one of them has more, or `helper` (if not -1) is asked for the rest.
void ShareCosts::addCapacity(const std::vector<int>& cooks, std::int64_t demand, int helper) {
  const Minute block = encoder_.model().problem().shareBlock;
  const int blockCost = encoder_.model().problem().shareBlockCost;
  int clauses = 0;
  std::vector<Lit> clause;
  const std::function<void(std::size_t, std::int64_t)> descend = [&](std::size_t k, std::int64_t left) {
    if (left <= 0 || clauses > kCapacityClauses) return;
    if (k < cooks.size() && cooks[k] == helper) return descend(k + 1, left);
    if (k == cooks.size()) {
      ++clauses;
      const Lit asked = helper >= 0 ? asking_.atLeast(helper, left) : kFalse;
      if (helper >= 0 && asked == kFalse) return;
      clause.push_back(asked);
      encoder_.sat().add(clause);
      clause.pop_back();
      return;
    }
    const int c = cooks[k];
    const std::int64_t most = sizeOf(nth(reach_, c)) - 1;
    for (std::int64_t blocks = 0;; ++blocks) {
      const std::int64_t work = reachable(c, nth(fair_, c) + blocks * block);
      if (work >= left) break;
      const std::size_t size = clause.size();
      if (nth(ladders_, c) && work < most)
        clause.push_back(nth(ladders_, c)->atLeast((blocks + 1) * blockCost));
      descend(k + 1, left - work);
      clause.resize(size);
      if (work == most) break;
    }
  };
  descend(0, demand);
}

// The largest amount of work up to `most` that the cook's steps can add up to.
std::int64_t ShareCosts::reachable(int cook, std::int64_t most) const {
  const auto& reach = nth(reach_, cook);
  std::int64_t work = std::min<std::int64_t>(most, sizeOf(reach) - 1);
  while (work > 0 && !reach[static_cast<std::size_t>(work)]) --work;
  return work;
}

std::int64_t ShareCosts::mostWork() const {
  const GridModel& model = encoder_.model();
  std::int64_t all = 0;
  for (int i = 0; i < sizeOf(model.problem().steps); ++i) {
    if (!model.used(i)) continue;
    std::int64_t most = 0;
    for (const Choice& choice : model.step(i).choices)
      for (const Minute start : model.step(i).starts)
        if (!choice.cooks.empty())
          most = std::max(most, workMinutes(nth(nth(model.problem().steps, i).modes, choice.mode), start,
                                            std::max(start, model.endRange(i, choice.mode, start).last)));
    all += most;
  }
  return all;
}

void ShareCosts::makeCook(int cook) {
  const Problem& problem = encoder_.model().problem();
  const std::int64_t fair = nth(fair_, cook);
  const auto parts = workParts(encoder_, cook);
  std::int64_t most = 0;
  std::vector<Sums> leaves;
  for (const WorkPart& part : parts) {
    most += part.most;
    if (part.least > 0) leaves.push_back({{part.least, part.does}});
  }
  // Where others do less than their most, the fair share is lower and the cook further above it.
  const std::int64_t blocks = (most + problem.shareBlock - 1) / problem.shareBlock;
  std::vector<std::int64_t> levels;
  for (std::int64_t k = 0; k <= blocks; ++k) levels.push_back(k * problem.shareBlockCost);
  if (blocks == 0) return;
  nth(ladders_, cook).emplace(encoder_.sat(), levels, sum_, true);
  std::vector<std::int64_t> wanted;
  for (std::int64_t k = 0; k < blocks; ++k) wanted.push_back(fair + k * problem.shareBlock + 1);
  for (const auto& [work, lit] : sumUp(encoder_.sat(), std::move(leaves), wanted)) {
    const std::int64_t started = (work - fair - 1) / problem.shareBlock + 1;
    encoder_.sat().add({-lit, nth(ladders_, cook)->atLeast(started * problem.shareBlockCost)});
  }
}

// Adds: with as much work for `cook` as in `plan`, and no more for all others, it costs `cost`.
void ShareCosts::forbid(int cook, std::int64_t cost, const Schedule& plan) {
  const Problem& problem = encoder_.model().problem();
  std::vector<Lit> clause{nth(ladders_, cook)->atLeast(cost)};
  for (int i = 0; i < sizeOf(problem.steps); ++i) {
    if (!encoder_.model().used(i)) continue;
    if (plan.unserved[static_cast<std::size_t>(nth(problem.steps, i).dish)]) {
      clause.push_back(encoder_.servedStep(i));
      continue;
    }
    const bool own = nth(plan.steps, i).cook == cook;
    if (own) {
      clause.push_back(-encoder_.servedStep(i));
      clause.push_back(-encoder_.cook(i, cook));
    }
    excuseWork(clause, i, nth(plan.steps, i), own);
  }
  encoder_.sat().add(clause);
}

// Adds what gives the step less work than `place` (`atLeast`), or more (otherwise).
void ShareCosts::excuseWork(std::vector<Lit>& clause, int step, const Placement& place, bool atLeast) {
  const Step& data = nth(encoder_.model().problem().steps, step);
  const std::int64_t work = workMinutes(nth(data.modes, place.mode), place.start, place.end);
  for (const Choice& choice : encoder_.model().step(step).choices) {
    std::int64_t least = kNoLimit;
    std::int64_t most = 0;
    const Mode& mode = nth(data.modes, choice.mode);
    for (const Length& length : mode.length.rows) {
      if (!length.possible()) continue;
      least = std::min(least, workMinutes(mode, 0, length.shortest));
      most = std::max(most, workMinutes(mode, 0, length.longest));
    }
    if (atLeast ? least >= work : most <= work) continue;
    if (choice.mode != place.mode) {
      clause.push_back(encoder_.mode(step, choice.mode));
      continue;
    }
    const Point start = encoder_.start(step);
    const Point end = encoder_.end(step);
    clause.push_back(atLeast ? -start.atMost(place.start) : -start.atLeast(place.start));
    clause.push_back(atLeast ? -end.atLeast(place.end) : -end.atMost(place.end));
  }
}

int ShareCosts::refine(const Schedule& plan) {
  const auto real = costOf(encoder_.model().problem(), plan).overShareByCook;
  int added = 0;
  for (int c = 0; c < sizeOf(ladders_); ++c) {
    if (!nth(ladders_, c) || nth(ladders_, c)->value(encoder_.sat()) >= nth(real, c)) continue;
    forbid(c, nth(real, c), plan);
    ++added;
  }
  return added;
}

}  // namespace suppertide::planning
