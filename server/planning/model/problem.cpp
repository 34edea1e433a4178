#include "server/planning/model/problem.h"

#include <algorithm>
#include <cstddef>

#include "absl/strings/str_cat.h"

namespace suppertide::planning {
namespace {

bool indexes(int index, std::size_t size) {
  return index >= 0 && static_cast<std::size_t>(index) < size;
}

absl::Status wrong(const Step& step, const char* what) {
  return absl::InvalidArgumentError(absl::StrCat("step ", step.id, ": ", what));
}

absl::Status checkOven(const Problem& problem, const Step& step, const Mode& mode) {
  const OvenNeed& need = *mode.oven;
  if (!indexes(need.oven, problem.ovens.size())) return wrong(step, "names an oven that is not there");
  const Oven& oven = problem.ovens[static_cast<std::size_t>(need.oven)];
  if (need.phases.empty()) return wrong(step, "needs an oven but no setpoint");
  Minute sum = 0;
  for (const OvenPhase& phase : need.phases) {
    if (!indexes(phase.setpoint, oven.setpoints.size()))
      return wrong(step, "names a setpoint its oven lacks");
    if (phase.length < 0) return wrong(step, "has an oven phase of negative length");
    sum += phase.length;
  }
  if (!oven.racks->fits({need.load})) return wrong(step, "does not fit its oven even alone");
  if (need.phases.size() == 1 && sum == 0) return absl::OkStatus();
  for (const Length& length : mode.length.rows)
    if (length.possible() && (length.shortest != sum || length.longest != sum))
      return wrong(step, "has oven phases that do not add up to its length");
  return absl::OkStatus();
}

absl::Status checkMode(const Problem& problem, const Step& step, const Mode& mode) {
  if (mode.length.rows.empty()) return wrong(step, "has a mode without a length");
  if (mode.length.rows.size() > 1 && mode.length.pitch <= 0)
    return wrong(step, "has length rows without a pitch");
  for (const Length& length : mode.length.rows)
    if (length.possible() &&
        (length.shortest < 0 || length.best < length.shortest || length.best > length.longest))
      return wrong(step, "has a length range out of order");
  if (mode.attention < 0 || mode.attention > 100) return wrong(step, "asks attention outside 0 to 100 %");
  if (mode.attention > 0 && mode.cooks.empty()) return wrong(step, "needs a cook but nobody may do it");
  for (const CookOption& option : mode.cooks)
    if (!indexes(option.cook, problem.cooks.size()) || option.cost < 0)
      return wrong(step, "names an unknown cook");
  for (const Use& use : mode.uses) {
    if (!indexes(use.resource, problem.resources.size())) return wrong(step, "uses an unknown thing");
    if (use.amount < 0) return wrong(step, "uses a negative amount");
    if (use.amount > problem.resources[static_cast<std::size_t>(use.resource)].capacity)
      return wrong(step, "uses more than there is");
  }
  for (const ModeLink& link : mode.links) {
    if (!indexes(link.step, problem.steps.size())) return wrong(step, "is linked to an unknown step");
    for (const int other : link.modes)
      if (!indexes(other, problem.steps[static_cast<std::size_t>(link.step)].modes.size()))
        return wrong(step, "is linked to an unknown mode");
  }
  if (mode.qualityCost < 0 || mode.shortMinuteCost < 0 || mode.longMinuteCost < 0)
    return wrong(step, "has a negative cost");
  if (mode.spread.least <= 0 || mode.spread.least > 1 || mode.spread.most < 1)
    return wrong(step, "has a spread that does not hold its planned length");
  for (const Spread::Follows& follows : mode.spread.follows)
    if (!indexes(follows.unknown, problem.unknowns.size()))
      return wrong(step, "follows an unknown that is not there");
  return mode.oven ? checkOven(problem, step, mode) : absl::OkStatus();
}

absl::Status checkStep(const Problem& problem, const Step& step) {
  if (step.modes.empty()) return wrong(step, "has no mode");
  if (!indexes(step.dish, problem.dishes.size())) return wrong(step, "belongs to no dish");
  for (const Mode& mode : step.modes)
    if (auto status = checkMode(problem, step, mode); !status.ok()) return status;
  if (step.pin.mode && !indexes(*step.pin.mode, step.modes.size()))
    return wrong(step, "is pinned to an unknown mode");
  if (step.pin.cook && !indexes(*step.pin.cook, problem.cooks.size()))
    return wrong(step, "is pinned to an unknown cook");
  if (step.announced && (!indexes(step.announced->mode, step.modes.size()) || step.announced->weight < 0))
    return wrong(step, "was announced in an unknown mode or with a negative weight");
  return absl::OkStatus();
}

bool indexesAll(const std::vector<int>& modes, const Step& step) {
  return std::all_of(modes.begin(), modes.end(), [&](int mode) { return indexes(mode, step.modes.size()); });
}

absl::Status checkClock(const Problem& problem, const Clock& clock) {
  const auto bad = [&](const char* what) {
    return absl::InvalidArgumentError(absl::StrCat("clock ", clock.id, ": ", what));
  };
  if (clock.spans.empty() || clock.most < 0) return bad("counts nothing or allows less than nothing");
  int dish = -1;
  for (const Clock::Span& span : clock.spans) {
    if (!indexes(span.from, problem.steps.size()) ||
        (span.to != -1 && !indexes(span.to, problem.steps.size())))
      return bad("names an unknown step");
    const Step& from = problem.steps[static_cast<std::size_t>(span.from)];
    if (dish < 0) dish = from.dish;
    if (from.dish != dish || (span.to >= 0 && problem.steps[static_cast<std::size_t>(span.to)].dish != dish))
      return bad("counts over more than one dish");
    if (!indexesAll(span.modes, from)) return bad("names an unknown mode");
  }
  return absl::OkStatus();
}

absl::Status checkSeparation(const Problem& problem, const Separation& separation) {
  const auto bad = [&](const char* what) {
    return absl::InvalidArgumentError(absl::StrCat("separation ", separation.id, ": ", what));
  };
  if (!indexes(separation.clean, problem.steps.size()) || !indexes(separation.other, problem.steps.size()) ||
      separation.clean == separation.other)
    return bad("names an unknown step, or one twice");
  if (!indexesAll(separation.cleanModes, problem.steps[static_cast<std::size_t>(separation.clean)]) ||
      !indexesAll(separation.otherModes, problem.steps[static_cast<std::size_t>(separation.other)]))
    return bad("names an unknown mode");
  return separation.cleaning < 0 ? bad("cleans for less than nothing") : absl::OkStatus();
}

absl::Status checkThings(const Problem& problem) {
  for (const Oven& oven : problem.ovens) {
    const std::size_t n = oven.setpoints.size();
    if (!oven.racks) return absl::InvalidArgumentError(absl::StrCat("oven ", oven.id, ": has no rack rule"));
    if (!std::is_sorted(oven.setpoints.begin(), oven.setpoints.end()))
      return absl::InvalidArgumentError(absl::StrCat("oven ", oven.id, ": setpoints are not ascending"));
    const bool square =
        oven.change.size() == n &&
        std::all_of(oven.change.begin(), oven.change.end(), [&](const auto& row) { return row.size() == n; });
    if (!square || oven.heatFromCold.size() != n)
      return absl::InvalidArgumentError(
          absl::StrCat("oven ", oven.id, ": change times do not match its setpoints"));
  }
  for (const Cook& cook : problem.cooks)
    if (cook.share < 0)
      return absl::InvalidArgumentError(absl::StrCat("cook ", cook.id, ": has a negative share"));
  for (const Resource& resource : problem.resources)
    if (resource.capacity < 0)
      return absl::InvalidArgumentError(absl::StrCat("resource ", resource.id, ": has a negative capacity"));
  return absl::OkStatus();
}

}  // namespace

Length LengthTable::at(Minute start) const {
  if (rows.size() == 1 && pitch == 0) return rows.front();
  const Length impossible{1, 1, 0};
  if (pitch <= 0 || start < origin) return impossible;
  const auto row = static_cast<std::size_t>((start - origin) / pitch);
  return row < rows.size() ? rows[row] : impossible;
}

absl::Status check(const Problem& problem) {
  if (problem.limit <= 0) return absl::InvalidArgumentError("problem: its time axis is empty");
  if (auto status = checkThings(problem); !status.ok()) return status;
  for (const Step& step : problem.steps)
    if (auto status = checkStep(problem, step); !status.ok()) return status;
  for (const Gap& gap : problem.gaps) {
    if (!indexes(gap.from, problem.steps.size()) || !indexes(gap.to, problem.steps.size()))
      return absl::InvalidArgumentError("gap: names an unknown step");
    if (gap.least > gap.most)
      return wrong(problem.steps[static_cast<std::size_t>(gap.to)],
                   "has a gap whose least is above its most");
    if (gap.air < 0) return wrong(problem.steps[static_cast<std::size_t>(gap.to)], "wants negative air");
  }
  for (const Clock& clock : problem.clocks)
    if (auto status = checkClock(problem, clock); !status.ok()) return status;
  for (const Separation& separation : problem.separations)
    if (auto status = checkSeparation(problem, separation); !status.ok()) return status;
  if (problem.airBetweenTasks < 0 || problem.interruptionCost < 0)
    return absl::InvalidArgumentError("problem: wants a negative air between tasks or interruption cost");
  for (const Dish& dish : problem.dishes)
    if (!indexes(dish.lastStep, problem.steps.size()) || dish.holdLimit < 0 || dish.lateLimit < 0)
      return absl::InvalidArgumentError(
          absl::StrCat("dish ", dish.id, ": has no last step or a negative limit"));
  return absl::OkStatus();
}

}  // namespace suppertide::planning
