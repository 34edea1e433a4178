// Changes with which all dishes fit, and the plan that shows it.
#pragma once

#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <vector>

#include "server/compose/remedies/find_remedies.h"
#include "server/compose/remedies/situation.h"
#include "server/compose/remedies/trial.h"

namespace suppertide::compose {

struct Fitting {
  std::unique_ptr<Trial> trial;
  std::vector<Change> changes;
  planning::Schedule schedule;  // serves every dish in time
};

// A good plan that the auditor passes, none when he does not: a dough's forecast along the planned places
// can be a little off the planner's own tables. Quick.
std::optional<v1::Plan> soundPlan(const Fitting& fitting, const RemedyOptions& options,
                                  const std::function<bool()>& stop);
// The same by a longer search, which mostly finds another plan.
std::optional<v1::Plan> soundPlanAnew(const Fitting& fitting, const RemedyOptions& options,
                                      const std::function<bool()>& stop);

FoundRemedy remedyOf(const Fitting& fitting, v1::Plan plan);

}  // namespace suppertide::compose
