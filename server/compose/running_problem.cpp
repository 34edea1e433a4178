#include "server/compose/running_problem.h"

#include <algorithm>

#include "absl/strings/numbers.h"
#include "absl/strings/str_cat.h"
#include "server/compose/documents.h"
#include "server/compose/parts.h"
#include "server/compose/progress.h"
#include "server/compose/seen_doughs.h"

namespace suppertide::compose {
namespace {

std::string reportsKey(const v1::Plan& plan) {
  return absl::StrCat("reports/", plan.id());
}

absl::Status composeInto(RunningProblem& out, BreadTables* tables) {
  auto composed = composeProblem(out.documents, tables);
  if (!composed.ok()) return composed.status();
  out.composition = std::make_unique<Composition>(*std::move(composed));
  return absl::OkStatus();
}

// Food that is under way would be thrown away: rather a dish that nobody has begun is left out.
void preferBegun(Composition& composition, const planning::Running& state) {
  for (std::size_t d = 0; d < composition.dishes.size(); ++d) {
    const std::vector<int>& steps = composition.dishes[d].steps;
    const bool begun = std::any_of(steps.begin(), steps.end(), [&](int step) {
      const planning::StepState::Kind kind = state.states[static_cast<std::size_t>(step)].kind;
      return kind == planning::StepState::Kind::kStarted || kind == planning::StepState::Kind::kFinished;
    });
    if (begun) composition.problem.dishes[d].unservedCost += kDishBegun;
  }
}

// The reports that the plan was made with.
v1::Progress knownPart(const RunningPlan& running) {
  v1::Progress known = running.progress;
  const int count = std::clamp(reportsIn(running.plan), 0, known.reports_size());
  known.mutable_reports()->DeleteSubrange(count, known.reports_size() - count);
  return known;
}

}  // namespace

int reportsIn(const v1::Plan& plan) {
  int count = 0;
  const auto found = plan.input_etags().find(reportsKey(plan));
  return found != plan.input_etags().end() && absl::SimpleAtoi(found->second, &count) ? count : 0;
}

bool wasReplanned(const v1::Plan& plan) {
  return plan.input_etags().count(reportsKey(plan)) > 0;
}

absl::StatusOr<std::unique_ptr<RunningProblem>> runningProblem(const Documents& documents,
                                                               const RunningPlan& running) {
  auto out = std::make_unique<RunningProblem>();
  out->documents = documents;
  const auto read = [&] {
    planning::Running state =
        runningOf(*out->composition, running.plan, running.progress, reportsIn(running.plan),
                  out->composition->axis.minuteOf(running.now));
    state.patient = addSafetyUnderWay(*out->composition);
    preferBegun(*out->composition, state);
    return state;
  };
  if (auto status = composeInto(*out, running.tables); !status.ok()) return status;
  out->state = read();
  const auto seen = learnToday(*out->composition, out->state, running.progress, out->documents);
  if (seen.empty()) return out;
  // Tables, windows and forecasts all come anew from what the doughs are now believed to be.
  if (auto status = composeInto(*out, running.tables); !status.ok()) return status;
  out->state = read();
  setWindowsUnderWay(*out->composition, out->state, seen);
  return out;
}

absl::StatusOr<PlanInContext> planInContext(const Documents& documents, const RunningPlan& running) {
  PlanInContext out;
  if (!wasReplanned(running.plan)) {
    out.problem = std::make_unique<RunningProblem>();
    out.problem->documents = documents;
    if (auto status = composeInto(*out.problem, running.tables); !status.ok()) return status;
    auto schedule = scheduleOf(*out.problem->composition, running.plan);
    if (!schedule.ok()) return schedule.status();
    out.schedule = *std::move(schedule);
    return out;
  }
  auto problem = runningProblem(documents, {running.plan, knownPart(running), running.now, running.tables});
  if (!problem.ok()) return problem.status();
  out.problem = *std::move(problem);
  // Refused here is what the plan names and the event lacks; the times count as they truly are.
  if (auto schedule = scheduleOf(*out.problem->composition, running.plan); !schedule.ok())
    return schedule.status();
  planning::Remaining remains =
      planning::whatRemains(out.problem->composition->problem, out.problem->state, kReplanGrid);
  out.problem->composition->problem = std::move(remains.problem);
  out.schedule = std::move(remains.expected);
  out.past = std::move(remains.past);
  return out;
}

}  // namespace suppertide::compose
