#include "server/planning/explain/obstacles.h"

#include <algorithm>

namespace suppertide::planning {
namespace {

constexpr int kNothing = -1;
constexpr int kOutside = -2;

Interval<Minute> spanOf(const Placement& at) {
  return {at.start, at.end};
}

int amountOfResource(const Mode& mode, int resource) {
  int amount = 0;
  for (const Use& use : mode.uses)
    if (use.resource == resource) amount += use.amount;
  return amount;
}

}  // namespace

Obstacles::Obstacles(const Problem& problem, const Schedule& schedule)
    : problem_(problem),
      schedule_(schedule),
      stays_(staysByOven(problem, schedule)),
      kept_(problem.steps.size()),
      spans_(problem.steps.size()),
      gaps_(problem.steps.size()) {
  for (const KeptApart& kept : keptApart(problem, schedule))
    for (const int step : {kept.first, kept.second}) kept_[static_cast<std::size_t>(step)].push_back(kept);
  for (const TimedSpan& span : timedSpans(problem, schedule)) {
    spans_[static_cast<std::size_t>(span.from)].push_back(span);
    const int to = endOf(span);
    if (to != span.from) spans_[static_cast<std::size_t>(to)].push_back(span);
  }
  for (int g = 0; g < static_cast<int>(problem.gaps.size()); ++g) {
    const Gap& gap = nth(problem.gaps, g);
    if (!isServed(gap.from) || !isServed(gap.to)) continue;
    gaps_[static_cast<std::size_t>(gap.from)].push_back(g);
    if (gap.to != gap.from) gaps_[static_cast<std::size_t>(gap.to)].push_back(g);
  }
}

// Of one that lasts until the dish is served: its last step.
int Obstacles::endOf(const TimedSpan& span) const {
  return span.to < 0 ? nth(problem_.dishes, nth(problem_.steps, span.from).dish).lastStep : span.to;
}

bool Obstacles::isServed(int step) const {
  return !schedule_.unserved[static_cast<std::size_t>(nth(problem_.steps, step).dish)];
}

const Mode& Obstacles::mode(int step) const {
  return nth(nth(problem_.steps, step).modes, nth(schedule_.steps, step).mode);
}

std::vector<Reason> Obstacles::at(int step, const Placement& moved) const {
  std::vector<Reason> found;
  addBounds(step, moved, found);
  addServing(step, moved, found);
  addGaps(step, moved, found);
  addCook(step, moved, found);
  addResources(step, moved, found);
  addOven(step, moved, found);
  addSeparations(step, moved, found);
  addClocks(step, moved, found);
  return found;
}

void Obstacles::addSeparations(int step, const Placement& moved, std::vector<Reason>& found) const {
  for (const KeptApart& kept : nth(kept_, step)) {
    const int other = kept.first == step ? kept.second : kept.first;
    const Placement& there = nth(schedule_.steps, other);
    const Minute distance = kept.first == step ? there.start - moved.end : moved.start - there.end;
    if (distance < kept.least) found.push_back({Cause::kKeptApart, other, kept.separation, 0});
  }
}

// Whether moving the step makes a clock run over. Several spans at one step are taken one by one.
void Obstacles::addClocks(int step, const Placement& moved, std::vector<Reason>& found) const {
  for (const TimedSpan& span : nth(spans_, step)) {
    const int to = endOf(span);
    const auto edge = [&](int which, Edge side) {
      const Placement& at = which == step ? moved : nth(schedule_.steps, which);
      return side == Edge::kStart ? at.start : at.end;
    };
    Minute until = edge(to, span.to < 0 ? Edge::kEnd : span.toEdge);
    if (span.to < 0) until = std::max(until, nth(problem_.dishes, nth(problem_.steps, to).dish).serve);
    const Minute minutes = std::max(0, until - edge(span.from, span.fromEdge));
    if (minutes - span.now > std::max(0, span.left))
      found.push_back({Cause::kFoodSafety, span.from == step ? to : span.from, span.clock, 0});
  }
}

void Obstacles::addBounds(int step, const Placement& moved, std::vector<Reason>& found) const {
  const Step& what = nth(problem_.steps, step);
  const bool pinned =
      (what.pin.start && *what.pin.start != moved.start) || (what.pin.end && *what.pin.end != moved.end);
  const bool outside =
      moved.start < std::max(0, what.earliest) || moved.end > std::min(problem_.limit, what.latest);
  if (pinned || outside) found.push_back({Cause::kPinned, -1, -1, 0});
  const Length length = mode(step).length.at(moved.start);
  const Minute lasts = moved.end - moved.start;
  if (!length.possible() || lasts < length.shortest || lasts > length.longest)
    found.push_back({Cause::kReadiness, -1, -1, 0});
}

void Obstacles::addServing(int step, const Placement& moved, std::vector<Reason>& found) const {
  for (const Dish& dish : problem_.dishes) {
    if (dish.lastStep != step) continue;
    // A dish in time stays in time; a late one may use its late limit.
    const bool late = nth(schedule_.steps, step).end > dish.serve;
    const Minute latest = late ? dish.serve + dish.lateLimit : dish.serve;
    if (moved.end > latest || moved.end < dish.serve - dish.holdLimit)
      found.push_back({Cause::kServing, -1, -1, 0});
  }
}

void Obstacles::addGaps(int step, const Placement& moved, std::vector<Reason>& found) const {
  const auto edge = [&](int which, Edge side) {
    const Placement& at = which == step ? moved : nth(schedule_.steps, which);
    return side == Edge::kStart ? at.start : at.end;
  };
  for (const int g : nth(gaps_, step)) {
    const Gap& gap = nth(problem_.gaps, g);
    const Minute distance = edge(gap.to, gap.toEdge) - edge(gap.from, gap.fromEdge);
    const int other = gap.from == step ? gap.to : gap.from;
    if (distance < gap.least) found.push_back({Cause::kFollows, other, -1, 0});
    if (distance > gap.most) found.push_back({Cause::kMustFollow, other, -1, 0});
  }
}

template <typename AmountOf>
int Obstacles::overloadedBy(int step, Interval<Minute> when, int capacity,
                            const std::vector<Resource::Taken>& taken, AmountOf amountOf) const {
  const int own = amountOf(step);
  if (own == 0 || when.empty()) return kNothing;
  std::vector<int> others;
  std::vector<Minute> minutes = {when.start};  // the sum only grows where a use begins
  for (int i = 0; i < static_cast<int>(problem_.steps.size()); ++i) {
    const Interval<Minute> span = spanOf(nth(schedule_.steps, i));
    if (i == step || !isServed(i) || amountOf(i) == 0 || !span.overlaps(when)) continue;
    others.push_back(i);
    if (span.start > when.start) minutes.push_back(span.start);
  }
  for (const Resource::Taken& span : taken)
    if (span.when.start > when.start && when.contains(span.when.start)) minutes.push_back(span.when.start);
  for (const Minute minute : minutes) {
    int sum = own;
    int named = kOutside;
    for (const Resource::Taken& span : taken)
      if (span.when.contains(minute)) sum += span.amount;
    for (const int i : others) {
      if (!spanOf(nth(schedule_.steps, i)).contains(minute)) continue;
      sum += amountOf(i);
      // The one it did not stand beside before is the one it runs into.
      if (named < 0 || !spanOf(nth(schedule_.steps, i)).overlaps(spanOf(nth(schedule_.steps, step))))
        named = i;
    }
    if (sum > capacity) return named;
  }
  return kNothing;
}

void Obstacles::addCook(int step, const Placement& moved, std::vector<Reason>& found) const {
  if (moved.cook < 0 || mode(step).attention == 0) return;
  const Cook& cook = nth(problem_.cooks, moved.cook);
  Minute there = 0;  // spans are disjoint
  for (const Interval<Minute>& span : cook.available) {
    const auto inside = span.intersect(spanOf(moved));
    if (!inside.empty()) there += inside.limit - inside.start;
  }
  if (there < moved.end - moved.start) found.push_back({Cause::kCookAway, -1, moved.cook, 0});
  const int busy = overloadedBy(step, spanOf(moved), 100, {}, [&](int i) {
    return nth(schedule_.steps, i).cook == moved.cook ? mode(i).attention : 0;
  });
  if (busy != kNothing) found.push_back({Cause::kCookBusy, busy, moved.cook, 0});
}

void Obstacles::addResources(int step, const Placement& moved, std::vector<Reason>& found) const {
  for (const Use& use : mode(step).uses) {
    const Resource& resource = nth(problem_.resources, use.resource);
    if (resource.usedUp) continue;
    const int busy = overloadedBy(step, spanOf(moved), resource.capacity, resource.taken,
                                  [&](int i) { return amountOfResource(mode(i), use.resource); });
    if (busy == kNothing) continue;
    found.push_back({Cause::kThingBusy, std::max(busy, -1), use.resource, 0});
  }
}

void Obstacles::addOven(int step, const Placement& moved, std::vector<Reason>& found) const {
  const auto stay = stayOf(problem_, step, moved);
  if (!stay) return;
  const Oven& oven = nth(problem_.ovens, stay->oven);
  std::vector<const OvenStay*> together = {&*stay};
  int beside = -1;
  for (const OvenStay& other : nth(stays_, stay->oven)) {
    if (other.step == step) continue;
    if (setpointsClash(oven, *stay, other))
      found.push_back({Cause::kOvenSetpoint, other.step, stay->oven, 0});
    if (!other.when.overlaps(stay->when)) continue;
    together.push_back(&other);
    if (beside < 0 || !other.when.overlaps(spanOf(nth(schedule_.steps, step)))) beside = other.step;
  }
  const bool closed = std::any_of(oven.closed.begin(), oven.closed.end(),
                                  [&](const Interval<Minute>& span) { return span.overlaps(stay->when); });
  if (closed) found.push_back({Cause::kOvenFull, -1, stay->oven, 0});
  if (racksOverflow(oven, together, stay->when)) found.push_back({Cause::kOvenFull, beside, stay->oven, 0});
}

}  // namespace suppertide::planning
