#include "server/planning/replan/happened.h"

#include <algorithm>
#include <cstdlib>
#include <map>
#include <numeric>

#include "server/base/index.h"
#include "server/planning/model/costs/moves.h"

namespace suppertide::planning {
namespace {

Minute roundUp(Minute minute, Minute grid) {
  return (minute + grid - 1) / grid * grid;
}

// What stands in an oven until it is this long over still tells how hot the oven is.
constexpr Minute kOvenRemembers = 120;
// A step begun again lasts at least this long.
constexpr Minute kLeastRest = 5;

class Past {
 public:
  Past(const Problem& problem, const Running& running, Minute grid)
      : running_(running), now_(running.now), grid_(std::max(1, grid)) {
    out_.problem = problem;
    out_.expected = running.plan;
    out_.past.assign(problem.steps.size(), false);
  }

  Remaining run() {
    std::vector<int> order(out_.problem.steps.size());
    std::iota(order.begin(), order.end(), 0);
    std::stable_sort(order.begin(), order.end(), [&](int a, int b) { return startOf(a) < startOf(b); });
    for (const int i : order) settle(i);
    for (Gap& gap : out_.problem.gaps) widen(gap);
    for (Dish& dish : out_.problem.dishes) widen(dish);
    for (Clock& clock : out_.problem.clocks) countTruly(clock);
    return std::move(out_);
  }

 private:
  using Kind = StepState::Kind;

  const StepState& state(int step) const { return nth(running_.states, step); }
  Minute startOf(int step) const {
    return state(step).kind == Kind::kStarted || state(step).kind == Kind::kFinished
               ? state(step).start
               : nth(running_.plan.steps, step).start;
  }
  Mode& modeOf(int step) {
    return nth(nth(out_.problem.steps, step).modes, nth(out_.expected.steps, step).mode);
  }

  void settle(int step) {
    switch (state(step).kind) {
      case Kind::kWaiting:
        return wait(step,
                    !out_.expected.unserved[static_cast<std::size_t>(nth(out_.problem.steps, step).dish)]);
      case Kind::kStarted:
        return interrupted(step) ? beginAgain(step) : goOn(step);
      case Kind::kFinished:
        return finish(step);
      case Kind::kSkipped:
        return skip(step);
    }
  }

  void wait(int step, bool planned) {
    Step& what = nth(out_.problem.steps, step);
    const Placement& old = nth(running_.plan.steps, step);
    const bool isDue =
        planned && state(step).notBefore == 0 && old.start <= now_ && now_ - old.start < kMoveFrom;
    if (isDue) catchingUp_[step] = now_ - old.start;
    what.earliest = std::max(
        {what.earliest, isDue ? old.start : roundUp(now_, grid_), roundUp(state(step).notBefore, grid_)});
    if (planned) what.announced = Announced{old.start, old.mode, old.cook, moveWeight(old.start - now_)};
  }

  void free(Mode& mode) {
    mode.attention = 0;
    mode.cooks.clear();
    mode.uses.clear();
    mode.oven.reset();
    mode.links.clear();
    mode.spread = {};
  }

  void pin(int step, Minute start) {
    Step& what = nth(out_.problem.steps, step);
    Placement& at = nth(out_.expected.steps, step);
    at.start = start;
    what.earliest = 0;
    what.pin = {start, std::nullopt, at.mode, std::nullopt};
    what.announced.reset();
    out_.past[static_cast<std::size_t>(step)] = true;
  }

  void finish(int step) {
    pin(step, state(step).start);
    Step& what = nth(out_.problem.steps, step);
    Placement& at = nth(out_.expected.steps, step);
    if (state(step).cook >= 0) at.cook = state(step).cook;
    at.end = std::max(state(step).start, state(step).end);
    what.pin.end = at.end;
    what.latest = kNoLimit;
    Mode& mode = modeOf(step);
    const auto oven = mode.oven;
    free(mode);
    mode.length = LengthTable::fixed(at.end - at.start);
    if (oven && at.end > at.start && at.end + kOvenRemembers > now_ && takeOven(*oven, at)) {
      mode.oven = oven;
      fitPhases(*mode.oven, at.end - at.start);
    }
  }

  // Whether an end is where it was planned, as far as anybody notices: hands and pots catch up a few minutes;
  // what bakes, rises, thaws or cools does not.
  static bool isAsPlanned(const Step& what, const Placement& old, Minute start, Minute end) {
    if (end == old.end) return true;
    if (old.end <= start) return false;
    const bool catchesUp = what.kind == StepKind::kHandsOn || what.kind == StepKind::kCook ||
                           what.kind == StepKind::kWait || what.kind == StepKind::kHold;
    const Minute spare = catchesUp ? kMoveFrom - 1 : std::min(kMoveFrom - 1, (old.end - old.start) / 10);
    const bool isFixed = what.kind == StepKind::kBake || what.kind == StepKind::kFerment;
    return !isFixed && std::abs(end - old.end) <= spare;
  }

  // Under way: it lasts as long as planned or longer, until now at least.
  void goOn(int step) {
    const Placement old = nth(running_.plan.steps, step);
    pin(step, state(step).start);
    Step& what = nth(out_.problem.steps, step);
    Placement& at = nth(out_.expected.steps, step);
    Mode& mode = modeOf(step);
    if (state(step).cook >= 0) at.cook = state(step).cook;
    const Length length = mode.length.at(at.start);
    const Minute longer = state(step).longer;
    // An end that is another than planned lies on the grid, so that what follows may follow at once; unless
    // it is so little later that what follows stays.
    const auto ending = [&](Minute lasts) {
      const Minute end = std::max(at.start + std::max(0, lasts + longer), now_);
      if (isAsPlanned(what, old, at.start, end)) return old.end - at.start;
      return (old.end < end && end < old.end + kMoveFrom ? end : roundUp(end, grid_)) - at.start;
    };
    const Minute usual = std::max(0, old.end - old.start - state(step).counted);
    const Minute lasts = length.possible() ? std::clamp(usual, length.shortest, length.longest) : usual;
    at.end = at.start + ending(lasts);
    const bool elastic = length.possible() && length.longest > length.shortest;
    mode.length =
        elastic ? LengthTable::range(std::min(ending(length.shortest), at.end - at.start), at.end - at.start,
                                     std::max(ending(length.longest), at.end - at.start))
                : LengthTable::fixed(at.end - at.start);
    what.latest = std::max(what.latest, at.end);
    if (!elastic) catchingUp_[step] = std::max(0, std::max(at.start + lasts + longer, now_) - at.end);
    takeCook(mode, at, what);
    takeThings(mode);
    if (mode.oven) {
      fitPhases(*mode.oven, mode.length.rows.front().longest);
      if (!takeOven(*mode.oven, at)) mode.oven.reset();
    }
  }

  // Will not be done: it takes no time and nothing, and what follows need not wait for it.
  void skip(int step) {
    Placement& at = nth(out_.expected.steps, step);
    at.start = at.end = std::max(at.start, roundUp(now_, grid_));
    Step& what = nth(out_.problem.steps, step);
    Mode& mode = modeOf(step);
    free(mode);
    mode.length = LengthTable::fixed(0);
    what.pin = {std::nullopt, std::nullopt, at.mode, std::nullopt};
    what.announced.reset();
    what.earliest = 0;
    at.cook = -1;
  }

  bool interrupted(int step) const {
    const Placement& at = nth(running_.plan.steps, step);
    const Mode& mode = nth(nth(out_.problem.steps, step).modes, at.mode);
    const Interval<Minute> rest{now_, std::max(now_ + 1, state(step).start + (at.end - at.start))};
    if (mode.oven)
      for (const auto& closed : nth(out_.problem.ovens, mode.oven->oven).closed)
        if (closed.overlaps(rest)) return true;
    const int cook = state(step).cook >= 0 ? state(step).cook : at.cook;
    if (mode.attention == 0 || cook < 0) return false;
    const auto& there = nth(out_.problem.cooks, cook).available;
    return std::none_of(there.begin(), there.end(), [&](const auto& span) { return span.contains(now_); });
  }

  // Work goes on with somebody else; what was in the oven has its whole time before it.
  void beginAgain(int step) {
    const Placement old = nth(running_.plan.steps, step);
    Step& what = nth(out_.problem.steps, step);
    if (what.kind != StepKind::kBake) {
      const Minute rest =
          roundUp(std::max(kLeastRest, state(step).start + (old.end - old.start) - now_), grid_);
      for (Mode& mode : what.modes) mode.length = LengthTable::fixed(rest);
    }
    wait(step, true);
    again_.push_back(step);
  }

  void fitPhases(OvenNeed& need, Minute length) {
    if (need.phases.size() == 1) {
      need.phases.front().length = 0;
      return;
    }
    Minute sum = 0;
    for (const OvenPhase& phase : need.phases) sum += phase.length;
    for (OvenPhase& phase : need.phases) {
      const Minute change = std::max(length - sum, -phase.length);
      if (&phase != &need.phases.back() && length >= sum) continue;
      phase.length += change;
      sum += change;
    }
  }

  // The person is there while it goes on; more than two hands can do is taken as done.
  void takeCook(Mode& mode, Placement& at, Step& what) {
    if (mode.attention == 0 || at.cook < 0) return;
    int& busy = attention_[at.cook];
    const bool able = std::any_of(mode.cooks.begin(), mode.cooks.end(),
                                  [&](const CookOption& option) { return option.cook == at.cook; });
    auto& there = nth(out_.problem.cooks, at.cook).available;
    const bool present = std::any_of(there.begin(), there.end(), [&](const auto& span) {
      return span.start <= at.start && at.end <= span.limit;
    });
    if (busy + mode.attention > 100 || !present) {
      mode.attention = 0;
      mode.cooks.clear();
      return;
    }
    if (!able) mode.cooks.push_back({at.cook, 0});
    busy += mode.attention;
    what.pin.cook = at.cook;
  }

  void takeThings(Mode& mode) {
    std::erase_if(mode.uses, [&](const Use& use) {
      const Resource& thing = nth(out_.problem.resources, use.resource);
      int taken = 0;
      for (const auto& outside : thing.taken)
        if (outside.when.contains(now_)) taken += outside.amount;
      int& used = used_[use.resource];
      if (used + taken + use.amount > thing.capacity) return true;
      used += use.amount;
      return false;
    });
  }

  // Whether the stay agrees with what stood in the oven before and stands there now.
  bool takeOven(const OvenNeed& need, const Placement& at) {
    const Oven& oven = nth(out_.problem.ovens, need.oven);
    auto& stays = stays_[need.oven];
    std::vector<Load> loads = {need.load};
    for (const Stay& stay : stays) {
      if (stay.when.limit <= at.start) {
        const Minute change = nth(nth(oven.change, stay.last), need.phases.front().setpoint);
        if (need.preheated && stay.when.limit + change > at.start) return false;
        continue;
      }
      if (stay.phases > 1 || need.phases.size() > 1 || stay.last != need.phases.front().setpoint)
        return false;
      loads.push_back(stay.load);
    }
    if (!oven.racks->fits(loads)) return false;
    stays.push_back({{at.start, at.end}, need.phases.back().setpoint, need.phases.size(), need.load});
    return true;
  }

  bool isPast(int step, Edge edge) const {
    if (!out_.past[static_cast<std::size_t>(step)]) return false;
    return edge == Edge::kStart || state(step).kind == Kind::kFinished;
  }

  void widen(Gap& gap) {
    const auto skipped = [&](int step) { return state(step).kind == Kind::kSkipped; };
    const auto anew = [&](int step) { return std::find(again_.begin(), again_.end(), step) != again_.end(); };
    const bool from = isPast(gap.from, gap.fromEdge);
    const bool to = isPast(gap.to, gap.toEdge);
    if ((from && to) || skipped(gap.from) || skipped(gap.to)) {
      gap.least = -kNoLimit;
      gap.most = kNoLimit;
      return;
    }
    const auto minute = [&](int step, Edge edge) {
      const Placement& at = nth(out_.expected.steps, step);
      return edge == Edge::kStart ? at.start : at.end;
    };
    if (to) {  // out of turn: what should have been before is still to come
      gap.least = -kNoLimit;
      return;
    }
    if (gap.fromEdge == Edge::kEnd && endsForSure(gap.from))
      followAtOnce(gap, minute(gap.from, gap.fromEdge));
    if (gap.most >= kNoLimit) return;
    if (anew(gap.to)) gap.most = kNoLimit;
    if (!from) return;
    const Minute since = minute(gap.from, gap.fromEdge);
    const Minute soonest = roundUp(std::max(now_, since + gap.least), grid_);
    gap.most = std::max(gap.most, soonest - since);
  }

  // Over, or under way and not for the planner to end.
  bool endsForSure(int step) const {
    if (state(step).kind == Kind::kFinished) return true;
    const auto& rows =
        nth(nth(out_.problem.steps, step).modes, nth(out_.expected.steps, step).mode).length.rows;
    return state(step).kind == Kind::kStarted && out_.past[static_cast<std::size_t>(step)] &&
           rows.front().shortest == rows.front().longest;
  }

  // What follows may stay where it is for some minutes that nobody cooks to.
  void followAtOnce(Gap& gap, Minute since) {
    if (state(gap.to).kind != Kind::kWaiting) return;
    const Placement& planned = nth(running_.plan.steps, gap.to);
    const Minute apart = (gap.toEdge == Edge::kStart ? planned.start : planned.end) - since;
    const Minute missing = gap.least - apart;
    if (missing <= 0 || missing >= kMoveFrom) return;
    gap.least = apart;
    catchingUp_[gap.to] = std::max(catchingUp_[gap.to], missing);
  }

  // What is safe is counted to the minute: those that nobody cooks to are taken off.
  void countTruly(Clock& clock) const {
    for (const Clock::Span& span : clock.spans)
      if (const auto later = catchingUp_.find(span.to); later != catchingUp_.end())
        clock.most -= later->second;
    clock.most = std::max(0, clock.most);
  }

  void widen(Dish& dish) const {
    if (!out_.past[static_cast<std::size_t>(dish.lastStep)]) return;
    const Minute ready = nth(out_.expected.steps, dish.lastStep).end;
    dish.holdLimit = std::max(dish.holdLimit, dish.serve - ready);
    dish.lateLimit = std::max(dish.lateLimit, ready - dish.serve);
  }

  struct Stay {
    Interval<Minute> when;
    int last;
    std::size_t phases;
    Load load;
  };

  const Running& running_;
  const Minute now_;
  const Minute grid_;
  Remaining out_;
  std::vector<int> again_;
  std::map<int, Minute> catchingUp_;        // by step: how much earlier than in truth it is planned
  std::map<int, int> attention_;            // by cook, of steps under way
  std::map<int, int> used_;                 // by resource
  std::map<int, std::vector<Stay>> stays_;  // by oven
};

}  // namespace

int moveWeight(Minute minutes) {
  if (minutes <= 10) return 30;
  if (minutes <= 30) return 8;
  if (minutes <= 120) return 4;
  return minutes <= 480 ? 2 : 1;
}

Remaining whatRemains(const Problem& problem, const Running& running, Minute grid) {
  return Past(problem, running, grid).run();
}

}  // namespace suppertide::planning
