// Cooks, things and ovens on one evening: when they are free for a step.
//
// Steps ask in the plan's order, and each keeps its time. So what comes later in
// the plan may go first only where it is done before what it overtakes begins:
// nobody stands idle for a dough that is slow, and nobody is kept waiting.
#pragma once

#include <algorithm>
#include <array>
#include <cstddef>
#include <limits>
#include <vector>

#include "server/planning/chance/draws.h"
#include "server/planning/chance/plan_order.h"

namespace suppertide::planning {

class SharedThings {
 public:
  // `eventOrder`: the events in the order in which steps will ask.
  SharedThings(const Problem& problem, const Schedule& schedule, const PlanOrder& order,
               const std::vector<int>& eventOrder);

  bool asks(int step) const { return !steps_[static_cast<std::size_t>(step)].empty(); }

  // Moves `starts` to the first moment from then on at which all that the step
  // needs is free until its end, `endAt(start, lane)`, and keeps `ends` by it.
  // `times` by event: of the steps that asked before it.
  template <typename EndAt>
  void firstFree(int step, const std::vector<Lanes>& times, const EndAt& endAt, Lanes& starts,
                 Lanes& ends) const {
    const LaneFlags crowded = crowdedLanes(step, starts, ends, times);
    for (std::size_t lane = 0; lane < kLanes; ++lane) {
      if (!crowded[lane]) continue;
      starts[lane] = firstFreeIn(
          step, starts[lane], [&](float start) { return endAt(start, lane); }, times, lane);
      ends[lane] = endAt(starts[lane], lane);
    }
  }

  // The end of the step that was waited for until `when`; -1 when there was none.
  int releaserOf(int step, float when, const std::vector<Lanes>& times, std::size_t lane) const;

 private:
  struct Taker {
    int step = -1;  // -1: something outside the plan, from `start` to `end`
    int amount = 0;
    float start = 0;
    float end = 0;
  };
  struct Need {
    int amount = 0;
    int capacity = 0;
    std::vector<Taker> before;
  };
  struct Other {
    int step = 0;
    float lagAfter = 0;
    float lagBefore = 0;
  };
  struct StepNeeds {
    std::vector<Need> needs;
    std::vector<Other> turns;
    bool empty() const { return needs.empty() && turns.empty(); }
  };

  using LaneFlags = std::array<bool, kLanes>;
  // Where something may be in the way: all takers that are there at any time are
  // counted as there at once. Most lanes of most steps are free, and all are looked at together.
  LaneFlags crowdedLanes(int step, const Lanes& starts, const Lanes& ends,
                         const std::vector<Lanes>& times) const;

  template <typename EndAt>
  float firstFreeIn(int step, float from, const EndAt& endAt, const std::vector<Lanes>& times,
                    std::size_t lane) const {
    const StepNeeds& needs = steps_[static_cast<std::size_t>(step)];
    float start = from;
    for (float tried = -1; tried != start;) {
      tried = start;
      for (const Need& need : needs.needs) start = freeFor(need, start, endAt, times, lane);
      for (const Other& turn : needs.turns) start = turnFor(turn, start, endAt(start), times, lane);
    }
    return start;
  }

  static constexpr float kNever = std::numeric_limits<float>::infinity();

  static float startOfTaker(const Taker& taker, const std::vector<Lanes>& times, std::size_t lane) {
    return taker.step < 0 ? taker.start : times[static_cast<std::size_t>(startOf(taker.step))][lane];
  }
  static float endOfTaker(const Taker& taker, const std::vector<Lanes>& times, std::size_t lane) {
    return taker.step < 0 ? taker.end : times[static_cast<std::size_t>(endOf(taker.step))][lane];
  }

  template <typename EndAt>
  static float freeFor(const Need& need, float from, const EndAt& endAt, const std::vector<Lanes>& times,
                       std::size_t lane) {
    float start = from;
    while (true) {
      const float end = endAt(start);
      int sum = need.amount;
      float next = kNever;
      for (const Taker& taker : need.before) {
        const float takerEnd = endOfTaker(taker, times, lane);
        if (takerEnd <= start || startOfTaker(taker, times, lane) >= end) continue;
        sum += taker.amount;
        next = std::min(next, takerEnd);
      }
      const bool fits = sum <= need.capacity || peakOf(need, start, end, times, lane) <= need.capacity;
      if (fits || next == kNever) return start;
      start = next;
    }
  }

  static int peakOf(const Need& need, float start, float end, const std::vector<Lanes>& times,
                    std::size_t lane);
  static float turnFor(const Other& turn, float start, float end, const std::vector<Lanes>& times,
                       std::size_t lane) {
    const float in = times[static_cast<std::size_t>(startOf(turn.step))][lane];
    const float out = times[static_cast<std::size_t>(endOf(turn.step))][lane] + turn.lagAfter;
    return start >= out || end + turn.lagBefore <= in ? start : out;
  }

  std::vector<StepNeeds> steps_;
};

}  // namespace suppertide::planning
