// Who waits for whom at ovens: until the setpoint has changed, or a rack is free.
#include <algorithm>
#include <cstddef>

#include "server/planning/chance/plan_order.h"

namespace suppertide::planning {
namespace {

struct Stay {
  int step;
  Interval<Minute> when;
  const OvenNeed* need;
};

class OvenOrder {
 public:
  OvenOrder(const Oven& oven, std::vector<Stay> stays, PlanOrder& order)
      : oven_(oven), stays_(std::move(stays)), order_(order) {
    std::stable_sort(stays_.begin(), stays_.end(),
                     [](const Stay& a, const Stay& b) { return a.when.start < b.when.start; });
  }

  void run() {
    for (std::size_t b = 0; b < stays_.size(); ++b)
      for (std::size_t a = 0; a < b; ++a) follow(stays_[a], stays_[b]);
  }

 private:
  // `b` enters after each phase of `a` that was planned to be over by then.
  void follow(const Stay& a, const Stay& b) {
    const int setpoint = b.need->phases.front().setpoint;
    const bool apart = a.when.limit <= b.when.start;
    bool inTheWay = apart && crowds(a, b);
    Minute lag = 0;
    Minute phaseLimit = a.when.start;
    for (std::size_t k = 0; k < a.need->phases.size(); ++k) {
      const OvenPhase& phase = a.need->phases[k];
      phaseLimit = k + 1 == a.need->phases.size() ? a.when.limit : phaseLimit + phase.length;
      if (phaseLimit > b.when.start) break;
      if (phase.setpoint == setpoint) continue;
      const Minute change = b.need->preheated ? changeTime(phase.setpoint, setpoint) : 0;
      if (!apart) {
        order_.follows.push_back({startOf(a.step), startOf(b.step), phaseLimit - a.when.start + change});
      } else {
        inTheWay = true;
        lag = std::max(lag, change - (a.when.limit - phaseLimit));
      }
    }
    if (!inTheWay) return;
    const int back = a.need->phases.front().setpoint;
    order_.turns.push_back(
        {a.step, b.step, lag, a.need->preheated ? changeTime(b.need->phases.back().setpoint, back) : 0});
  }

  Minute changeTime(int from, int to) const {
    return oven_.change[static_cast<std::size_t>(from)][static_cast<std::size_t>(to)];
  }

  // Whether `b` would not fit if `a` were still in when it enters.
  bool crowds(const Stay& a, const Stay& b) const {
    std::vector<Load> loads = {a.need->load, b.need->load};
    for (const Stay& other : stays_)
      if (other.step != b.step && other.when.contains(b.when.start)) loads.push_back(other.need->load);
    return !oven_.racks->fits(loads);
  }

  const Oven& oven_;
  std::vector<Stay> stays_;
  PlanOrder& order_;
};

}  // namespace

void followOvens(const Problem& problem, const Schedule& schedule, PlanOrder& order) {
  std::vector<std::vector<Stay>> byOven(problem.ovens.size());
  for (int i = 0; i < static_cast<int>(problem.steps.size()); ++i) {
    const Placement& at = schedule.steps[static_cast<std::size_t>(i)];
    if (!isServed(problem, schedule, i) || at.start == at.end) continue;
    const auto& need =
        problem.steps[static_cast<std::size_t>(i)].modes[static_cast<std::size_t>(at.mode)].oven;
    if (need) byOven[static_cast<std::size_t>(need->oven)].push_back({i, {at.start, at.end}, &*need});
  }
  for (std::size_t o = 0; o < byOven.size(); ++o)
    OvenOrder(problem.ovens[o], std::move(byOven[o]), order).run();
}

}  // namespace suppertide::planning
