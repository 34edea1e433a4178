// What the lowest tiers cost at each minute beside what is placed already: calm and empty heating.
#include <algorithm>

#include "server/base/index.h"
#include "server/planning/solver/occupancy.h"

namespace suppertide::planning {

const std::vector<int>& Occupancy::calmBefore(int cook) {
  auto [it, fresh] = calm_.try_emplace({cook, false});
  if (!fresh || (problem_.airBetweenTasks == 0 && problem_.interruptionCost == 0)) return it->second;
  std::vector<int>& costs = it->second;
  costs.assign(static_cast<std::size_t>(problem_.limit) + 1, 0);
  for (const Task& task : nth(tasks_, cook)) {
    for (Minute t = std::max(0, task.when.start + 1); t < task.when.limit; ++t)
      nth(costs, t) = std::max(nth(costs, t), problem_.interruptionCost);
    const Minute last = std::min(problem_.limit + 1, task.when.limit + problem_.airBetweenTasks);
    for (Minute t = std::max(0, task.when.limit); t < last; ++t)
      nth(costs, t) = std::max(nth(costs, t), problem_.airBetweenTasks - (t - task.when.limit));
  }
  return costs;
}

const std::vector<int>& Occupancy::calmAfter(int cook) {
  auto [it, fresh] = calm_.try_emplace({cook, true});
  if (!fresh || problem_.airBetweenTasks == 0) return it->second;
  std::vector<int>& costs = it->second;
  costs.assign(static_cast<std::size_t>(problem_.limit) + 1, 0);
  for (const Task& task : nth(tasks_, cook)) {
    const Minute first = std::max(0, task.when.start - problem_.airBetweenTasks + 1);
    for (Minute t = first; t <= task.when.start; ++t)
      nth(costs, t) = std::max(nth(costs, t), problem_.airBetweenTasks - (task.when.start - t));
  }
  return costs;
}

// The first phase of each stay, by the minute it begins.
std::vector<const Occupancy::Booking*> Occupancy::firstBookings(int oven) const {
  std::vector<const Booking*> first;
  for (const Booking& booking : nth(bookings_, oven))
    if (first.empty() || first.back()->step != booking.step) first.push_back(&booking);
  std::sort(first.begin(), first.end(), [](const Booking* a, const Booking* b) {
    return std::pair(a->when.start, a->step) < std::pair(b->when.start, b->step);
  });
  return first;
}

const std::vector<int>& Occupancy::heatBefore(int oven, int setpoint) {
  auto [it, fresh] = heat_.try_emplace({oven, setpoint});
  const Oven& data = nth(problem_.ovens, oven);
  if (!fresh || data.idleMinuteCost == 0) return it->second;
  const Minute cold = nth(data.heatFromCold, setpoint);
  std::vector<int>& costs = it->second;
  costs.assign(static_cast<std::size_t>(problem_.limit) + 1, cold * data.idleMinuteCost);
  for (const Booking& booking : nth(bookings_, oven)) {
    for (Minute t = std::max(0, booking.when.start + 1); t <= std::min(booking.when.limit, problem_.limit);
         ++t)
      nth(costs, t) = 0;
    const Minute last = std::min(problem_.limit, booking.when.limit + cold - 1);
    for (Minute t = std::max(0, booking.when.limit + 1); t <= last; ++t)
      nth(costs, t) = std::min(nth(costs, t), (t - booking.when.limit) * data.idleMinuteCost);
  }
  return costs;
}

const std::vector<int>& Occupancy::heatAfter(int oven) {
  auto [it, fresh] = heat_.try_emplace({oven, -1});
  const Oven& data = nth(problem_.ovens, oven);
  if (!fresh || data.idleMinuteCost == 0) return it->second;
  std::vector<int>& costs = it->second;
  costs.assign(static_cast<std::size_t>(problem_.limit) + 1, 0);
  Minute lastUse = -kNoLimit;
  for (const Booking* booking : firstBookings(oven)) {
    const Minute start = booking->when.start;
    const Minute pause = std::min(start - lastUse, nth(data.heatFromCold, booking->setpoint));
    // Leaving within that pause before it saves the rest of it.
    for (Minute t = std::max({0, lastUse, start - pause + 1}); booking->entering && t <= start; ++t)
      nth(costs, t) = std::min(nth(costs, t), (start - t - pause) * data.idleMinuteCost);
    for (const Booking& other : nth(bookings_, oven))
      if (other.step == booking->step) lastUse = std::max(lastUse, other.when.limit);
  }
  return costs;
}

}  // namespace suppertide::planning
