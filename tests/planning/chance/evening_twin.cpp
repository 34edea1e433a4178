#include "tests/planning/chance/evening_twin.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <tuple>
#include <utility>

#include "server/base/index.h"

namespace suppertide::planning {
namespace {

constexpr double kNever = std::numeric_limits<double>::infinity();

bool has(const std::vector<int>& modes, int mode) {
  return modes.empty() || std::count(modes.begin(), modes.end(), mode) > 0;
}

}  // namespace

// A scaled beta with weight 4 on the likely value, as a ratio of two gamma draws.
double EveningTwin::pert(double least, double most) {
  if (least >= most) return 1;
  std::gamma_distribution<double> up(1 + 4 * (1 - least) / (most - least));
  std::gamma_distribution<double> down(1 + 4 * (most - 1) / (most - least));
  const double a = up(engine_);
  const double b = down(engine_);
  return least + (most - least) * a / (a + b);
}

const Mode& EveningTwin::mode(int step) const {
  return problem_.steps[at(step)].modes[at(schedule_.steps[at(step)].mode)];
}
bool EveningTwin::served(int step) const {
  return !schedule_.unserved[at(problem_.steps[at(step)].dish)];
}
double EveningTwin::planned(int step, Edge edge) const {
  const Placement& place = schedule_.steps[at(step)];
  return edge == Edge::kStart ? place.start : place.end;
}
double EveningTwin::happened(int step, Edge edge) const {
  return edge == Edge::kStart ? start_[at(step)] : end_[at(step)];
}

// In the plan.
bool EveningTwin::comesBefore(int first, int second) const {
  const Placement& a = schedule_.steps[at(first)];
  const Placement& b = schedule_.steps[at(second)];
  return std::tuple(a.start, a.end, first) < std::tuple(b.start, b.end, second);
}

void EveningTwin::run() {
  std::vector<double> unknowns;
  std::normal_distribution<double> normal;
  for (const Unknown& unknown : problem_.unknowns)
    unknowns.push_back(std::exp(unknown.sigma * normal(engine_)));
  std::vector<double> factors;
  for (int i = 0; i < static_cast<int>(problem_.steps.size()); ++i) {
    factors.push_back(1);
    if (!served(i)) continue;
    const Spread& spread = mode(i).spread;
    factors.back() = pert(spread.least, spread.most);
    for (const Spread::Follows& follows : spread.follows)
      factors.back() *= std::pow(unknowns[at(follows.unknown)], follows.power);
  }
  run(std::move(factors));
}

void EveningTwin::run(std::vector<double> factors) {
  factors_ = std::move(factors);
  start_.assign(problem_.steps.size(), kNever);
  end_.assign(problem_.steps.size(), kNever);
  agenda_.clear();
  for (int i = 0; i < static_cast<int>(problem_.steps.size()); ++i) {
    if (!served(i)) continue;
    note(planned(i, Edge::kStart));
    note(planned(i, Edge::kEnd));
  }
  std::make_heap(agenda_.begin(), agenda_.end(), std::greater<>());
  double last = -1;
  while (!agenda_.empty()) {
    std::pop_heap(agenda_.begin(), agenda_.end(), std::greater<>());
    const double now = agenda_.back();
    agenda_.pop_back();
    if (now <= last) continue;
    last = now;
    lookAround(now);
  }
}

// Ends and starts whatever may, until nothing more happens in this moment.
void EveningTwin::lookAround(double now) {
  const auto later = [&](double moment) {
    if (moment <= now) return;
    note(moment);
    std::push_heap(agenda_.begin(), agenda_.end(), std::greater<>());
  };
  const auto follow = [&](int step, Edge edge) {
    for (const Gap& gap : problem_.gaps) {
      if (gap.from != step || gap.fromEdge != edge) continue;
      later(now + gap.least);
      if (gap.most < kNoLimit) later(now + gap.most);
    }
    for (const Separation& separation : problem_.separations)
      if (separation.other == step && separation.cleaning < kNoLimit) later(now + separation.cleaning);
    if (!mode(step).oven) return;
    const OvenNeed& need = *mode(step).oven;
    Minute passed = 0;
    for (const OvenPhase& phase : need.phases) {
      passed += phase.length;
      for (const Minute change : problem_.ovens[at(need.oven)].change[at(phase.setpoint)])
        later(now + change + (edge == Edge::kStart ? passed : 0));
    }
  };
  for (bool changed = true; changed;) {
    changed = false;
    for (int i = 0; i < static_cast<int>(problem_.steps.size()); ++i) {
      if (!served(i)) continue;
      if (start_[at(i)] < kNever && end_[at(i)] == kNever && ownEnd(i) <= now &&
          gapsAllow(i, Edge::kEnd, now)) {
        end_[at(i)] = now;
        follow(i, Edge::kEnd);
        changed = true;
      } else if (start_[at(i)] == kNever && mayStart(i, now)) {
        start_[at(i)] = now;
        follow(i, Edge::kStart);
        later(ownEnd(i));
        changed = true;
      }
    }
  }
}

bool EveningTwin::mayStart(int step, double now) const {
  return timeHasCome(step, now) && gapsAllow(step, Edge::kStart, now) && cookIsFree(step, now) &&
         thingsAreFree(step, now) && ovenIsFree(step, now) && isKeptApart(step, now);
}

bool EveningTwin::timeHasCome(int step, double now) const {
  if (schedule_.steps[at(step)].cook >= 0 && mode(step).attention > 0) {
    for (const Interval<Minute>& there : problem_.cooks[at(schedule_.steps[at(step)].cook)].available)
      if (there.contains(schedule_.steps[at(step)].start) && now < there.start) return false;
  }
  if (now >= planned(step, Edge::kStart)) return true;
  return std::any_of(problem_.gaps.begin(), problem_.gaps.end(), [&](const Gap& gap) {
    return gap.to == step && gap.toEdge == Edge::kStart && gap.most < kNoLimit && served(gap.from) &&
           planned(gap.from, gap.fromEdge) <= planned(step, Edge::kStart) &&
           now >= happened(gap.from, gap.fromEdge) + gap.most;
  });
}

bool EveningTwin::gapsAllow(int step, Edge edge, double now) const {
  return std::all_of(problem_.gaps.begin(), problem_.gaps.end(), [&](const Gap& gap) {
    return gap.to != step || gap.toEdge != edge || !served(gap.from) ||
           planned(gap.from, gap.fromEdge) > planned(step, edge) ||
           now >= happened(gap.from, gap.fromEdge) + gap.least;
  });
}

double EveningTwin::soonestStart(int step, double now) const {
  double soonest = std::max(now, planned(step, Edge::kStart));
  for (const Gap& gap : problem_.gaps) {
    if (gap.to != step || gap.toEdge != Edge::kStart || !served(gap.from) ||
        planned(gap.from, gap.fromEdge) > planned(step, Edge::kStart))
      continue;
    double from = happened(gap.from, gap.fromEdge);
    if (from == kNever) {
      const double start = start_[at(gap.from)] < kNever ? start_[at(gap.from)] : soonestStart(gap.from, now);
      from = gap.fromEdge == Edge::kStart ? start : ownEnd(gap.from, start);
    }
    soonest = std::max(soonest, from + gap.least);
  }
  return soonest;
}

bool EveningTwin::overtakes(int step, int before, double now, Minute lag) const {
  return start_[at(before)] == kNever && soonestStart(before, now) >= ownEnd(step, now) + lag;
}

// What comes before in the plan and is not done keeps its part of the cook's attention.
bool EveningTwin::cookIsFree(int step, double now) const {
  const Placement& place = schedule_.steps[at(step)];
  if (place.cook < 0 || mode(step).attention == 0 || place.start == place.end) return true;
  int kept = mode(step).attention;
  for (int i = 0; i < static_cast<int>(problem_.steps.size()); ++i)
    if (served(i) && i != step && schedule_.steps[at(i)].cook == place.cook &&
        planned(i, Edge::kStart) < planned(i, Edge::kEnd) && comesBefore(i, step) && end_[at(i)] == kNever &&
        !overtakes(step, i, now, 0))
      kept += mode(i).attention;
  return kept <= 100;
}

bool EveningTwin::thingsAreFree(int step, double now) const {
  if (planned(step, Edge::kStart) == planned(step, Edge::kEnd)) return true;
  for (const Use& use : mode(step).uses) {
    const Resource& resource = problem_.resources[at(use.resource)];
    if (resource.usedUp) continue;
    int kept = 0;
    for (int i = 0; i < static_cast<int>(problem_.steps.size()); ++i)
      if (i == step || (served(i) && planned(i, Edge::kStart) < planned(i, Edge::kEnd) &&
                        comesBefore(i, step) && end_[at(i)] == kNever && !overtakes(step, i, now, 0)))
        for (const Use& other : mode(i).uses)
          if (other.resource == use.resource) kept += other.amount;
    for (const Resource::Taken& taken : resource.taken)
      if (taken.when.start <= planned(step, Edge::kStart) && now < taken.when.limit) kept += taken.amount;
    if (kept > resource.capacity) return false;
  }
  return true;
}

bool EveningTwin::ovenIsFree(int step, double now) const {
  if (!mode(step).oven || planned(step, Edge::kStart) == planned(step, Edge::kEnd)) return true;
  const OvenNeed& need = *mode(step).oven;
  const Oven& oven = problem_.ovens[at(need.oven)];
  const int setpoint = need.phases.front().setpoint;
  std::vector<Load> inside = {need.load};
  for (int i = 0; i < static_cast<int>(problem_.steps.size()); ++i) {
    if (i == step || !served(i) || !mode(i).oven || mode(i).oven->oven != need.oven ||
        !comesBefore(i, step) || planned(i, Edge::kStart) == planned(i, Edge::kEnd))
      continue;
    const std::vector<OvenPhase>& phases = mode(i).oven->phases;
    const Minute back = mode(i).oven->preheated
                            ? oven.change[at(need.phases.back().setpoint)][at(phases.front().setpoint)]
                            : 0;
    if (overtakes(step, i, now, back)) continue;
    if (end_[at(i)] == kNever) inside.push_back(mode(i).oven->load);
    Minute passed = 0;
    for (std::size_t k = 0; k < phases.size(); ++k) {
      passed += phases[k].length;
      const bool last = k + 1 == phases.size();
      const double plannedOver = last ? planned(i, Edge::kEnd) : planned(i, Edge::kStart) + passed;
      if (plannedOver > planned(step, Edge::kStart) || phases[k].setpoint == setpoint) continue;
      const double over = last ? end_[at(i)] : start_[at(i)] + passed;
      if (now < over + (need.preheated ? oven.change[at(phases[k].setpoint)][at(setpoint)] : 0)) return false;
    }
  }
  return oven.racks->fits(inside);
}

bool EveningTwin::isKeptApart(int step, double now) const {
  for (const Separation& separation : problem_.separations) {
    if (separation.clean != step && separation.other != step) continue;
    if (!served(separation.clean) || !served(separation.other)) continue;
    if (!has(separation.cleanModes, schedule_.steps[at(separation.clean)].mode) ||
        !has(separation.otherModes, schedule_.steps[at(separation.other)].mode))
      continue;
    const bool cleanFirst = planned(separation.clean, Edge::kEnd) <= planned(separation.other, Edge::kStart);
    if (cleanFirst && step == separation.other && now < end_[at(separation.clean)]) return false;
    if (!cleanFirst && step == separation.clean && now < end_[at(separation.other)] + separation.cleaning)
      return false;
  }
  return true;
}

double EveningTwin::ownEnd(int step, double start) const {
  const Placement& place = schedule_.steps[at(step)];
  const LengthTable& table = mode(step).length;
  Length range = table.at(static_cast<Minute>(start));
  if (!range.possible()) range = table.at(place.start);
  const double soonest = start + range.shortest * factors_[at(step)];
  if (problem_.steps[at(step)].kind == StepKind::kFerment)
    return std::clamp<double>(place.end, soonest, start + range.longest * factors_[at(step)]);
  const Length asPlanned = table.at(place.start);
  if (asPlanned.shortest < asPlanned.longest) return std::max<double>(place.end, soonest);
  return start + (place.end - place.start) * factors_[at(step)];
}

bool EveningTwin::inTime(const std::vector<int>& course, Minute grace) const {
  return std::all_of(course.begin(), course.end(), [&](int dish) {
    const Dish& what = problem_.dishes[at(dish)];
    return schedule_.unserved[at(dish)] || end_[at(what.lastStep)] <= what.serve + grace + 1e-6;
  });
}

}  // namespace suppertide::planning
