#include "server/compose/remedies/fitting.h"

#include <algorithm>
#include <string>
#include <utility>

namespace suppertide::compose {
namespace {

// A first plan made anew and bettered, with hardly any proof.
constexpr std::int64_t kFewConflicts = 20;

std::optional<v1::Plan> ifSound(const Trial& trial, const std::optional<planning::Outcome>& outcome,
                                int evenings) {
  if (!outcome) return std::nullopt;
  v1::Plan plan = trial.document(*outcome, evenings);
  if (!plan.breaches().empty() || !plan.unserved().empty()) return std::nullopt;
  return plan;
}

// The setpoints that a bake may now have.
void tellRange(const Composition& composition, v1::Remedy& what) {
  for (std::size_t i = 0; i < composition.steps.size(); ++i) {
    if (composition.stepId(static_cast<int>(i)) != what.step_id()) continue;
    for (const ModeInfo& mode : composition.steps[i].modes) {
      if (mode.oven < 0) continue;
      const int celsius = mode.setpointCelsius;
      what.set_min_celsius(what.min_celsius() == 0 ? celsius : std::min(what.min_celsius(), celsius));
      what.set_max_celsius(std::max(what.max_celsius(), celsius));
    }
  }
}

}  // namespace

std::optional<v1::Plan> soundPlan(const Fitting& fitting, const RemedyOptions& options,
                                  const std::function<bool()>& stop) {
  const Trial& trial = *fitting.trial;
  if (auto plan = ifSound(trial, trial.bettered(fitting.schedule, options.seed, options.rounds, stop),
                          options.evenings))
    return plan;
  if (stop()) return std::nullopt;
  return ifSound(trial, trial.planned(options.seed, kFewConflicts, stop), options.evenings);
}

std::optional<v1::Plan> soundPlanAnew(const Fitting& fitting, const RemedyOptions& options,
                                      const std::function<bool()>& stop) {
  const Trial& trial = *fitting.trial;
  return ifSound(trial, trial.planned(options.seed, options.planConflicts, stop), options.evenings);
}

FoundRemedy remedyOf(const Fitting& fitting, v1::Plan plan) {
  FoundRemedy remedy;
  remedy.plan = std::move(plan);
  for (const Change& change : fitting.changes) {
    v1::Remedy what = change.what;
    if (what.kind() == v1::REMEDY_KIND_SHARE_TEMPERATURE) tellRange(fitting.trial->composition(), what);
    remedy.size += what.size();
    remedy.changes.push_back(std::move(what));
  }
  remedy.documents = fitting.trial->documents();
  return remedy;
}

}  // namespace suppertide::compose
