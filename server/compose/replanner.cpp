#include "server/compose/replanner.h"

#include <algorithm>
#include <cstdlib>
#include <map>

#include "absl/strings/numbers.h"
#include "absl/strings/str_cat.h"
#include "server/compose/chance_document.h"
#include "server/compose/documents.h"
#include "server/compose/progress.h"
#include "server/planning/explain/shift.h"
#include "server/planning/replan/replan.h"

namespace suppertide::compose {
namespace {

constexpr planning::Minute kGrid = 5;
// Simulated while everybody waits.
constexpr int kEvenings = 1'000;

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
    addChances(composition_, made_.schedule, kEvenings, plan);
    plan.mutable_search()->set_work(made_.work);
    plan.mutable_search()->set_stopped(true);
    keepPast(plan);
    addMoves(plan);
    return plan;
  }

 private:
  // A dough that is over cannot be made ready any more.
  void note(v1::Plan& plan, const v1::Breach& breach) const {
    for (std::size_t i = 0; i < composition_.steps.size(); ++i)
      if (composition_.stepId(static_cast<int>(i)) == breach.step_id() && made_.remains.past[i]) return;
    *plan.add_breaches() = breach;
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

std::string reportsKey(const v1::Plan& plan) {
  return absl::StrCat("reports/", plan.id());
}

}  // namespace

int reportsIn(const v1::Plan& plan) {
  int count = 0;
  const auto found = plan.input_etags().find(reportsKey(plan));
  return found != plan.input_etags().end() && absl::SimpleAtoi(found->second, &count) ? count : 0;
}

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
  auto composition = composeProblem(documents);
  if (!composition.ok()) return composition.status();
  const planning::Running state = runningOf(*composition, running.plan, running.progress,
                                            reportsIn(running.plan), composition->axis.minuteOf(running.now));
  planning::ReplanOptions how;
  how.search.seed = options.seed;
  how.search.workLimit = options.workLimit;
  how.search.grid = kGrid;
  StopBridge bridge(monitor);
  const auto made = planning::replan(composition->problem, state, how, &bridge);
  if (!made.ok()) return made.status();
  composition->problem = made->remains.problem;
  ReplannedEvent result;
  result.plan = RunningWriter(*composition, *made, running.plan).write();
  result.plan.mutable_search()->set_seed(options.seed);
  result.nothingMoves = result.plan.moved_steps().empty();
  (*result.plan.mutable_input_etags())[reportsKey(result.plan)] =
      absl::StrCat(running.progress.reports_size());
  return result;
}

absl::StatusOr<StepExplanation> explainStep(const Documents& documents, const v1::Plan& plan,
                                            const std::string& stepId, int shiftMinutes) {
  const auto composition = composeProblem(documents);
  if (!composition.ok()) return composition.status();
  const auto schedule = scheduleOf(*composition, plan);
  if (!schedule.ok()) return schedule.status();
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
      planning::shiftStep(composition->problem, *schedule, step, shiftMinutes, kGrid);
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
