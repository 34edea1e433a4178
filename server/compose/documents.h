// From a schedule to the plan document, part by part, and back.
#pragma once

#include <vector>

#include "absl/status/statusor.h"
#include "server/compose/composition.h"
#include "server/planning/audit/audit.h"
#include "server/planning/explain/explain.h"
#include "server/planning/model/schedule.h"
#include "server/planning/solver/solver.h"

namespace suppertide::planning {
struct Replanned;
}

namespace suppertide::compose {

struct RunningPlan;

// Steps, courses, dishes, unserved and first actions.
void addSteps(const Composition& composition, const planning::Schedule& schedule, v1::Plan& plan);
// Oven programs with estimated temperatures and rack positions.
void addOvens(const Composition& composition, const planning::Schedule& schedule, v1::Plan& plan);
// Forecasts of every bread along its planned places. Returns a breach for each
// ferment that would end outside its readiness window on that very path.
std::vector<v1::Breach> addDoughs(const Composition& composition, const planning::Schedule& schedule,
                                  v1::Plan& plan);
// Naive oven clashes and how the schedule settles them.
void addClashes(const Composition& composition, const planning::Schedule& schedule,
                const std::vector<planning::NaiveClash>& clashes, v1::Plan& plan);

// Food-safety limits and the cautions that go with them, on steps already there.
void addSafetyLimits(const Composition& composition, const planning::Schedule& schedule, v1::Plan& plan);
// What to take out of freezer and fridge, beside the steps and weighings already there.
void addFetches(const Composition& composition, v1::Plan& plan);
// What breaks a food-safety rule whatever the times: an end temperature below the
// food's, a fridge that is too warm. The amount is in whole kelvin, rounded up.
std::vector<v1::Breach> safetyBreaches(const Composition& composition, const planning::Schedule& schedule);

std::vector<v1::Breach> breachesOf(const Composition& composition,
                                   const std::vector<planning::Breach>& breaches);
// The document, audited and with its chances by so many simulated evenings; without the clashes
// that naive timing would have had.
v1::Plan planDocument(const Composition& composition, const planning::Outcome& outcome, int evenings);
// The same of a plan under way, with moved_steps: `composition` is of what remains.
v1::Plan runningDocument(const Composition& composition, const planning::Replanned& made,
                         const RunningPlan& running);
v1::TierCosts costsOf(const planning::TierCosts& costs);
v1::Cause causeOf(planning::Cause cause);
// Without its room.
v1::Reason reasonOf(const Composition& composition, const planning::Reason& reason);

// The schedule a plan document tells. InvalidArgument, naming the step, when it
// lacks a step of a served dish or names what the event doesn't have.
absl::StatusOr<planning::Schedule> scheduleOf(const Composition& composition, const v1::Plan& plan);
// The same of a plan made for the event as it was: what is gone is left out, dishes that came
// since are unserved and listed in `added`. A step whose oven, place or cook the event has no
// more lies in its first mode, or with nobody.
planning::Schedule knownPartOf(const Composition& composition, const v1::Plan& plan, std::vector<int>& added);

}  // namespace suppertide::compose
