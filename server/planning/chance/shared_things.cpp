#include "server/planning/chance/shared_things.h"

#include "server/base/index.h"

namespace suppertide::planning {
namespace {}  // namespace

SharedThings::SharedThings(const Problem& problem, const Schedule& schedule, const PlanOrder& order,
                           const std::vector<int>& eventOrder)
    : steps_(problem.steps.size()) {
  std::vector<std::vector<Taker>> byCook(problem.cooks.size());
  std::vector<std::vector<Taker>> byResource(problem.resources.size());
  for (std::size_t r = 0; r < problem.resources.size(); ++r)
    for (const Resource::Taken& taken : problem.resources[r].taken)
      byResource[r].push_back(
          {-1, taken.amount, static_cast<float>(taken.when.start), static_cast<float>(taken.when.limit)});
  std::vector<bool> asked(problem.steps.size(), false);
  for (const int event : eventOrder) {
    const int step = event / 2;
    const Placement& place = schedule.steps[at(step)];
    if (event % 2 != 0) continue;
    asked[at(step)] = true;
    if (place.start == place.end) continue;
    const Mode& mode = problem.steps[at(step)].modes[at(place.mode)];
    const auto add = [&](std::vector<Taker>& takers, int amount, int capacity) {
      steps_[at(step)].needs.push_back({amount, capacity, takers});
      takers.push_back({step, amount, 0, 0});
    };
    if (place.cook >= 0 && mode.attention > 0) add(byCook[at(place.cook)], mode.attention, 100);
    for (const Use& use : mode.uses)
      if (use.amount > 0 && !problem.resources[at(use.resource)].usedUp)
        add(byResource[at(use.resource)], use.amount, problem.resources[at(use.resource)].capacity);
    for (const Turn& turn : order.turns)
      if (turn.second == step && asked[at(turn.first)])
        steps_[at(step)].turns.push_back(
            {turn.first, static_cast<float>(turn.lagAfter), static_cast<float>(turn.lagBefore)});
  }
}

SharedThings::LaneFlags SharedThings::crowdedLanes(int step, const Lanes& starts, const Lanes& ends,
                                                   const std::vector<Lanes>& times) const {
  std::array<int, kLanes> over{};
  for (const Need& need : steps_[at(step)].needs) {
    std::array<int, kLanes> sums;
    sums.fill(need.amount - need.capacity);
    for (const Taker& taker : need.before) {
      Lanes in;
      Lanes out;
      in.fill(taker.start);
      out.fill(taker.end);
      if (taker.step >= 0) in = times[at(startOf(taker.step))];
      if (taker.step >= 0) out = times[at(endOf(taker.step))];
      for (std::size_t lane = 0; lane < kLanes; ++lane)
        sums[lane] += static_cast<int>(out[lane] > starts[lane]) * static_cast<int>(in[lane] < ends[lane]) *
                      taker.amount;
    }
    for (std::size_t lane = 0; lane < kLanes; ++lane) over[lane] |= static_cast<int>(sums[lane] > 0);
  }
  for (const Other& turn : steps_[at(step)].turns) {
    const Lanes& in = times[at(startOf(turn.step))];
    const Lanes& out = times[at(endOf(turn.step))];
    for (std::size_t lane = 0; lane < kLanes; ++lane)
      over[lane] |= static_cast<int>(starts[lane] < out[lane] + turn.lagAfter) *
                    static_cast<int>(ends[lane] + turn.lagBefore > in[lane]);
  }
  LaneFlags crowded{};
  for (std::size_t lane = 0; lane < kLanes; ++lane) crowded[lane] = over[lane] != 0;
  return crowded;
}

int SharedThings::peakOf(const Need& need, float start, float end, const std::vector<Lanes>& times,
                         std::size_t lane) {
  const auto takenAt = [&](float when) {
    int sum = need.amount;
    for (const Taker& taker : need.before)
      if (startOfTaker(taker, times, lane) <= when && endOfTaker(taker, times, lane) > when)
        sum += taker.amount;
    return sum;
  };
  int peak = takenAt(start);
  for (const Taker& taker : need.before) {
    const float begins = startOfTaker(taker, times, lane);
    if (begins > start && begins < end) peak = std::max(peak, takenAt(begins));
  }
  return peak;
}

int SharedThings::releaserOf(int step, float when, const std::vector<Lanes>& times, std::size_t lane) const {
  for (const Need& need : steps_[at(step)].needs)
    for (const Taker& taker : need.before)
      if (taker.step >= 0 && times[at(endOf(taker.step))][lane] == when) return endOf(taker.step);
  for (const Other& turn : steps_[at(step)].turns)
    if (times[at(endOf(turn.step))][lane] + turn.lagAfter == when) return endOf(turn.step);
  return -1;
}

}  // namespace suppertide::planning
