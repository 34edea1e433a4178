#include "server/planning/audit/replay.h"

#include <algorithm>

namespace suppertide::planning {

Replay::Replay(const Problem& problemToKeep, const Schedule& scheduleToReplay)
    : problem(problemToKeep), schedule(scheduleToReplay) {
  for (int i = 0; i < sizeOf(problem.steps); ++i)
    if (!schedule.unserved[static_cast<std::size_t>(step(i).dish)] && modeExists(i)) served.push_back(i);
}

bool Replay::modeExists(int index) const {
  return at(index).mode >= 0 && at(index).mode < sizeOf(step(index).modes);
}

bool Replay::isServed(int index) const {
  return std::binary_search(served.begin(), served.end(), index);
}

void BreachRun::minute(const std::optional<Breach>& now) {
  const bool goesOn = open_ && now && open_->step == now->step && open_->otherStep == now->otherStep;
  if (!goesOn) {
    close();
    open_ = now;
    if (open_ && amount_ == Amount::kMinutes) open_->amount = 1;
    return;
  }
  open_->amount = amount_ == Amount::kMinutes ? open_->amount + 1 : std::max(open_->amount, now->amount);
}

void BreachRun::close() {
  if (open_) findings_.add(*open_);
  open_.reset();
}

std::optional<Breach> lengthBreach(const Replay& replay, int index) {
  const Placement& at = replay.at(index);
  const Length allowed = replay.mode(index).length.at(at.start);
  const Minute length = at.end - at.start;
  Breach breach;
  breach.step = index;
  if (!allowed.possible()) {
    breach.minute = at.start;
    breach.amount = std::max(1, length);
  } else if (length < allowed.shortest) {
    breach.minute = at.end;
    breach.amount = allowed.shortest - length;
  } else if (length > allowed.longest) {
    breach.minute = at.start + allowed.longest;
    breach.amount = length - allowed.longest;
  } else {
    return std::nullopt;
  }
  return breach;
}

std::optional<Breach> overload(const Replay& replay, const std::vector<Demand>& demands, Breach at, int taken,
                               int capacity) {
  int sum = taken;
  for (const Demand& demand : demands) {
    if (!replay.isAt(demand.step, at.minute)) continue;
    sum += demand.amount;
    if (at.step < 0 || replay.at(demand.step).start >= replay.at(at.step).start) {
      at.otherStep = at.step;
      at.step = demand.step;
    } else {
      at.otherStep = demand.step;
    }
  }
  if (sum <= capacity || at.step < 0) return std::nullopt;
  at.amount = sum - capacity;
  return at;
}

}  // namespace suppertide::planning
