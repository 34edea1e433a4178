#include "server/planning/explain/oven_stay.h"

#include <algorithm>

namespace suppertide::planning {
namespace {

// Whether `late` enters before the oven has changed over from where `early` stood.
bool entersTooSoon(const Oven& oven, const OvenStay& early, const OvenStay& late) {
  if (!late.preheated) return false;
  const int wanted = late.phases.front().setpoint;
  return std::any_of(early.phases.begin(), early.phases.end(), [&](const OvenStay::Phase& phase) {
    const Minute change = nth(nth(oven.change, phase.setpoint), wanted);
    return phase.setpoint != wanted && phase.when.limit <= late.when.start &&
           late.when.start < phase.when.limit + change;
  });
}

}  // namespace

std::optional<OvenStay> stayOf(const Problem& problem, int step, const Placement& at) {
  const Mode& mode = nth(nth(problem.steps, step).modes, at.mode);
  if (!mode.oven || at.start >= at.end) return std::nullopt;
  OvenStay stay{step, mode.oven->oven, {at.start, at.end}, {}, mode.oven->preheated, mode.oven->load};
  Minute start = at.start;
  for (const OvenPhase& phase : mode.oven->phases) {
    const Minute limit = phase.length > 0 ? std::min(at.end, start + phase.length) : at.end;
    if (start < limit) stay.phases.push_back({phase.setpoint, {start, limit}});
    start = limit;
  }
  if (stay.phases.empty()) return std::nullopt;
  stay.phases.back().when.limit = at.end;
  return stay;
}

std::vector<std::vector<OvenStay>> staysByOven(const Problem& problem, const Schedule& schedule) {
  std::vector<std::vector<OvenStay>> stays(problem.ovens.size());
  for (int i = 0; i < static_cast<int>(problem.steps.size()); ++i) {
    if (schedule.unserved[static_cast<std::size_t>(nth(problem.steps, i).dish)]) continue;
    if (auto stay = stayOf(problem, i, nth(schedule.steps, i)))
      stays[static_cast<std::size_t>(stay->oven)].push_back(*stay);
  }
  for (auto& one : stays)
    std::stable_sort(one.begin(), one.end(),
                     [](const OvenStay& a, const OvenStay& b) { return a.when.start < b.when.start; });
  return stays;
}

bool setpointsClash(const Oven& oven, const OvenStay& a, const OvenStay& b) {
  for (const OvenStay::Phase& mine : a.phases)
    for (const OvenStay::Phase& other : b.phases)
      if (mine.setpoint != other.setpoint && mine.when.overlaps(other.when)) return true;
  return entersTooSoon(oven, a, b) || entersTooSoon(oven, b, a);
}

bool racksOverflow(const Oven& oven, const std::vector<const OvenStay*>& stays, Interval<Minute> when) {
  // What stands in the oven only grows where a stay begins.
  for (const OvenStay* entering : stays) {
    const Minute minute = std::max(when.start, entering->when.start);
    if (!when.contains(minute) || !entering->when.contains(minute)) continue;
    std::vector<Load> loads;
    for (const OvenStay* stay : stays)
      if (stay->when.contains(minute)) loads.push_back(stay->load);
    if (!oven.racks->fits(loads)) return true;
  }
  return false;
}

}  // namespace suppertide::planning
