#include "server/planning/chance/earlier.h"

#include <algorithm>
#include <cstddef>

#include "server/base/index.h"

namespace suppertide::planning {
namespace {

Minute upTo(Minute minutes, Minute grid) {
  return (minutes + grid - 1) / grid * grid;
}

}  // namespace

EarlierShift::EarlierShift(const Problem& problem, const Schedule& schedule, Minute grid)
    : problem_(problem), schedule_(schedule), grid_(grid), boundsOf_(2 * problem.steps.size()) {
  const auto add = [&](int a, int b, Minute least) {
    boundsOf_[at(b)].push_back(static_cast<int>(bounds_.size()));
    bounds_.push_back({a, b, least});
  };
  const PlanOrder order = orderOf(problem, schedule);
  for (const Follow& follow : order.follows) add(follow.from, follow.to, follow.lag);
  for (const Follow& follow : order.handovers) add(follow.from, follow.to, follow.lag);
  for (const Turn& turn : order.turns) add(endOf(turn.first), startOf(turn.second), turn.lagAfter);
  for (const Gap& gap : problem.gaps) {
    if (!isServed(problem, schedule, gap.from) || !isServed(problem, schedule, gap.to)) continue;
    const int from = eventOf(gap.from, gap.fromEdge);
    const int to = eventOf(gap.to, gap.toEdge);
    if (gap.least > -kNoLimit) add(from, to, gap.least);
    if (gap.most < kNoLimit) add(to, from, -gap.most);
  }
}

class EarlierShift::Move {
 public:
  Move(const EarlierShift& shift, Elastic elastic)
      : shift_(shift), elastic_(elastic), schedule_(shift.schedule_) {}

  // Brings the event to `time` or earlier; false when it cannot be.
  bool bring(int event, Minute time) {
    const Minute now = plannedAt(schedule_, event);
    if (now <= time) return true;
    const Minute by = upTo(now - time, shift_.grid_);
    Placement& place = schedule_.steps[at(event / 2)];
    const Placement before = place;
    (event % 2 == 0 ? place.start : place.end) -= by;
    const Step& step = shift_.problem_.steps[at(event / 2)];
    if (elastic_ == Elastic::kKept || !fits(step, place)) (event % 2 == 0 ? place.end : place.start) -= by;
    const bool pinnedAway =
        (step.pin.start && place.start != *step.pin.start) || (step.pin.end && place.end != *step.pin.end);
    if (place.start < std::max(0, step.earliest) || pinnedAway) return false;
    if (place.start != before.start) waiting_.push_back(startOf(event / 2));
    if (place.end != before.end) waiting_.push_back(endOf(event / 2));
    return true;
  }

  std::optional<Schedule> settle() {
    // Edges only ever move earlier, down to 0, so this ends.
    while (!waiting_.empty()) {
      const int event = waiting_.back();
      waiting_.pop_back();
      for (const int b : shift_.boundsOf_[at(event)]) {
        const Bound& bound = shift_.bounds_[at(b)];
        if (!bring(bound.a, plannedAt(schedule_, bound.b) - bound.least)) return std::nullopt;
      }
    }
    return schedule_;
  }

 private:
  static bool fits(const Step& step, const Placement& place) {
    const Length range = step.modes[at(place.mode)].length.at(place.start);
    const Minute length = place.end - place.start;
    return range.possible() && length >= range.shortest && length <= range.longest;
  }

  const EarlierShift& shift_;
  Elastic elastic_;
  Schedule schedule_;
  std::vector<int> waiting_;  // events that moved
};

std::optional<Schedule> EarlierShift::earlier(int step, Minute minutes, Elastic elastic) const {
  Move move(*this, elastic);
  if (!move.bring(startOf(step), plannedAt(schedule_, startOf(step)) - minutes)) return std::nullopt;
  return move.settle();
}

}  // namespace suppertide::planning
