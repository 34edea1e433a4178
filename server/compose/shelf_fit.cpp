#include "server/compose/shelf_fit.h"

#include <algorithm>

#include "server/base/index.h"
#include "server/kitchen/rack_answer.h"

namespace suppertide::compose {
namespace {

// What addThings made the oven's rack rule.
const ShelfFit& shelvesOf(const Composition& composition, int oven) {
  return static_cast<const ShelfFit&>(*composition.problem.ovens[at(oven)].racks);
}

bool isAlike(const kitchen::Pan& a, const kitchen::Pan& b) {
  return a.widthMm == b.widthMm && a.depthMm == b.depthMm && a.heightMm == b.heightMm;
}

// Whether the mode puts such pans into the oven, however many in one load.
bool putsInto(const planning::Mode& mode, int oven, const kitchen::Pan& pan) {
  return mode.oven && mode.oven->oven == oven && isAlike(panOf(mode.oven->load), pan);
}

// The planned steps whose pans they are, in the plan's order.
v1::RackDoubt doubtOf(const Composition& composition, const planning::Schedule& schedule, int oven,
                      const std::vector<kitchen::Pan>& pans) {
  v1::RackDoubt doubt;
  doubt.set_oven_id(composition.problem.ovens[at(oven)].id);
  std::vector<int> steps;
  for (int step = 0; step < static_cast<int>(composition.problem.steps.size()); ++step) {
    const planning::Placement& placed = schedule.steps[at(step)];
    const bool served = !schedule.unserved[at(composition.problem.steps[at(step)].dish)];
    if (!served || placed.start == placed.end) continue;
    const planning::Mode& mode = composition.problem.steps[at(step)].modes[at(placed.mode)];
    const bool meant = std::any_of(pans.begin(), pans.end(),
                                   [&](const kitchen::Pan& pan) { return putsInto(mode, oven, pan); });
    if (meant) steps.push_back(step);
  }
  std::stable_sort(steps.begin(), steps.end(),
                   [&](int a, int b) { return schedule.steps[at(a)].start < schedule.steps[at(b)].start; });
  for (const int step : steps) doubt.add_step_ids(composition.stepId(step));
  return doubt;
}

}  // namespace

bool ShelfFit::fits(const std::vector<planning::Load>& loads) const {
  std::vector<kitchen::Pan> pans;
  for (const planning::Load& load : loads) pans.push_back(panOf(load));
  const kitchen::RackAnswer answer = kitchen::rackAnswer(oven_, pans);
  if (answer == kitchen::RackAnswer::kUnproven) {
    const std::lock_guard lock(mutex_);
    if (doubts_.size() < kMostDoubts) doubts_.push_back(std::move(pans));
  }
  return answer == kitchen::RackAnswer::kYes;
}

std::vector<std::vector<kitchen::Pan>> ShelfFit::doubts() const {
  const std::lock_guard lock(mutex_);
  return doubts_;
}

bool isDoubted(const Composition& composition, int oven, int step) {
  for (const auto& pans : shelvesOf(composition, oven).doubts())
    for (const kitchen::Pan& pan : pans)
      for (const planning::Mode& mode : composition.problem.steps[at(step)].modes)
        if (putsInto(mode, oven, pan)) return true;
  return false;
}

bool anyDoubts(const Composition& composition) {
  for (int oven = 0; oven < static_cast<int>(composition.problem.ovens.size()); ++oven)
    if (!shelvesOf(composition, oven).doubts().empty()) return true;
  return false;
}

void addRackDoubts(const Composition& composition, const planning::Schedule& schedule, v1::Plan& plan) {
  for (int oven = 0; oven < static_cast<int>(composition.problem.ovens.size()); ++oven)
    for (const auto& pans : shelvesOf(composition, oven).doubts()) {
      const v1::RackDoubt doubt = doubtOf(composition, schedule, oven, pans);
      if (doubt.step_ids().empty()) continue;
      const bool told = std::any_of(
          plan.rack_doubts().begin(), plan.rack_doubts().end(),
          [&](const v1::RackDoubt& one) { return one.SerializeAsString() == doubt.SerializeAsString(); });
      if (!told) *plan.add_rack_doubts() = doubt;
    }
}

}  // namespace suppertide::compose
