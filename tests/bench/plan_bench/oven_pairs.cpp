#include "tests/bench/plan_bench/oven_pairs.h"

#include <algorithm>
#include <vector>

namespace suppertide::planning {
namespace {

// A load from minute 0, its phases as they follow each other.
struct Stay {
  const OvenNeed& need;
  Minute length;

  int setpointAt(Minute minute) const {
    Minute limit = 0;
    for (const OvenPhase& phase : need.phases) {
      limit += phase.length;
      if (minute < limit) return phase.setpoint;
    }
    return need.phases.back().setpoint;
  }
};

bool isElastic(const Mode& mode) {
  return mode.length.rows.size() > 1 || mode.length.rows.front().shortest != mode.length.rows.front().longest;
}

// Whether `late`, entering `delay` minutes after `early`, finds its temperature.
bool maySteadilyEnter(const Oven& oven, const Stay& early, const Stay& late, Minute delay, Minute grid) {
  if (!late.need.preheated) return true;
  const int wanted = late.setpointAt(0);
  for (Minute t = 0; t < std::min(delay, early.length); t += grid) {
    const int had = early.setpointAt(t);
    const Minute since = delay - std::min(delay, t + grid);
    if (had != wanted && since < oven.change[static_cast<std::size_t>(had)][static_cast<std::size_t>(wanted)])
      return false;
  }
  return true;
}

bool mayStand(const Oven& oven, const Stay& a, const Stay& b, Minute delay, Minute grid) {
  for (Minute t = std::max(0, delay); t < std::min(a.length, delay + b.length); t += grid)
    if (a.setpointAt(t) != b.setpointAt(t - delay)) return false;
  return delay >= 0 ? maySteadilyEnter(oven, a, b, delay, grid) : maySteadilyEnter(oven, b, a, -delay, grid);
}

Minute slowest(const Oven& oven) {
  Minute most = 0;
  for (const auto& row : oven.change)
    for (const Minute minutes : row) most = std::max(most, minutes);
  return most;
}

std::optional<OvenPair> fixedPair(const Oven& oven, const Stay& a, const Stay& b, Minute grid) {
  const Minute most = a.length + slowest(oven) + grid;
  const Minute least = -(b.length + slowest(oven) + grid);
  Minute up = most;
  while (up - grid >= least && mayStand(oven, a, b, up - grid, grid)) up -= grid;
  if (up <= least) return OvenPair{};
  Minute down = least;
  while (mayStand(oven, a, b, down + grid, grid)) down += grid;
  OvenPair pair{up - a.length, -down - b.length};
  bool closed = false;
  for (Minute delay = down + grid; delay < up; delay += grid) {
    const bool may = mayStand(oven, a, b, delay, grid);
    if (may && closed) return std::nullopt;
    if (may && pair.togetherLeast > pair.togetherMost) pair.togetherLeast = delay;
    if (may) pair.togetherMost = delay;
    closed = !may && pair.togetherLeast <= pair.togetherMost;
  }
  return pair;
}

// From the end of `early` to the start of `late`, when they never stand together.
Minute apart(const Oven& oven, const OvenNeed& early, const OvenNeed& late) {
  if (!late.preheated) return 0;
  const auto wanted = static_cast<std::size_t>(late.phases.front().setpoint);
  Minute most = 0;
  Minute after = 0;
  for (auto phase = early.phases.rbegin(); phase != early.phases.rend(); ++phase) {
    most = std::max(most, oven.change[static_cast<std::size_t>(phase->setpoint)][wanted] - after);
    after += phase->length;
  }
  return most;
}

}  // namespace

std::optional<OvenPair> ovenPair(const Problem& problem, const Mode& a, const Mode& b, Minute grid) {
  if (!a.oven || !b.oven || a.oven->oven != b.oven->oven) return OvenPair{};
  const Oven& oven = problem.ovens[static_cast<std::size_t>(a.oven->oven)];
  if (!isElastic(a) && !isElastic(b))
    return fixedPair(oven, {*a.oven, a.length.rows.front().best}, {*b.oven, b.length.rows.front().best},
                     grid);
  for (const OvenPhase& one : a.oven->phases)
    for (const OvenPhase& other : b.oven->phases)
      if (one.setpoint == other.setpoint) {
        if (a.oven->phases.size() == 1 && b.oven->phases.size() == 1) return OvenPair{};
        return std::nullopt;
      }
  return OvenPair{apart(oven, *a.oven, *b.oven), apart(oven, *b.oven, *a.oven)};
}

bool mayMeet(const Step& a, const Step& b) {
  for (const Mode& one : a.modes)
    for (const Mode& other : b.modes)
      if (one.oven && other.oven && one.oven->oven == other.oven->oven) return true;
  return false;
}

int rackCount(const Oven& oven) {
  constexpr std::size_t kMost = 50;
  std::vector<Load> loads(1);
  while (loads.size() <= kMost && oven.racks->fits(loads)) loads.emplace_back();
  return static_cast<int>(loads.size()) - 1;
}

}  // namespace suppertide::planning
