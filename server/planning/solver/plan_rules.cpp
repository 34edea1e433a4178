#include "server/planning/solver/plan_rules.h"

#include <algorithm>

#include "server/base/index.h"
#include "server/planning/solver/occupancy.h"
#include "server/planning/solver/side_rules.h"

namespace suppertide::planning {
namespace {

class PlanRules {
 public:
  PlanRules(const Problem& problem, const Schedule& plan) : problem_(problem), plan_(plan) {}

  bool kept() const {
    for (int i = 0; i < sizeOf(problem_.steps); ++i)
      if (served(i) && !(stepKept(i) && pinKept(i) && cookKept(i) && linksKept(i))) return false;
    return std::all_of(problem_.gaps.begin(), problem_.gaps.end(),
                       [&](const Gap& gap) { return gapKept(gap); }) &&
           servingKept() && sideRulesKept() && sharedKept();
  }

 private:
  bool dishServed(int dish) const { return !plan_.unserved[static_cast<std::size_t>(dish)]; }
  bool served(int step) const { return dishServed(nth(problem_.steps, step).dish); }
  const Placement& place(int step) const { return nth(plan_.steps, step); }
  const Mode& mode(int step) const { return nth(nth(problem_.steps, step).modes, place(step).mode); }
  Minute minute(int step, Edge edge) const {
    return edge == Edge::kStart ? place(step).start : place(step).end;
  }

  bool stepKept(int index) const {
    const Step& step = nth(problem_.steps, index);
    const Placement& here = place(index);
    if (here.mode < 0 || here.mode >= sizeOf(step.modes)) return false;
    const Length length = mode(index).length.at(here.start);
    const Minute lasts = here.end - here.start;
    return length.possible() && lasts >= length.shortest && lasts <= length.longest &&
           here.start >= std::max(0, step.earliest) && here.end <= std::min(problem_.limit, step.latest);
  }

  bool pinKept(int index) const {
    const Pin& pin = nth(problem_.steps, index).pin;
    const Placement& here = place(index);
    return pin.start.value_or(here.start) == here.start && pin.end.value_or(here.end) == here.end &&
           pin.mode.value_or(here.mode) == here.mode && pin.cook.value_or(here.cook) == here.cook;
  }

  bool cookKept(int index) const {
    if (mode(index).attention == 0) return true;
    const auto& cooks = mode(index).cooks;
    return std::any_of(cooks.begin(), cooks.end(),
                       [&](const CookOption& option) { return option.cook == place(index).cook; });
  }

  bool linksKept(int index) const {
    const auto& links = mode(index).links;
    return std::all_of(links.begin(), links.end(), [&](const ModeLink& link) {
      return !served(link.step) ||
             std::find(link.modes.begin(), link.modes.end(), place(link.step).mode) != link.modes.end();
    });
  }

  bool gapKept(const Gap& gap) const {
    if (!served(gap.from) || !served(gap.to)) return true;
    const Minute distance = minute(gap.to, gap.toEdge) - minute(gap.from, gap.fromEdge);
    return distance >= gap.least && distance <= gap.most;
  }

  bool servingKept() const {
    for (int d = 0; d < sizeOf(problem_.dishes); ++d) {
      const Dish& dish = nth(problem_.dishes, d);
      if (!dishServed(d) || !served(dish.lastStep)) continue;
      const Minute wait = dish.serve - place(dish.lastStep).end;
      if (wait > dish.holdLimit || -wait > dish.lateLimit) return false;
    }
    return true;
  }

  bool sideRulesKept() const {
    for (const Clock& clock : problem_.clocks)
      if (served(clock.spans.front().from) && clockMinutes(problem_, clock, plan_) > clock.most) return false;
    for (const Separation& separation : problem_.separations)
      if (breaks(problem_, separation, plan_)) return false;
    for (int r = 0; r < sizeOf(problem_.resources); ++r) {
      const Resource& resource = nth(problem_.resources, r);
      if (resource.usedUp && usedOf(problem_, r, plan_) > resource.capacity) return false;
    }
    return true;
  }

  // Cooks' hours and attention, things, ovens: each step must fit beside those before it.
  bool sharedKept() const {
    Occupancy occupancy(problem_);
    for (int i = 0; i < sizeOf(problem_.steps); ++i) {
      if (!served(i)) continue;
      if (!occupancy.fitsOnce(i, place(i))) return false;
      occupancy.add(i, place(i));
    }
    return true;
  }

  const Problem& problem_;
  const Schedule& plan_;
};

}  // namespace

bool keepsRules(const Problem& problem, const Schedule& plan) {
  return PlanRules(problem, plan).kept();
}

}  // namespace suppertide::planning
