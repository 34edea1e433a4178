#include "server/planning/audit/audit.h"

#include <algorithm>
#include <cassert>

#include "server/planning/audit/replay.h"

namespace suppertide::planning {

bool Replay::isServed(int index) const {
  return std::binary_search(served.begin(), served.end(), index);
}

void BreachRun::minute(const std::optional<Breach>& now) {
  const bool goesOn = open_ && now && open_->rule == now->rule && open_->step == now->step &&
                      open_->otherStep == now->otherStep;
  if (!goesOn) {
    close();
    open_ = now;
    if (open_ && amount_ == Amount::kMinutes) open_->amount = 1;
    return;
  }
  open_->amount = amount_ == Amount::kMinutes ? open_->amount + 1 : std::max(open_->amount, now->amount);
}

void BreachRun::close() {
  if (open_) replay_.breaches.push_back(*open_);
  open_.reset();
}

namespace {

// Fills `served`; a step in a mode that does not exist cannot be replayed and is reported here.
void findServed(Replay& replay) {
  for (int i = 0; i < static_cast<int>(replay.problem.steps.size()); ++i) {
    const Step& step = replay.step(i);
    if (replay.schedule.unserved[static_cast<std::size_t>(step.dish)]) continue;
    const int mode = replay.at(i).mode;
    if (mode >= 0 && mode < static_cast<int>(step.modes.size())) {
      replay.served.push_back(i);
    } else {
      replay.breaches.push_back({Rule::kModeLink, i, -1, -1, replay.at(i).start, 1});
    }
  }
}

}  // namespace

std::vector<Breach> audit(const Problem& problem, const Schedule& schedule) {
  assert(schedule.steps.size() == problem.steps.size());
  assert(schedule.unserved.size() == problem.dishes.size());
  Replay replay{problem, schedule, {}, {}};
  findServed(replay);
  auditBounds(replay);
  auditGaps(replay);
  auditServing(replay);
  auditDecisions(replay);
  auditCooks(replay);
  auditResources(replay);
  auditOvens(replay);
  std::stable_sort(replay.breaches.begin(), replay.breaches.end(),
                   [](const Breach& a, const Breach& b) { return a.minute < b.minute; });
  return replay.breaches;
}

}  // namespace suppertide::planning
