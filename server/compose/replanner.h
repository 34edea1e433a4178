// Replanning an event while it is cooked, and what differs between its plans. Pure, as planner.h.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "absl/status/statusor.h"
#include "server/compose/planner.h"
#include "suppertide/v1/progress.pb.h"

namespace suppertide::compose {

class BreadTables;

struct RunningPlan {
  v1::Plan plan;          // that people follow, made of the event as it was
  v1::Progress progress;  // all reports so far
  google::protobuf::Timestamp now;
  BreadTables* tables = nullptr;  // remembered from one use to the next; may be null
};

struct ReplannedEvent {
  v1::Plan plan;  // with moved_steps; the plan that ran where nothing moves
  bool nothingMoves = false;
};

// `documents` hold the event as it is now. Within `monitor`'s time; it is not told of improvements.
absl::StatusOr<ReplannedEvent> replanEvent(const Documents& documents, const RunningPlan& running,
                                           const PlanOptions& options, PlanMonitor* monitor = nullptr);

// What wishes clash in the plan, where it leaves a dish out or serves one late; those known when `stop`ped.
absl::StatusOr<google::protobuf::RepeatedPtrField<v1::Clash>> clashesOf(
    const Documents& documents, const RunningPlan& running, const std::function<bool()>& stop = {});

// Starts that may be chosen, in minutes.
inline constexpr int kReplanGrid = 5;

// As planner.h's, but of a plan that may be replanned: it is judged by the reports that it was made with, as
// a plan of what was left then. `running.now` as the caller's clock has it.
absl::StatusOr<AuditResult> auditRunning(const Documents& documents, const RunningPlan& running);

// How many reports of the event the plan was made with.
int reportsIn(const v1::Plan& plan);

// What is elsewhere in `after`, by new start; causes are left open. Starts less than 5 minutes apart are the
// same.
google::protobuf::RepeatedPtrField<v1::MovedStep> movedSteps(const v1::Plan& before, const v1::Plan& after);

struct StepExplanation {
  v1::PlannedStep step;  // as planned, with its reason and slack
  v1::TierCosts dishCosts;
  // With a shift: what it would run into if all others stayed, and what if they need not.
  std::vector<v1::Reason> obstacles;
  bool possible = false;
  google::protobuf::RepeatedPtrField<v1::MovedStep> moved;
  v1::TierCosts costsNow;
  v1::TierCosts costsThen;
};

// `shiftMinutes` later (+) or earlier (-); 0: only why it lies there. InvalidArgument when the
// plan is not one of the event; NotFound when it has no such step ("dish_id/step_id").
// A replanned plan is read as auditRunning() does; what has begun stays.
absl::StatusOr<StepExplanation> explainStep(const Documents& documents, const RunningPlan& running,
                                            const std::string& stepId, int shiftMinutes);

}  // namespace suppertide::compose
