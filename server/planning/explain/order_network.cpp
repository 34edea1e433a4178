#include "server/planning/explain/order_network.h"

#include <algorithm>

#include "server/planning/explain/side_order.h"

namespace suppertide::planning {
namespace {

int startOf(int step) {
  return 2 * step;
}
int endOf(int step) {
  return 2 * step + 1;
}

// The end of the stretch of touching spans that holds `start`; `start` itself when none does.
Minute stretchLimit(std::vector<Interval<Minute>> spans, Minute start) {
  std::sort(spans.begin(), spans.end(), [](const auto& a, const auto& b) { return a.start < b.start; });
  Minute limit = start;
  for (const Interval<Minute>& span : spans)
    if (span.start <= limit && span.limit > limit) limit = span.limit;
  return limit;
}

bool allFitTogether(const Oven& oven, const std::vector<OvenStay>& stays) {
  std::vector<Load> loads;
  for (const OvenStay& stay : stays) loads.push_back(stay.load);
  return oven.racks->fits(loads);
}

}  // namespace

OrderNetwork::OrderNetwork(const Problem& problem, const Schedule& schedule)
    : problem_(problem), schedule_(schedule), limits_(2 * problem.steps.size(), problem.limit) {
  for (int i = 0; i < static_cast<int>(problem.steps.size()); ++i)
    if (isServed(i)) addBounds(i);
  for (int d = 0; d < static_cast<int>(problem.dishes.size()); ++d) {
    const Dish& dish = nth(problem.dishes, d);
    if (schedule.unserved[static_cast<std::size_t>(d)]) continue;
    const int end = endOf(dish.lastStep);
    limitTo(end, std::max(dish.serve, timeOf(end)));
  }
  addGaps();
  addCooks();
  addResources();
  addOvens();
  addSeparations();
  addClocks();
}

bool OrderNetwork::isServed(int step) const {
  return !schedule_.unserved[static_cast<std::size_t>(nth(problem_.steps, step).dish)];
}

Minute OrderNetwork::timeOf(int edge) const {
  const Placement& at = nth(schedule_.steps, edge / 2);
  return edge % 2 == 0 ? at.start : at.end;
}

void OrderNetwork::limitTo(int edge, Minute latest) {
  Minute& limit = limits_[static_cast<std::size_t>(edge)];
  limit = std::min(limit, latest);
}

void OrderNetwork::addBounds(int step) {
  const Step& what = nth(problem_.steps, step);
  const Placement& at = nth(schedule_.steps, step);
  const Mode& mode = nth(what.modes, at.mode);
  limitTo(endOf(step), what.latest);
  if (what.pin.start) limitTo(startOf(step), at.start);
  if (what.pin.end) limitTo(endOf(step), at.end);
  if (mode.attention > 0 && at.cook >= 0)
    limitTo(endOf(step), std::max(at.end, stretchLimit(nth(problem_.cooks, at.cook).available, at.start)));
  if (!mode.oven) return;
  for (const Interval<Minute>& closed : nth(problem_.ovens, mode.oven->oven).closed)
    if (closed.start >= at.end) limitTo(endOf(step), closed.start);
}

void OrderNetwork::addGaps() {
  for (const Gap& gap : problem_.gaps) {
    if (!isServed(gap.from) || !isServed(gap.to)) continue;
    const int from = gap.fromEdge == Edge::kStart ? startOf(gap.from) : endOf(gap.from);
    const int to = gap.toEdge == Edge::kStart ? startOf(gap.to) : endOf(gap.to);
    atLeast(from, to, gap.least);
    if (gap.most < kNoLimit) atLeast(to, from, -gap.most);
  }
}

void OrderNetwork::addCooks() {
  for (int c = 0; c < static_cast<int>(problem_.cooks.size()); ++c) {
    std::vector<Use> uses;
    for (int i = 0; i < static_cast<int>(problem_.steps.size()); ++i) {
      const Placement& at = nth(schedule_.steps, i);
      if (!isServed(i) || at.cook != c) continue;
      const int attention = nth(nth(problem_.steps, i).modes, at.mode).attention;
      if (attention > 0) uses.push_back({i, {at.start, at.end}, attention});
    }
    handOn(std::move(uses), 100);
  }
}

void OrderNetwork::addResources() {
  for (int r = 0; r < static_cast<int>(problem_.resources.size()); ++r) {
    const Resource& resource = nth(problem_.resources, r);
    if (resource.usedUp) continue;
    std::vector<Use> uses;
    for (const Resource::Taken& taken : resource.taken) uses.push_back({-1, taken.when, taken.amount});
    for (int i = 0; i < static_cast<int>(problem_.steps.size()); ++i) {
      if (!isServed(i)) continue;
      const Placement& at = nth(schedule_.steps, i);
      int amount = 0;
      for (const planning::Use& use : nth(nth(problem_.steps, i).modes, at.mode).uses)
        if (use.resource == r) amount += use.amount;
      if (amount > 0) uses.push_back({i, {at.start, at.end}, amount});
    }
    handOn(std::move(uses), resource.capacity);
  }
}

// Gives each use its units from those that were done first, and keeps those in that order.
void OrderNetwork::handOn(std::vector<Use> uses, int capacity) {
  std::stable_sort(uses.begin(), uses.end(), [](const Use& a, const Use& b) {
    return a.when.start != b.when.start ? a.when.start < b.when.start : a.when.limit < b.when.limit;
  });
  std::vector<Use> free = {{-1, {0, 0}, capacity}};  // `when.limit`: free from then on
  for (const Use& use : uses) {
    std::stable_sort(free.begin(), free.end(),
                     [](const Use& a, const Use& b) { return a.when.limit < b.when.limit; });
    int there = 0;
    for (const Use& giver : free)
      if (giver.when.limit <= use.when.start) there += giver.amount;
    if (there < use.amount) {
      // Only what lasts no time may find nothing free; it has to stay without length.
      if (use.step >= 0) atLeast(endOf(use.step), startOf(use.step), 0);
      continue;
    }
    int wanted = use.amount;
    for (Use& giver : free) {
      if (wanted == 0 || giver.when.limit > use.when.start) break;
      const int given = std::min(wanted, giver.amount);
      wanted -= given;
      giver.amount -= given;
      if (giver.step < 0) continue;
      if (use.step < 0) {
        limitTo(endOf(giver.step), use.when.start);
      } else {
        atLeast(endOf(giver.step), startOf(use.step), 0);
      }
    }
    std::erase_if(free, [](const Use& giver) { return giver.amount == 0; });
    free.push_back(use);
  }
}

void OrderNetwork::addOvens() {
  const auto byOven = staysByOven(problem_, schedule_);
  for (std::size_t o = 0; o < byOven.size(); ++o) {
    const std::vector<OvenStay>& stays = byOven[o];
    const bool allFit = allFitTogether(problem_.ovens[o], stays);
    for (std::size_t i = 0; i < stays.size(); ++i)
      for (std::size_t j = i + 1; j < stays.size(); ++j)
        addOvenPair(problem_.ovens[o], stays[i], stays[j], allFit);
  }
  for (int i = 0; i < static_cast<int>(problem_.steps.size()); ++i) {
    const Placement& at = nth(schedule_.steps, i);
    if (isServed(i) && nth(nth(problem_.steps, i).modes, at.mode).oven && at.start == at.end)
      atLeast(endOf(i), startOf(i), 0);
  }
}

// A step that lasts no time is asked nothing by separations and uses nothing up, as long as it stays so.
void OrderNetwork::keepWithoutLength(int step) {
  const Placement& at = nth(schedule_.steps, step);
  if (isServed(step) && at.start == at.end) atLeast(endOf(step), startOf(step), 0);
}

void OrderNetwork::addSeparations() {
  for (const KeptApart& kept : keptApart(problem_, schedule_))
    atLeast(endOf(kept.first), startOf(kept.second), kept.least);
  for (const Separation& separation : problem_.separations) {
    keepWithoutLength(separation.clean);
    keepWithoutLength(separation.other);
  }
  for (int i = 0; i < static_cast<int>(problem_.steps.size()); ++i)
    for (const planning::Use& use : nth(nth(problem_.steps, i).modes, nth(schedule_.steps, i).mode).uses)
      if (nth(problem_.resources, use.resource).usedUp) keepWithoutLength(i);
}

// A single span may grow to its limit; where several count together none grows.
void OrderNetwork::addClocks() {
  for (const TimedSpan& span : timedSpans(problem_, schedule_)) {
    const int from = span.fromEdge == Edge::kStart ? startOf(span.from) : endOf(span.from);
    const int last = endOf(nth(problem_.dishes, nth(problem_.steps, span.from).dish).lastStep);
    const int to = span.to < 0 ? last : span.toEdge == Edge::kStart ? startOf(span.to) : endOf(span.to);
    const Minute most = span.spans == 1 ? std::max(span.now, span.now + span.left) : span.now;
    atLeast(to, from, -most);
  }
}

void OrderNetwork::addOvenPair(const Oven& oven, const OvenStay& early, const OvenStay& late, bool allFit) {
  const bool plain = early.phases.size() == 1 && late.phases.size() == 1;
  const int wanted = late.phases.front().setpoint;
  const bool same = plain && early.phases.front().setpoint == wanted;
  if (early.when.overlaps(late.when)) {
    if (same) return;
    // Phases that go side by side go on doing so, minute by minute.
    const Minute apart = late.when.start - early.when.start;
    atLeast(startOf(early.step), startOf(late.step), apart);
    atLeast(startOf(late.step), startOf(early.step), -apart);
    for (const OvenStay* stay : {&early, &late}) {
      const Minute length = stay->when.limit - stay->when.start;
      atLeast(endOf(stay->step), startOf(stay->step), -length);
    }
    return;
  }
  if (!same || !allFit) atLeast(endOf(early.step), startOf(late.step), 0);
  if (!late.preheated) return;
  for (const OvenStay::Phase& phase : early.phases) {
    if (phase.setpoint == wanted) continue;
    const Minute change = nth(nth(oven.change, phase.setpoint), wanted);
    const Minute untilEnd = early.when.limit - phase.when.limit;
    atLeast(endOf(early.step), startOf(late.step), change - untilEnd);
  }
}

// Fits the latest start and end of a step to the lengths it may have; returns whether one moved.
bool OrderNetwork::tightenLength(int step, std::vector<Minute>& latest) const {
  const Placement& at = nth(schedule_.steps, step);
  const LengthTable& table = nth(nth(problem_.steps, step).modes, at.mode).length;
  Minute& start = latest[static_cast<std::size_t>(startOf(step))];
  Minute& end = latest[static_cast<std::size_t>(endOf(step))];
  const Minute startBefore = start;
  const Minute endBefore = end;
  const auto suits = [&](Minute minute) {
    const Length length = table.at(minute);
    return length.possible() && minute + length.shortest <= end && minute + length.longest >= at.end;
  };
  start = std::min(start, end);
  while (start > at.start && !suits(start)) --start;
  end = std::min(end, std::max(at.end, start + table.at(start).longest));
  return start != startBefore || end != endBefore;
}

Schedule OrderNetwork::latest() const {
  std::vector<Minute> latest = limits_;
  for (bool moved = true; moved;) {
    moved = false;
    for (const Distance& distance : distances_) {
      Minute& from = latest[static_cast<std::size_t>(distance.from)];
      const Minute to = nth(latest, distance.to) - distance.least;
      // Never before where it lies now, whatever rule the schedule breaks.
      const Minute bound = std::max(to, timeOf(distance.from));
      if (bound >= from) continue;
      from = bound;
      moved = true;
    }
    for (int i = 0; i < static_cast<int>(problem_.steps.size()); ++i)
      if (isServed(i) && tightenLength(i, latest)) moved = true;
  }
  Schedule schedule = schedule_;
  for (int i = 0; i < static_cast<int>(problem_.steps.size()); ++i) {
    if (!isServed(i)) continue;
    Placement& at = schedule.steps[static_cast<std::size_t>(i)];
    at.start = nth(latest, startOf(i));
    at.end = nth(latest, endOf(i));
  }
  return schedule;
}

// Makes a step as long as it was, or as near to it as it may be, from its least start on; whether something
// rose.
bool OrderNetwork::stretchLength(int step, Minute lasts, Minute grid, std::vector<Minute>& times) const {
  const LengthTable& table = nth(nth(problem_.steps, step).modes, nth(schedule_.steps, step).mode).length;
  Minute& start = times[static_cast<std::size_t>(startOf(step))];
  Minute& end = times[static_cast<std::size_t>(endOf(step))];
  const Minute startBefore = start;
  const Minute endBefore = end;
  while (start <= problem_.limit && !table.at(start).possible()) start += grid;
  if (start > problem_.limit) return start != startBefore;
  const Length length = table.at(start);
  end = std::max(end, start + std::clamp(lasts, length.shortest, length.longest));
  // What is stretched too far begins later.
  if (end > start + length.longest) start = std::max(start, end - length.longest);
  return start != startBefore || end != endBefore;
}

std::optional<Schedule> OrderNetwork::shifted(const Schedule& from, Minute grid) const {
  const int steps = static_cast<int>(problem_.steps.size());
  std::vector<Minute> times(2 * problem_.steps.size(), 0);
  for (int i = 0; i < steps; ++i) {
    times[static_cast<std::size_t>(startOf(i))] = nth(from.steps, i).start;
    // What waits may get shorter again; what is fixed ends as it does.
    times[static_cast<std::size_t>(endOf(i))] = nth(from.steps, i).end;
  }
  for (bool moved = true; moved;) {
    moved = false;
    for (const Distance& distance : distances_) {
      Minute& to = times[static_cast<std::size_t>(distance.to)];
      Minute least = nth(times, distance.from) + distance.least;
      if (least <= to) continue;
      if (distance.to % 2 == 0) least = (least + grid - 1) / grid * grid;
      const Step& step = nth(problem_.steps, distance.to / 2);
      if (least > problem_.limit || (distance.to % 2 == 0 && step.pin.start) ||
          (distance.to % 2 == 1 && step.pin.end))
        return std::nullopt;
      to = least;
      moved = true;
    }
    for (int i = 0; i < steps; ++i) {
      if (!isServed(i)) continue;
      const Minute start = nth(times, startOf(i));
      const Placement& at = nth(from.steps, i);
      if (!stretchLength(i, at.end - at.start, grid, times)) continue;
      if (nth(times, endOf(i)) > problem_.limit) return std::nullopt;
      if (nth(problem_.steps, i).pin.start && nth(times, startOf(i)) != start) return std::nullopt;
      moved = true;
    }
  }
  Schedule schedule = from;
  for (int i = 0; i < steps; ++i) {
    Placement& at = schedule.steps[static_cast<std::size_t>(i)];
    at.start = nth(times, startOf(i));
    at.end = nth(times, endOf(i));
  }
  return schedule;
}

}  // namespace suppertide::planning
