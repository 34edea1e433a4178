#include "server/planning/solver/encoder.h"

#include <algorithm>

namespace suppertide::planning {
namespace {

void addAtMostOne(Sat& sat, const std::vector<Lit>& lits) {
  for (std::size_t a = 0; a < lits.size(); ++a)
    for (std::size_t b = a + 1; b < lits.size(); ++b) sat.add({-lits[a], -lits[b]});
}

std::vector<Lit> with(std::vector<Lit> clause, std::initializer_list<Lit> more) {
  clause.insert(clause.end(), more);
  return clause;
}

}  // namespace

std::vector<Interval<Minute>> takenAbove(const Resource& resource, int amount) {
  std::map<Minute, int> changes;
  for (const Resource::Taken& taken : resource.taken) {
    if (taken.when.empty()) continue;
    changes[taken.when.start] += taken.amount;
    changes[taken.when.limit] -= taken.amount;
  }
  std::vector<Interval<Minute>> spans;
  int level = 0;
  bool inside = false;
  for (const auto& [minute, change] : changes) {
    level += change;
    if (level > amount && !inside) spans.push_back({minute, minute});
    if (level <= amount && inside) spans.back().limit = minute;
    inside = level > amount;
  }
  return spans;
}

Encoder::Encoder(const GridModel& model, Sat& sat, const Schedule& plan, bool allServed)
    : model_(model), sat_(sat) {
  const Problem& problem = model.problem();
  for (int d = 0; d < sizeOf(problem.dishes); ++d) {
    possible_.push_back(!plan.unserved[static_cast<std::size_t>(d)]);
    served_.push_back(model.dropped(d) ? kFalse : allServed ? kTrue : sat_.newLit());
  }
  const auto count = problem.steps.size();
  modes_.resize(count);
  cooks_.resize(count);
  starts_.resize(count);
  ends_.resize(count);
  for (int i = 0; i < sizeOf(problem.steps); ++i)
    if (model_.used(i)) makeStep(i);
  for (int i = 0; i < sizeOf(problem.steps); ++i) {
    if (!model_.used(i)) continue;
    makeLinks(i);
    makeAbsences(i);
  }
  makeGaps();
  makeServing();
}

const OrderVar* Encoder::makeVar(std::vector<Minute> values) {
  return &vars_.emplace_back(sat_, std::move(values));
}

// What excuses the step's own rules: nothing, unless its dish may prove impossible.
std::vector<Lit> Encoder::otherwise(int step) const {
  const int dish = nth(model_.problem().steps, step).dish;
  if (nth(possible_, dish)) return {};
  return {-served(dish)};
}

void Encoder::makeStep(int step) {
  const GridStep& grid = model_.step(step);
  const OrderVar* start = makeVar(grid.starts);
  nth(starts_, step) = {start, 0};
  nth(ends_, step) = grid.fixedLength >= 0 ? Point{start, grid.fixedLength} : Point{makeVar(grid.ends), 0};
  makeModes(step);
  makeCooks(step);
  makeLengths(step);
}

void Encoder::makeModes(int step) {
  const auto& choices = model_.step(step).choices;
  auto& lits = nth(modes_, step);
  lits.assign(nth(model_.problem().steps, step).modes.size(), kFalse);
  if (choices.size() == 1) {
    nth(lits, choices.front().mode) = kTrue;
    return;
  }
  std::vector<Lit> all;
  for (const Choice& choice : choices) {
    const Lit lit = choices.size() == 2 && !all.empty() ? -all.front() : sat_.newLit();
    all.push_back(nth(lits, choice.mode) = lit);
  }
  if (choices.size() == 2) return;
  sat_.add(all);
  addAtMostOne(sat_, all);
}

void Encoder::makeCooks(int step) {
  const auto& choices = model_.step(step).choices;
  auto& lits = nth(cooks_, step);
  lits.assign(model_.problem().cooks.size(), kFalse);
  bool always = true;
  std::vector<int> able;
  for (const Choice& choice : choices) {
    always &= !choice.cooks.empty();
    for (const CookOption& option : choice.cooks)
      if (std::find(able.begin(), able.end(), option.cook) == able.end()) able.push_back(option.cook);
  }
  if (able.size() == 1 && always) {
    nth(lits, able.front()) = kTrue;
    return;
  }
  std::vector<Lit> all;
  for (const int c : able) all.push_back(nth(lits, c) = sat_.newLit());
  addAtMostOne(sat_, all);
  for (const Choice& choice : choices) {
    std::vector<Lit> one{-mode(step, choice.mode)};
    std::vector<bool> allowed(lits.size(), false);
    for (const CookOption& option : choice.cooks) {
      one.push_back(cook(step, option.cook));
      nth(allowed, option.cook) = true;
    }
    if (!choice.cooks.empty()) sat_.add(one);
    for (const int c : able)
      if (!nth(allowed, c)) sat_.add({-mode(step, choice.mode), -cook(step, c)});
  }
}

void Encoder::makeLengths(int step) {
  for (const Choice& choice : model_.step(step).choices) makeLengths(step, choice);
  if (model_.step(step).fixedLength >= 0) return;
  const auto& distances = model_.distances(nth(model_.problem().steps, step).dish);
  const int p = 2 * model_.positionInDish(step);
  addOrder(sat_, otherwise(step), start(step), distances.of(p, p + 1), end(step));
  if (distances.of(p + 1, p) != Distances::kNone)
    addOrder(sat_, otherwise(step), end(step), distances.of(p + 1, p), start(step));
}

void Encoder::makeLengths(int step, const Choice& choice) {
  const auto& starts = model_.step(step).starts;
  const Point from = start(step);
  const Point to = end(step);
  const auto base = with(otherwise(step), {-mode(step, choice.mode)});
  std::vector<EndRange> ranges;
  for (const Minute v : starts) ranges.push_back(model_.endRange(step, choice.mode, v));
  for (auto& range : ranges)
    if (range.first > to.most() || range.last < to.least()) range = {};
  for (std::size_t k = 0; k < starts.size(); ++k) {  // runs of starts that this choice cannot take
    if (!ranges[k].empty()) continue;
    std::size_t last = k;
    while (last + 1 < starts.size() && ranges[last + 1].empty()) ++last;
    sat_.add(with(base, {from.atMost(starts[k] - 1), from.atLeast(starts[last] + 1)}));
    k = last;
  }
  if (model_.step(step).fixedLength >= 0) return;
  Minute least = kNoLimit;
  for (std::size_t k = starts.size(); k-- > 0;) {
    if (ranges[k].empty()) continue;
    least = std::min(least, ranges[k].first);
    sat_.add(with(base, {-from.atLeast(starts[k]), to.atLeast(least)}));
    if (ranges[k].first > least)
      sat_.add(with(base, {-from.atLeast(starts[k]), -from.atMost(starts[k]), to.atLeast(ranges[k].first)}));
  }
  Minute most = -kNoLimit;
  for (std::size_t k = 0; k < starts.size(); ++k) {
    if (ranges[k].empty()) continue;
    most = std::max(most, ranges[k].last);
    sat_.add(with(base, {-from.atMost(starts[k]), to.atMost(most)}));
    if (ranges[k].last < most)
      sat_.add(with(base, {-from.atLeast(starts[k]), -from.atMost(starts[k]), to.atMost(ranges[k].last)}));
  }
}

void Encoder::makeGaps() {
  for (const Gap& gap : model_.gaps()) {
    if (!model_.used(gap.from) || !model_.used(gap.to)) continue;
    std::vector<Lit> excuse = otherwise(gap.from);
    if (nth(model_.problem().steps, gap.from).dish != nth(model_.problem().steps, gap.to).dish)
      excuse = {-servedStep(gap.from), -servedStep(gap.to)};
    const Point from = edge(gap.from, gap.fromEdge);
    const Point to = edge(gap.to, gap.toEdge);
    if (gap.least > -kNoLimit) addOrder(sat_, excuse, from, gap.least, to);
    if (gap.most < kNoLimit) addOrder(sat_, excuse, to, -gap.most, from);
  }
}

// A dish's window is in the windows already where its last step is its own.
void Encoder::makeServing() {
  const Problem& problem = model_.problem();
  for (int d = 0; d < sizeOf(problem.dishes); ++d) {
    const Dish& dish = nth(problem.dishes, d);
    if (model_.dropped(d) || nth(problem.steps, dish.lastStep).dish == d) continue;
    const Point ready = end(dish.lastStep);
    sat_.add({-served(d), servedStep(dish.lastStep)});
    sat_.add({-served(d), ready.atLeast(dish.serve - dish.holdLimit)});
    sat_.add({-served(d), ready.atMost(dish.serve + dish.lateLimit)});
  }
}

void Encoder::makeLinks(int step) {
  for (const Choice& choice : model_.step(step).choices)
    for (const ModeLink& link : nth(nth(model_.problem().steps, step).modes, choice.mode).links) {
      if (!model_.used(link.step)) continue;
      std::vector<Lit> clause{-mode(step, choice.mode), -servedStep(step), -servedStep(link.step)};
      for (const int m : link.modes) clause.push_back(mode(link.step, m));
      sat_.add(clause);
    }
}

// Adds: unless excused, the step lies outside `when`.
void Encoder::avoid(int step, std::vector<Lit> excuse, const Interval<Minute>& when) {
  if (start(step).least() >= when.limit || end(step).most() <= when.start) return;
  excuse.insert(excuse.end(),
                {end(step).atMost(when.start), start(step).atLeast(when.limit), emptyStep(step)});
  sat_.add(excuse);
}

void Encoder::makeAbsences(int step) {
  const Problem& problem = model_.problem();
  const Lit free = -servedStep(step);
  for (int c = 0; c < sizeOf(problem.cooks); ++c) {
    if (cook(step, c) == kFalse) continue;
    Minute from = 0;
    for (const auto& when : nth(problem.cooks, c).available) {
      if (from < when.start) avoid(step, {free, -cook(step, c)}, {from, when.start});
      from = std::max(from, when.limit);
    }
    if (from < problem.limit) avoid(step, {free, -cook(step, c)}, {from, problem.limit});
  }
  for (const Choice& choice : model_.step(step).choices) {
    const Mode& data = nth(nth(problem.steps, step).modes, choice.mode);
    for (const Use& use : data.uses) {
      const Resource& resource = nth(problem.resources, use.resource);
      if (use.amount == 0 || resource.usedUp) continue;
      for (const auto& when : takenAbove(resource, resource.capacity - use.amount))
        avoid(step, {free, -mode(step, choice.mode)}, when);
    }
    if (data.oven)
      for (const auto& when : nth(problem.ovens, data.oven->oven).closed)
        avoid(step, {free, -mode(step, choice.mode)}, when);
  }
}

Lit Encoder::emptyStep(int step) {
  const GridStep& grid = model_.step(step);
  if (grid.fixedLength > 0) return kFalse;
  return before(step, Edge::kEnd, 0, step, Edge::kStart);
}

Lit Encoder::before(int from, Edge fromEdge, Minute lag, int to, Edge toEdge) {
  // Edges of a step of fixed length are one point, so that their orders are shared.
  const Minute fromLength = model_.step(from).fixedLength;
  const Minute toLength = model_.step(to).fixedLength;
  const int least = model_.leastBetween(from, fromEdge, to, toEdge);
  const int back = model_.leastBetween(to, toEdge, from, fromEdge);
  if (least != Distances::kNone && least >= lag) return kTrue;
  if (back != Distances::kNone && back > -lag) return kFalse;
  if (fromEdge == Edge::kEnd && fromLength >= 0) lag += fromLength, fromEdge = Edge::kStart;
  if (toEdge == Edge::kEnd && toLength >= 0) lag -= toLength, toEdge = Edge::kStart;
  const Point a = edge(from, fromEdge);
  const Point b = edge(to, toEdge);
  if (a.most() + lag <= b.least()) return kTrue;
  if (a.least() + lag > b.most()) return kFalse;
  auto& lags = orders_[{2 * from + (fromEdge == Edge::kEnd), 2 * to + (toEdge == Edge::kEnd)}];
  const auto found = lags.find(lag);
  if (found != lags.end()) return found->second;
  const Lit lit = sat_.newLit();
  addOrder(sat_, {-lit}, a, lag, b);
  const auto here = lags.emplace(lag, lit).first;
  if (here != lags.begin()) sat_.add({-lit, std::prev(here)->second});
  if (std::next(here) != lags.end()) sat_.add({-std::next(here)->second, lit});
  return lit;
}

Schedule Encoder::read() const {
  const Problem& problem = model_.problem();
  Schedule plan;
  plan.steps.resize(problem.steps.size());
  for (int d = 0; d < sizeOf(problem.dishes); ++d)
    plan.unserved.push_back(served(d) == kFalse || (served(d) != kTrue && !sat_.value(served(d))));
  for (int i = 0; i < sizeOf(problem.steps); ++i) {
    if (!model_.used(i)) continue;
    Placement& place = nth(plan.steps, i);
    place.start = start(i).value(sat_);
    place.end = end(i).value(sat_);
    for (int m = 0; m < sizeOf(nth(modes_, i)); ++m)
      if (mode(i, m) != kFalse && sat_.value(mode(i, m))) place.mode = m;
    const Step& step = nth(problem.steps, i);
    if (nth(step.modes, place.mode).attention == 0) {
      place.cook = step.pin.cook.value_or(-1);
      continue;
    }
    for (int c = 0; c < sizeOf(nth(cooks_, i)); ++c)
      if (cook(i, c) != kFalse && sat_.value(cook(i, c))) place.cook = c;
  }
  return plan;
}

void Encoder::prefer(const Schedule& plan) {
  const auto preferAll = [&](const OrderVar& var, Minute value) {
    for (const Minute t : var.values()) sat_.prefer(t >= value ? var.atMost(t) : -var.atMost(t));
  };
  for (int i = 0; i < sizeOf(plan.steps); ++i) {
    const int dish = nth(model_.problem().steps, i).dish;
    if (!model_.used(i) || plan.unserved[static_cast<std::size_t>(dish)]) continue;
    const Placement& place = nth(plan.steps, i);
    preferAll(*start(i).var, place.start - start(i).shift);
    if (end(i).var != start(i).var) preferAll(*end(i).var, place.end - end(i).shift);
    for (int m = 0; m < sizeOf(nth(modes_, i)); ++m) sat_.prefer(m == place.mode ? mode(i, m) : -mode(i, m));
    for (int c = 0; c < sizeOf(nth(cooks_, i)); ++c) sat_.prefer(c == place.cook ? cook(i, c) : -cook(i, c));
  }
}

}  // namespace suppertide::planning
