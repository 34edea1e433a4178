#include "tests/support/disturbance.h"

#include <algorithm>

#include "absl/strings/str_cat.h"
#include "tests/support/dice.h"

namespace suppertide::planning {
namespace {

template <typename T>
T& nth(std::vector<T>& values, int index) {
  return values[static_cast<std::size_t>(index)];
}
template <typename T>
const T& nth(const std::vector<T>& values, int index) {
  return values[static_cast<std::size_t>(index)];
}

class Disturber {
 public:
  Disturber(const Problem& problem, const Schedule& plan, std::uint64_t seed) : dice_(seed) {
    std::vector<int> served;
    for (int i = 0; i < static_cast<int>(problem.steps.size()); ++i)
      if (!plan.unserved[static_cast<std::size_t>(nth(problem.steps, i).dish)]) served.push_back(i);
    const Minute about = served.empty() ? 0 : nth(plan.steps, dice_.oneOf(served)).start;
    out_.problem = problem;
    out_.running = asPlanned(problem, plan, about + dice_.between(0, 12));
  }

  Disturbed run() {
    for (int attempt = 0; attempt < 50; ++attempt)
      if (change(dice_.between(0, 7))) return std::move(out_);
    out_.what = "nothing happens";
    return std::move(out_);
  }

 private:
  using Kind = StepState::Kind;
  Minute now() const { return out_.running.now; }
  const Placement& planned(int step) const { return nth(out_.running.plan.steps, step); }
  const std::string& name(int step) const { return nth(out_.problem.steps, step).id; }

  // A step of that kind; a waiting one begins within `within` minutes. -1: none.
  int pick(Kind kind, Minute within = kNoLimit) {
    std::vector<int> found;
    for (int i = 0; i < static_cast<int>(out_.problem.steps.size()); ++i)
      if (!out_.running.plan.unserved[static_cast<std::size_t>(nth(out_.problem.steps, i).dish)] &&
          nth(out_.running.states, i).kind == kind &&
          (kind != Kind::kWaiting || planned(i).start - now() <= within))
        found.push_back(i);
    return found.empty() ? -1 : dice_.oneOf(found);
  }

  bool change(int which) {
    switch (which) {
      case 0:
        return longer();
      case 1:
        return early();
      case 2:
        return overrun();
      case 3:
        return putOff();
      case 4:
        return cookLeaves();
      case 5:
        return ovenBreaks();
      case 6:
        return dishAdded();
      default:
        return dragged();
    }
  }

  bool longer() {
    const int step = pick(Kind::kStarted);
    if (step < 0) return false;
    StepState& state = nth(out_.running.states, step);
    state.longer = dice_.between(5, 40);
    out_.what = absl::StrCat(name(step), " takes ", state.longer, " longer");
    return true;
  }

  bool early() {
    const int step = pick(Kind::kStarted);
    if (step < 0) return false;
    StepState& state = nth(out_.running.states, step);
    state.kind = Kind::kFinished;
    state.end = now();
    out_.what = absl::StrCat(name(step), " is done ", planned(step).end - now(), " early");
    return true;
  }

  // A step that should be over still goes on.
  bool overrun() {
    const int step = pick(Kind::kFinished);
    if (step < 0 || planned(step).end + 40 < now() ||
        nth(out_.problem.dishes, nth(out_.problem.steps, step).dish).lastStep == step)
      return false;
    for (const Gap& gap : out_.problem.gaps)
      if (gap.from == step && nth(out_.running.states, gap.to).kind != Kind::kWaiting) return false;
    StepState& state = nth(out_.running.states, step);
    state.kind = Kind::kStarted;
    state.longer = now() + 5 - planned(step).end;
    out_.what = absl::StrCat(name(step), " is not done yet");
    return true;
  }

  bool putOff() {
    const int step = pick(Kind::kWaiting, 180);
    if (step < 0) return false;
    const Minute by = 5 * dice_.between(2, 12);
    nth(out_.running.states, step).notBefore = planned(step).start + by;
    out_.what = absl::StrCat(name(step), " is put off by ", by);
    return true;
  }

  bool cookLeaves() {
    const int cook = dice_.between(0, static_cast<int>(out_.problem.cooks.size()) - 1);
    const Minute from = now() + 5 * dice_.between(0, 12);
    const Minute length = 30 * dice_.between(1, 8);
    std::vector<Interval<Minute>> rest;
    for (const auto& span : nth(out_.problem.cooks, cook).available) {
      const Interval<Minute> before = span.intersect({0, from});
      const Interval<Minute> after = span.intersect({from + length, out_.problem.limit});
      if (!before.empty()) rest.push_back(before);
      if (!after.empty()) rest.push_back(after);
    }
    nth(out_.problem.cooks, cook).available = rest;
    out_.what = absl::StrCat(nth(out_.problem.cooks, cook).id, " leaves at ", from, " for ", length);
    return true;
  }

  bool ovenBreaks() {
    const int oven = dice_.between(0, static_cast<int>(out_.problem.ovens.size()) - 1);
    const Minute length =
        out_.problem.ovens.size() > 1 && dice_.chance(50) ? out_.problem.limit : 30 * dice_.between(1, 4);
    nth(out_.problem.ovens, oven).closed.push_back({now(), std::min(out_.problem.limit, now() + length)});
    out_.what = absl::StrCat(nth(out_.problem.ovens, oven).id, " breaks for ", length);
    return true;
  }

  // One that was planned comes as a surprise.
  bool dishAdded() {
    const int dish = dice_.between(0, static_cast<int>(out_.problem.dishes.size()) - 1);
    if (out_.running.plan.unserved[static_cast<std::size_t>(dish)]) return false;
    for (int i = 0; i < static_cast<int>(out_.problem.steps.size()); ++i)
      if (nth(out_.problem.steps, i).dish == dish && nth(out_.running.states, i).kind != Kind::kWaiting)
        return false;
    out_.running.plan.unserved[static_cast<std::size_t>(dish)] = true;
    out_.running.addedDishes = {dish};
    out_.what = absl::StrCat(nth(out_.problem.dishes, dish).id, " is added");
    return true;
  }

  bool dragged() {
    const int step = pick(Kind::kWaiting, 600);
    if (step < 0) return false;
    const Minute to = planned(step).start + 5 * dice_.between(-6, 6);
    if (to < now() || to == planned(step).start) return false;
    nth(out_.problem.steps, step).pin.start = (to + 4) / 5 * 5;
    out_.what = absl::StrCat(name(step), " is dragged by ", to - planned(step).start);
    return true;
  }

  Dice dice_;
  Disturbed out_;
};

}  // namespace

Running asPlanned(const Problem& problem, const Schedule& plan, Minute now) {
  Running running;
  running.plan = plan;
  running.now = now;
  running.states.resize(problem.steps.size());
  for (std::size_t i = 0; i < problem.steps.size(); ++i) {
    const Placement& at = plan.steps[i];
    StepState& state = running.states[i];
    if (plan.unserved[static_cast<std::size_t>(problem.steps[i].dish)] || at.start > now) continue;
    state.kind = at.end <= now ? StepState::Kind::kFinished : StepState::Kind::kStarted;
    state.start = at.start;
    state.end = at.end;
  }
  return running;
}

Disturbed randomDisturbance(const Problem& problem, const Schedule& plan, std::uint64_t seed) {
  return Disturber(problem, plan, seed).run();
}

}  // namespace suppertide::planning
