#include "server/compose/replanner.h"

#include <algorithm>
#include <cstdlib>
#include <map>

#include "absl/strings/str_cat.h"
#include "server/compose/chance_document.h"
#include "server/compose/documents.h"
#include "server/compose/late_fetches.h"
#include "server/compose/remedies/clash_document.h"
#include "server/compose/running_problem.h"
#include "server/compose/shelf_fit.h"
#include "server/planning/explain/shift.h"
#include "server/planning/replan/loss.h"
#include "server/planning/replan/replan.h"

namespace suppertide::compose {
namespace {

// Simulated while everybody waits.
constexpr int kEveningsUnderWay = 1'000;

v1::MoveCause causeOf(planning::MoveCause cause) {
  switch (cause) {
    case planning::MoveCause::kReported:
      return v1::MOVE_CAUSE_REPORTED;
    case planning::MoveCause::kFollows:
      return v1::MOVE_CAUSE_FOLLOWS;
    case planning::MoveCause::kCook:
      return v1::MOVE_CAUSE_COOK;
    case planning::MoveCause::kOven:
      return v1::MOVE_CAUSE_OVEN;
    case planning::MoveCause::kThing:
      return v1::MOVE_CAUSE_THING;
    case planning::MoveCause::kNotBegun:
      return v1::MOVE_CAUSE_NOT_BEGUN;
    case planning::MoveCause::kLength:
      return v1::MOVE_CAUSE_LENGTH;
    case planning::MoveCause::kServing:
      return v1::MOVE_CAUSE_SERVING;
    case planning::MoveCause::kPinned:
      return v1::MOVE_CAUSE_PINNED;
    case planning::MoveCause::kDish:
      return v1::MOVE_CAUSE_DISH;
    case planning::MoveCause::kMadeRoom:
      return v1::MOVE_CAUSE_MADE_ROOM;
  }
  return v1::MOVE_CAUSE_UNSPECIFIED;
}

v1::Cause causeOf(planning::Loss loss) {
  switch (loss) {
    case planning::Loss::kFoodSafety:
      return v1::CAUSE_FOOD_SAFETY;
    case planning::Loss::kTooLate:
      return v1::CAUSE_SERVING;
    case planning::Loss::kTooLong:
      return v1::CAUSE_MUST_FOLLOW;
    case planning::Loss::kNoWay:
      return v1::CAUSE_THING_BUSY;
    case planning::Loss::kBesideOthers:
      break;
  }
  return v1::CAUSE_UNSPECIFIED;
}

std::string thingOf(const Composition& composition, const planning::Move& move) {
  if (move.thing < 0) return "";
  const auto index = static_cast<std::size_t>(move.thing);
  if (move.cause == planning::MoveCause::kCook) return composition.problem.cooks[index].id;
  if (move.cause == planning::MoveCause::kOven) return composition.problem.ovens[index].id;
  return move.cause == planning::MoveCause::kThing ? composition.resourceIds[index] : "";
}

std::map<std::string, const v1::PlannedStep*> byId(const v1::Plan& plan) {
  std::map<std::string, const v1::PlannedStep*> steps;
  for (const v1::PlannedStep& step : plan.steps()) steps[step.id()] = &step;
  return steps;
}

class MovedWriter {
 public:
  void from(const v1::PlannedStep& step) {
    out_.set_step_id(step.id());
    out_.set_title(step.title());
    *out_.mutable_old_start_time() = step.start_time();
    *out_.mutable_old_end_time() = step.end_time();
    out_.set_old_cook_member_id(step.cook_member_id());
    out_.set_old_oven_id(step.oven_id());
    out_.set_old_setpoint_celsius(step.setpoint_celsius());
    out_.set_old_place_id(step.place_id());
  }
  void to(const v1::PlannedStep& step) {
    out_.set_step_id(step.id());
    out_.set_title(step.title());
    *out_.mutable_new_start_time() = step.start_time();
    *out_.mutable_new_end_time() = step.end_time();
    out_.set_new_cook_member_id(step.cook_member_id());
    out_.set_new_oven_id(step.oven_id());
    out_.set_new_setpoint_celsius(step.setpoint_celsius());
    out_.set_new_place_id(step.place_id());
  }
  v1::MovedStep done() { return std::move(out_); }

 private:
  v1::MovedStep out_;
};

bool isElsewhere(const v1::PlannedStep& a, const v1::PlannedStep& b) {
  constexpr std::int64_t kSame = 5 * 60;
  return std::abs(a.start_time().seconds() - b.start_time().seconds()) >= kSame ||
         a.cook_member_id() != b.cook_member_id() || a.oven_id() != b.oven_id() ||
         a.setpoint_celsius() != b.setpoint_celsius() || a.place_id() != b.place_id();
}

std::int64_t sortKey(const v1::MovedStep& moved) {
  return moved.has_new_start_time() ? moved.new_start_time().seconds() : moved.old_start_time().seconds();
}

bool isOver(const Composition& composition, const std::vector<bool>& past, const std::string& stepId) {
  for (std::size_t i = 0; i < past.size(); ++i)
    if (past[i] && composition.stepId(static_cast<int>(i)) == stepId) return true;
  return false;
}

// The whole document of a schedule that is under way.
class RunningWriter {
 public:
  RunningWriter(const Composition& composition, const planning::Replanned& made, const v1::Plan& before)
      : composition_(composition), made_(made), before_(before) {}

  v1::Plan write() const {
    v1::Plan plan;
    plan.set_id(before_.id());
    plan.set_time_zone(before_.time_zone());
    addSteps(composition_, made_.schedule, plan);
    addOvens(composition_, made_.schedule, plan);
    for (v1::Breach& breach : addDoughs(composition_, made_.schedule, plan)) note(plan, breach);
    addSafetyLimits(composition_, made_.schedule, plan);
    addFetches(composition_, plan);
    // What naive timing would have had was settled by the plan that ran.
    *plan.mutable_oven_clashes() = before_.oven_clashes();
    *plan.mutable_quality()->mutable_costs() = costsOf(made_.cost);
    for (const v1::Breach& breach :
         breachesOf(composition_, planning::audit(composition_.problem, made_.schedule)))
      *plan.add_breaches() = breach;
    for (const v1::Breach& breach : safetyBreaches(composition_, made_.schedule))
      *plan.add_breaches() = breach;
    addRackDoubts(composition_, made_.schedule, plan);
    addChances(composition_, made_.schedule, kEveningsUnderWay, plan);
    plan.mutable_search()->set_work(made_.work);
    plan.mutable_search()->set_stopped(true);
    keepPast(plan);
    keepBegun(plan);
    addLosses(plan);
    addMoves(plan);
    addLengths(plan);
    return plan;
  }

 private:
  // A dough that is over cannot be made ready any more.
  void note(v1::Plan& plan, const v1::Breach& breach) const {
    if (!isOver(composition_, made_.remains.past, breach.step_id())) *plan.add_breaches() = breach;
  }

  // What has happened needs nothing any more; people still see what it was.
  void keepPast(v1::Plan& plan) const {
    const auto old = byId(before_);
    for (v1::PlannedStep& step : *plan.mutable_steps())
      for (std::size_t i = 0; i < composition_.steps.size(); ++i) {
        if (!made_.remains.past[i] || composition_.stepId(static_cast<int>(i)) != step.id()) continue;
        const auto found = old.find(step.id());
        if (found == old.end()) continue;
        step.set_attention_percent(found->second->attention_percent());
        step.set_burner_count(found->second->burner_count());
        *step.mutable_equipment_ids() = found->second->equipment_ids();
        *step.mutable_oven_phases() = found->second->oven_phases();
        step.set_pinned(found->second->pinned());
      }
  }

  // What a person can do something about is told, besides that a dish is left out.
  void addLosses(v1::Plan& plan) const {
    for (v1::Unserved& left : *plan.mutable_unserved())
      for (std::size_t d = 0; d < composition_.dishes.size(); ++d)
        if (composition_.dishes[d].dish->id() == left.dish_id() && !left.impossible_alone())
          left.set_cause(causeOf(planning::lossOf(made_.remains, static_cast<int>(d), kReplanGrid)));
  }

  // What had begun of a dish that is left out stays to be seen, and can be taken up again.
  void keepBegun(v1::Plan& plan) const {
    const auto old = byId(before_);
    for (std::size_t i = 0; i < composition_.steps.size(); ++i) {
      const auto dish = static_cast<std::size_t>(composition_.steps[i].dish);
      const auto was = old.find(composition_.stepId(static_cast<int>(i)));
      if (!made_.remains.past[i] || !made_.schedule.unserved[dish] || was == old.end()) continue;
      v1::PlannedStep& step = *plan.add_steps();
      step = *was->second;
      *step.mutable_start_time() = composition_.axis.timeOf(made_.remains.expected.steps[i].start);
      *step.mutable_end_time() = composition_.axis.timeOf(made_.remains.expected.steps[i].end);
    }
    std::stable_sort(plan.mutable_steps()->begin(), plan.mutable_steps()->end(),
                     [](const v1::PlannedStep& a, const v1::PlannedStep& b) {
                       return a.start_time().seconds() < b.start_time().seconds();
                     });
  }

  void addMoves(v1::Plan& plan) const {
    std::map<std::string, const planning::Move*> moves;
    for (const planning::Move& move : made_.moves) moves[composition_.stepId(move.step)] = &move;
    *plan.mutable_moved_steps() = movedSteps(before_, plan);
    for (v1::MovedStep& moved : *plan.mutable_moved_steps()) {
      const auto found = moves.find(moved.step_id());
      if (found == moves.end()) {
        const bool both = moved.has_old_start_time() && moved.has_new_start_time();
        moved.set_cause(both ? v1::MOVE_CAUSE_MADE_ROOM : v1::MOVE_CAUSE_DISH);
        continue;
      }
      const planning::Move& move = *found->second;
      moved.set_cause(causeOf(move.cause));
      if (move.causeStep >= 0) moved.set_cause_step_id(composition_.stepId(move.causeStep));
      moved.set_thing_id(thingOf(composition_, move));
    }
  }

  // A step under way that cannot end when it was to begins where it did, but what follows waits for it.
  void addLengths(v1::Plan& plan) const {
    const auto old = byId(before_);
    const auto now = byId(plan);
    for (std::size_t i = 0; i < composition_.steps.size(); ++i) {
      const planning::Placement& at = made_.schedule.steps[i];
      const planning::Step& what = composition_.problem.steps[i];
      const auto was = old.find(composition_.stepId(static_cast<int>(i)));
      if (!made_.remains.past[i] || what.pin.end || was == old.end() || now.count(was->first) == 0) continue;
      const planning::Length length = what.modes[static_cast<std::size_t>(at.mode)].length.at(at.start);
      const planning::Minute end = composition_.axis.minuteOf(was->second->end_time());
      const planning::Minute lasted = end - at.start;
      if (std::abs(end - at.end) < kReplanGrid ||
          (length.possible() && length.shortest <= lasted && lasted <= length.longest))
        continue;
      const bool listed = std::any_of(plan.moved_steps().begin(), plan.moved_steps().end(),
                                      [&](const v1::MovedStep& m) { return m.step_id() == was->first; });
      if (listed) continue;
      MovedWriter writer;
      writer.from(*was->second);
      writer.to(*now.at(was->first));
      v1::MovedStep& row = *plan.add_moved_steps();
      row = writer.done();
      *row.mutable_old_start_time() = row.new_start_time();
      row.set_cause(v1::MOVE_CAUSE_LENGTH);
    }
    std::stable_sort(plan.mutable_moved_steps()->begin(), plan.mutable_moved_steps()->end(),
                     [](const v1::MovedStep& a, const v1::MovedStep& b) { return sortKey(a) < sortKey(b); });
  }

  const Composition& composition_;
  const planning::Replanned& made_;
  const v1::Plan& before_;
};

class StopBridge : public planning::Monitor {
 public:
  explicit StopBridge(PlanMonitor* monitor) : monitor_(monitor) {}
  bool stop() override { return monitor_ != nullptr && monitor_->stop(); }

 private:
  PlanMonitor* monitor_;
};

}  // namespace

google::protobuf::RepeatedPtrField<v1::MovedStep> movedSteps(const v1::Plan& before, const v1::Plan& after) {
  const auto old = byId(before);
  const auto now = byId(after);
  std::vector<v1::MovedStep> moved;
  for (const auto& [id, step] : now) {
    const auto was = old.find(id);
    if (was != old.end() && !isElsewhere(*was->second, *step)) continue;
    MovedWriter writer;
    if (was != old.end()) writer.from(*was->second);
    writer.to(*step);
    moved.push_back(writer.done());
  }
  for (const auto& [id, step] : old) {
    if (now.count(id) > 0) continue;
    MovedWriter writer;
    writer.from(*step);
    moved.push_back(writer.done());
  }
  std::stable_sort(moved.begin(), moved.end(),
                   [](const v1::MovedStep& a, const v1::MovedStep& b) { return sortKey(a) < sortKey(b); });
  return {moved.begin(), moved.end()};
}

absl::StatusOr<ReplannedEvent> replanEvent(const Documents& documents, const RunningPlan& running,
                                           const PlanOptions& options, PlanMonitor* monitor) {
  const auto problem = runningProblem(documents, running);
  if (!problem.ok()) return problem.status();
  Composition& composition = *(*problem)->composition;
  planning::ReplanOptions how;
  how.search.seed = options.seed;
  how.search.workLimit = options.workLimit;
  how.search.grid = kReplanGrid;
  StopBridge bridge(monitor);
  auto made = planning::replan(composition.problem, (*problem)->state, how, &bridge);
  if (!made.ok()) return made.status();
  composition.problem = made->remains.problem;
  delayFetches(composition, (*problem)->state, *made);
  ReplannedEvent result;
  result.plan = RunningWriter(composition, *made, running.plan).write();
  result.plan.mutable_search()->set_seed(options.seed);
  result.nothingMoves = result.plan.moved_steps().empty();
  (*result.plan.mutable_input_etags())[absl::StrCat("reports/", result.plan.id())] =
      absl::StrCat(running.progress.reports_size());
  if (options.clashesLater) {
    if (result.nothingMoves) *result.plan.mutable_clashes() = running.plan.clashes();
  } else if (monitor == nullptr || !monitor->stop()) {
    addWishClashes(composition, made->schedule, result.plan, made->remains.past);
  }
  return result;
}

absl::StatusOr<google::protobuf::RepeatedPtrField<v1::Clash>> clashesOf(const Documents& documents,
                                                                        const RunningPlan& running,
                                                                        const std::function<bool()>& stop) {
  const auto context = planInContext(documents, running);
  if (!context.ok()) return context.status();
  v1::Plan scratch;
  addWishClashes(*context->problem->composition, context->schedule, scratch, context->past, stop);
  return scratch.clashes();
}

v1::Plan runningDocument(const Composition& composition, const planning::Replanned& made,
                         const RunningPlan& running) {
  v1::Plan plan = RunningWriter(composition, made, running.plan).write();
  (*plan.mutable_input_etags())[absl::StrCat("reports/", plan.id())] =
      absl::StrCat(running.progress.reports_size());
  return plan;
}

absl::StatusOr<AuditResult> auditRunning(const Documents& documents, const RunningPlan& running) {
  const auto context = planInContext(documents, running);
  if (!context.ok()) return context.status();
  const Composition& composition = *context->problem->composition;
  AuditResult result;
  result.breaches = breachesOf(composition, planning::audit(composition.problem, context->schedule));
  v1::Plan scratch;
  for (v1::Breach& breach : addDoughs(composition, context->schedule, scratch))
    if (!isOver(composition, context->past, breach.step_id())) result.breaches.push_back(std::move(breach));
  for (v1::Breach& breach : safetyBreaches(composition, context->schedule))
    result.breaches.push_back(std::move(breach));
  result.costs = costsOf(planning::costOf(composition.problem, context->schedule).total);
  return result;
}

absl::StatusOr<StepExplanation> explainStep(const Documents& documents, const RunningPlan& running,
                                            const std::string& stepId, int shiftMinutes) {
  const auto context = planInContext(documents, running);
  if (!context.ok()) return context.status();
  const Composition* composition = context->problem->composition.get();
  const planning::Schedule* schedule = &context->schedule;
  const v1::Plan& plan = running.plan;
  StepExplanation out;
  int step = -1;
  for (std::size_t i = 0; i < composition->steps.size(); ++i)
    if (composition->stepId(static_cast<int>(i)) == stepId) step = static_cast<int>(i);
  const auto steps = byId(plan);
  const auto found = steps.find(stepId);
  if (step < 0 || found == steps.end())
    return absl::NotFoundError(absl::StrCat("the plan has no step ", stepId));
  out.step = *found->second;
  for (const v1::PlannedDish& dish : plan.dishes())
    if (dish.dish_id() == out.step.dish_id()) out.dishCosts = dish.costs();
  if (shiftMinutes == 0) return out;
  const planning::Shift shift =
      planning::shiftStep(composition->problem, *schedule, step, shiftMinutes, kReplanGrid);
  for (const planning::Reason& reason : shift.obstacles)
    out.obstacles.push_back(reasonOf(*composition, reason));
  out.possible = shift.possible;
  if (!shift.possible) return out;
  v1::Plan then;
  addSteps(*composition, shift.schedule, then);
  out.moved = movedSteps(plan, then);
  out.costsNow = costsOf(shift.before);
  out.costsThen = costsOf(shift.after);
  return out;
}

}  // namespace suppertide::compose
