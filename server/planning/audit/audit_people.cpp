// Cooks and the things they use, minute by minute.
#include <algorithm>

#include "server/planning/audit/replay.h"

namespace suppertide::planning {
namespace {

bool isThere(const Cook& cook, Minute minute) {
  return std::any_of(cook.available.begin(), cook.available.end(),
                     [&](const Interval<Minute>& span) { return span.contains(minute); });
}

// A cook must be named, exist and be one of those asked for.
void auditAbility(Replay& replay, int index) {
  const Mode& mode = replay.mode(index);
  const Placement& at = replay.at(index);
  const bool exists = at.cook >= 0 && at.cook < static_cast<int>(replay.problem.cooks.size());
  if (mode.attention == 0) {
    if (at.cook != -1 && !exists) replay.breaches.push_back({Rule::kCook, index, -1, -1, at.start, 1});
    return;
  }
  const bool able = exists && std::any_of(mode.cooks.begin(), mode.cooks.end(),
                                          [&](const CookOption& option) { return option.cook == at.cook; });
  if (!able) replay.breaches.push_back({Rule::kCook, index, -1, exists ? at.cook : -1, at.start, 1});
}

void auditPresence(Replay& replay, int index, int cookIndex) {
  const Cook& cook = nth(replay.problem.cooks, cookIndex);
  BreachRun away(replay, BreachRun::Amount::kMinutes);
  for (Minute t = replay.at(index).start; t < replay.at(index).end; ++t) {
    if (isThere(cook, t)) {
      away.minute({});
    } else {
      away.minute(Breach{Rule::kCook, index, -1, cookIndex, t, 1});
    }
  }
  away.close();
}

// What one step takes of a thing of limited amount.
struct Demand {
  int step;
  int amount;
};

// The breach of this minute when `taken` and the demands present exceed `capacity`.
std::optional<Breach> overload(const Replay& replay, const std::vector<Demand>& demands, Breach breach,
                               int taken, int capacity) {
  int sum = taken;
  for (const Demand& demand : demands) {
    if (!replay.isAt(demand.step, breach.minute)) continue;
    sum += demand.amount;
    if (breach.step < 0 || replay.at(demand.step).start >= replay.at(breach.step).start) {
      breach.otherStep = breach.step;
      breach.step = demand.step;
    } else {
      breach.otherStep = demand.step;
    }
  }
  if (sum <= capacity || breach.step < 0) return std::nullopt;
  breach.amount = sum - capacity;
  return breach;
}

}  // namespace

void auditCooks(Replay& replay) {
  for (const int i : replay.served) auditAbility(replay, i);
  for (int c = 0; c < static_cast<int>(replay.problem.cooks.size()); ++c) {
    std::vector<Demand> demands;
    for (const int i : replay.served) {
      if (replay.at(i).cook != c || replay.mode(i).attention == 0) continue;
      demands.push_back({i, replay.mode(i).attention});
      auditPresence(replay, i, c);
    }
    BreachRun run(replay, BreachRun::Amount::kPeak);
    for (Minute t = 0; t < replay.problem.limit; ++t)
      run.minute(overload(replay, demands, {Rule::kCook, -1, -1, c, t, 0}, 0, 100));
    run.close();
  }
}

void auditResources(Replay& replay) {
  for (int r = 0; r < static_cast<int>(replay.problem.resources.size()); ++r) {
    const Resource& resource = nth(replay.problem.resources, r);
    std::vector<Demand> demands;
    for (const int i : replay.served)
      for (const Use& use : replay.mode(i).uses)
        if (use.resource == r && use.amount > 0) demands.push_back({i, use.amount});
    BreachRun run(replay, BreachRun::Amount::kPeak);
    for (Minute t = 0; t < replay.problem.limit; ++t) {
      int taken = 0;
      for (const Resource::Taken& span : resource.taken)
        if (span.when.contains(t)) taken += span.amount;
      run.minute(overload(replay, demands, {Rule::kCapacity, -1, -1, r, t, 0}, taken, resource.capacity));
    }
    run.close();
  }
}

}  // namespace suppertide::planning
