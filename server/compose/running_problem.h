// A running plan as a planning problem: the event, what was seen of its doughs today, and where each step
// stands.
#pragma once

#include <memory>

#include "absl/status/statusor.h"
#include "server/compose/composition.h"
#include "server/compose/replanner.h"
#include "server/planning/replan/happened.h"

namespace suppertide::compose {

struct RunningProblem {
  Documents documents;  // with what was seen today; `composition` points into it
  std::unique_ptr<Composition> composition;
  planning::Running state;
};

// Reports count as progress.h says; those that `running.plan` was made with are known.
absl::StatusOr<std::unique_ptr<RunningProblem>> runningProblem(const Documents& documents,
                                                               const RunningPlan& running);

// Whether the plan came out of a replan.
bool wasReplanned(const v1::Plan& plan);

// A replanned plan as what it was made of leaves it: pins of what had happened, lengths as they were seen.
// Any other plan as the event alone has it.
struct PlanInContext {
  std::unique_ptr<RunningProblem> problem;  // its composition's problem is the one to judge by
  planning::Schedule schedule;
  std::vector<bool> past;  // by step; empty for a plan that was not replanned
};
absl::StatusOr<PlanInContext> planInContext(const Documents& documents, const RunningPlan& running);

}  // namespace suppertide::compose
