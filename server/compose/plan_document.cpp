#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "absl/strings/str_cat.h"
#include "server/base/index.h"
#include "server/compose/bake_notes.h"
#include "server/compose/bread_model.h"
#include "server/compose/documents.h"
#include "server/compose/loads.h"
#include "server/compose/parts.h"
#include "server/compose/shelf_fit.h"

namespace suppertide::compose {
namespace {

std::string thingOf(const Composition& composition, planning::Cause cause, int thing) {
  if (thing < 0) return "";
  switch (cause) {
    case planning::Cause::kCookBusy:
    case planning::Cause::kCookAway:
      return composition.problem.cooks[at(thing)].id;
    case planning::Cause::kOvenSetpoint:
    case planning::Cause::kOvenFull:
      return composition.problem.ovens[at(thing)].id;
    case planning::Cause::kThingBusy:
      return composition.resourceIds[at(thing)];
    case planning::Cause::kFoodSafety:
      return composition.problem.clocks[at(thing)].id;
    case planning::Cause::kKeptApart:
      return composition.problem.separations[at(thing)].id;
    default:
      return "";
  }
}

double chosenRatio(const Composition& composition, const planning::Schedule& schedule,
                   const BreadInfo& bread) {
  if (bread.levainStep < 0) return 0;
  const int mode = schedule.steps[at(bread.levainStep)].mode;
  return composition.steps[at(bread.levainStep)].modes[at(mode)].flourPerStarter;
}

void setModeParts(const Composition& composition, int step, const planning::Placement& placement,
                  v1::PlannedStep& out) {
  const v1::Kitchen& kitchen = composition.documents.kitchen;
  const ModeInfo& meaning = composition.steps[at(step)].modes[at(placement.mode)];
  const planning::Mode& mode = composition.problem.steps[at(step)].modes[at(placement.mode)];
  out.set_left_out(meaning.leftOut);
  const int load = loadNumber(composition.steps[at(step)].step->id());
  if (meaning.loads > 1 || load > 1) out.set_load(load);
  if (meaning.loads > 1) out.set_load_count(meaning.loads);
  if (meaning.oven >= 0) out.set_oven_id(kitchen.ovens(meaning.oven).id());
  if (meaning.place >= 0) out.set_place_id(kitchen.places(meaning.place).id());
  out.set_setpoint_celsius(meaning.setpointCelsius);
  out.set_recipe_setpoint_celsius(meaning.ownSetpointCelsius);
  if (meaning.checkFromMinutes > 0)
    *out.mutable_check_from_time() = composition.axis.timeOf(placement.start + meaning.checkFromMinutes);
  for (const planning::Use& use : mode.uses) {
    if (use.resource == composition.burnerResource) out.set_burner_count(use.amount);
    for (const v1::Equipment& thing : kitchen.equipment())
      if (thing.id() == composition.resourceIds[at(use.resource)]) out.add_equipment_ids(thing.id());
  }
  if (!mode.oven || mode.oven->phases.size() < 2) return;
  for (const planning::OvenPhase& phase : mode.oven->phases) {
    v1::OvenPhase& told = *out.add_oven_phases();
    told.set_setpoint_celsius(composition.problem.ovens[at(mode.oven->oven)].setpoints[at(phase.setpoint)]);
    *told.mutable_duration() = durationOf(phase.length);
  }
}

void setReason(const Composition& composition, const planning::StepNote& note, v1::PlannedStep& out) {
  v1::Reason& reason = *out.mutable_reason();
  reason = reasonOf(composition, note.reason);
  *reason.mutable_room_duration() = durationOf(note.reason.room);
  *out.mutable_slack_duration() = durationOf(note.slackLater);
}

// Whether the step shares a thing or an oven with one it must be kept apart from, as both are planned.
bool keptApart(const Composition& composition, const planning::Schedule& schedule, int step) {
  const auto in = [&](const std::vector<int>& modes, int other) {
    const int mode = schedule.steps[at(other)].mode;
    return modes.empty() || std::find(modes.begin(), modes.end(), mode) != modes.end();
  };
  const auto& all = composition.problem.separations;
  return std::any_of(all.begin(), all.end(), [&](const planning::Separation& separation) {
    return (separation.clean == step || separation.other == step) &&
           in(separation.cleanModes, separation.clean) && in(separation.otherModes, separation.other);
  });
}

v1::PlannedStep plannedStep(const Composition& composition, const planning::Schedule& schedule, int step,
                            const planning::StepNote& note) {
  const StepInfo& info = composition.steps[at(step)];
  const DishInfo& dish = composition.dishes[at(info.dish)];
  const planning::Placement& placement = schedule.steps[at(step)];
  v1::PlannedStep out;
  out.set_id(composition.stepId(step));
  out.set_dish_id(dish.dish->id());
  out.set_step_id(info.step->id());
  out.set_title(info.step->title());
  out.set_kind(info.step->kind());
  *out.mutable_start_time() = composition.axis.timeOf(placement.start);
  *out.mutable_end_time() = composition.axis.timeOf(placement.end);
  if (placement.cook >= 0) out.set_cook_member_id(composition.problem.cooks[at(placement.cook)].id);
  out.set_attention_percent(composition.problem.steps[at(step)].modes[at(placement.mode)].attention);
  out.set_instructions(info.step->instructions());
  *out.mutable_cautions() = info.step->cautions();
  const bool told = std::find(out.cautions().begin(), out.cautions().end(), v1::CAUTION_ALLERGEN_CONTACT) !=
                    out.cautions().end();
  if (!told && keptApart(composition, schedule, step)) out.add_cautions(v1::CAUTION_ALLERGEN_CONTACT);
  const auto& pin = composition.problem.steps[at(step)].pin;
  out.set_pinned(pin.start || pin.end || pin.mode || pin.cook);
  setModeParts(composition, step, placement, out);
  setReason(composition, note, out);
  addBakeNotes(composition, step, placement, out);
  if (dish.bread) {
    const BreadModel model(composition, dish, *dish.bread);
    const double flour = chosenRatio(composition, schedule, *dish.bread);
    addWeighings(*dish.bread, model, step, flour, out);
    if (flour > 0 && (step == dish.bread->feedStep || step == dish.bread->levainStep))
      out.set_levain_ratio(model.recipe().ratioText(flour));
  }
  return out;
}

void addCourses(const Composition& composition, const planning::Schedule& schedule,
                const std::vector<planning::StepNote>& notes, v1::Plan& plan) {
  for (const v1::Course& course : composition.documents.event.courses()) {
    const planning::Minute serve = composition.axis.minuteOf(course.serving_time());
    planning::Minute ready = 0;
    planning::Minute slack = planning::kNoLimit;
    for (std::size_t d = 0; d < composition.dishes.size(); ++d) {
      if (composition.dishes[d].course != &course || schedule.unserved[d]) continue;
      ready = std::max(ready, schedule.steps[at(composition.problem.dishes[d].lastStep)].end);
      for (const int step : composition.dishes[d].steps) slack = std::min(slack, notes[at(step)].slackLater);
    }
    v1::PlannedCourse& out = *plan.add_courses();
    out.set_course_id(course.id());
    *out.mutable_serving_time() = course.serving_time();
    if (slack == planning::kNoLimit) continue;
    *out.mutable_ready_time() = composition.axis.timeOf(ready);
    *out.mutable_late_duration() = durationOf(std::max(0, ready - serve));
    *out.mutable_slack_duration() = durationOf(slack);
  }
}

void addDishesAndUnserved(const Composition& composition, const planning::Schedule& schedule,
                          v1::Plan& plan) {
  const planning::CostBreakdown costs = planning::costOf(composition.problem, schedule);
  for (std::size_t d = 0; d < composition.dishes.size(); ++d) {
    if (schedule.unserved[d]) {
      v1::Unserved& out = *plan.add_unserved();
      out.set_dish_id(composition.dishes[d].dish->id());
      for (const int step : composition.dishes[d].steps) {
        const StepInfo& info = composition.steps[at(step)];
        if (!info.impossible || out.impossible_alone()) continue;
        out.set_impossible_alone(true);
        out.set_step_id(composition.stepId(step));
        out.set_cause(info.step->has_ferment() ? v1::CAUSE_READINESS
                      : info.step->has_oven()  ? v1::CAUSE_OVEN_FULL
                                               : v1::CAUSE_THING_BUSY);
      }
      continue;
    }
    const planning::Dish& dish = composition.problem.dishes[d];
    const planning::Minute ready = schedule.steps[at(dish.lastStep)].end;
    v1::PlannedDish& out = *plan.add_dishes();
    out.set_dish_id(composition.dishes[d].dish->id());
    *out.mutable_ready_time() = composition.axis.timeOf(ready);
    *out.mutable_waiting_duration() = durationOf(std::max(0, dish.serve - ready));
    *out.mutable_late_duration() = durationOf(std::max(0, ready - dish.serve));
    *out.mutable_costs() = costsOf(costs.byDish[d]);
  }
}

void addFirstActions(const Composition& composition, v1::Plan& plan) {
  std::map<std::pair<std::string, std::string>, std::string> first;
  for (const v1::PlannedStep& step : plan.steps()) {
    if (step.cook_member_id().empty()) continue;
    const std::string date = composition.axis.dateOf(composition.axis.minuteOf(step.start_time()));
    first.try_emplace({date, step.cook_member_id()}, step.id());
  }
  for (const auto& [key, step] : first) {
    v1::FirstAction& action = *plan.add_first_actions();
    action.set_date(key.first);
    action.set_cook_member_id(key.second);
    action.set_step_id(step);
  }
}

}  // namespace

v1::Reason reasonOf(const Composition& composition, const planning::Reason& from) {
  v1::Reason reason;
  reason.set_cause(causeOf(from.cause));
  if (from.blockingStep >= 0) reason.set_blocking_step_id(composition.stepId(from.blockingStep));
  reason.set_thing_id(thingOf(composition, from.cause, from.thing));
  reason.set_may_fit(from.cause == planning::Cause::kOvenFull && from.blockingStep >= 0 &&
                     isDoubted(composition, from.thing, from.blockingStep));
  return reason;
}

v1::Cause causeOf(planning::Cause cause) {
  switch (cause) {
    case planning::Cause::kServing:
      return v1::CAUSE_SERVING;
    case planning::Cause::kFollows:
      return v1::CAUSE_FOLLOWS;
    case planning::Cause::kMustFollow:
      return v1::CAUSE_MUST_FOLLOW;
    case planning::Cause::kReadiness:
      return v1::CAUSE_READINESS;
    case planning::Cause::kCookBusy:
      return v1::CAUSE_COOK_BUSY;
    case planning::Cause::kCookAway:
      return v1::CAUSE_COOK_AWAY;
    case planning::Cause::kOvenSetpoint:
      return v1::CAUSE_OVEN_SETPOINT;
    case planning::Cause::kOvenFull:
      return v1::CAUSE_OVEN_FULL;
    case planning::Cause::kThingBusy:
      return v1::CAUSE_THING_BUSY;
    case planning::Cause::kPinned:
      return v1::CAUSE_PINNED;
    case planning::Cause::kFoodSafety:
      return v1::CAUSE_FOOD_SAFETY;
    case planning::Cause::kKeptApart:
      return v1::CAUSE_KEPT_APART;
    case planning::Cause::kBest:
      return v1::CAUSE_BEST;
  }
  return v1::CAUSE_UNSPECIFIED;
}

v1::TierCosts costsOf(const planning::TierCosts& costs) {
  v1::TierCosts out;
  using planning::Tier;
  out.set_unserved(costIn(costs, Tier::kUnserved) / kOneDish);
  out.set_lateness(costIn(costs, Tier::kLateness));
  out.set_moves(costIn(costs, Tier::kMoves));
  out.set_quality(costIn(costs, Tier::kQuality));
  out.set_people(costIn(costs, Tier::kPeople));
  out.set_calm(costIn(costs, Tier::kCalm));
  out.set_ovens(costIn(costs, Tier::kOvens));
  return out;
}

void addSteps(const Composition& composition, const planning::Schedule& schedule, v1::Plan& plan) {
  const auto notes = planning::explain(composition.problem, schedule);
  std::vector<v1::PlannedStep> steps;
  for (std::size_t i = 0; i < composition.steps.size(); ++i)
    if (!schedule.unserved[at(composition.steps[i].dish)])
      steps.push_back(plannedStep(composition, schedule, static_cast<int>(i), notes[i]));
  std::sort(steps.begin(), steps.end(), [](const auto& a, const auto& b) {
    return std::make_pair(a.start_time().seconds(), a.id()) <
           std::make_pair(b.start_time().seconds(), b.id());
  });
  for (auto& step : steps) *plan.add_steps() = std::move(step);
  addCourses(composition, schedule, notes, plan);
  addDishesAndUnserved(composition, schedule, plan);
  addFirstActions(composition, plan);
}

void addClashes(const Composition& composition, const planning::Schedule& schedule,
                const std::vector<planning::NaiveClash>& clashes, v1::Plan& plan) {
  const auto span = [&](const Interval<planning::Minute>& when) {
    v1::TimeSpan out;
    *out.mutable_start() = composition.axis.timeOf(when.start);
    *out.mutable_limit() = composition.axis.timeOf(when.limit);
    return out;
  };
  for (const planning::NaiveClash& clash : clashes) {
    if (schedule.unserved[at(composition.steps[at(clash.stepA)].dish)] ||
        schedule.unserved[at(composition.steps[at(clash.stepB)].dish)])
      continue;
    const planning::Settlement settled = planning::settlementOf(composition.problem, schedule, clash);
    v1::OvenClash& out = *plan.add_oven_clashes();
    out.set_oven_id(composition.problem.ovens[at(clash.oven)].id);
    out.set_step_a_id(composition.stepId(clash.stepA));
    out.set_step_b_id(composition.stepId(clash.stepB));
    *out.mutable_naive_a() = span(clash.whenA);
    *out.mutable_naive_b() = span(clash.whenB);
    out.set_naive_setpoint_a_celsius(clash.setpointA);
    out.set_naive_setpoint_b_celsius(clash.setpointB);
    out.set_other_oven(settled.otherOven);
    out.set_shared_setpoint(settled.sharedSetpoint);
    *out.mutable_moved_a() = durationOf(settled.movedA);
    *out.mutable_moved_b() = durationOf(settled.movedB);
    out.set_degrees_a(settled.degreesA);
    out.set_degrees_b(settled.degreesB);
  }
}

}  // namespace suppertide::compose
