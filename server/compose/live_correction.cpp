#include "server/compose/live_correction.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <utility>

#include "server/compose/bread_tables.h"
#include "server/compose/seen_doughs.h"

namespace suppertide::compose {
namespace {

using StepIds = std::set<std::string>;

std::map<std::string, const v1::PlannedStep*> stepsById(const v1::Plan& plan) {
  std::map<std::string, const v1::PlannedStep*> steps;
  for (const v1::PlannedStep& step : plan.steps()) steps[step.id()] = &step;
  return steps;
}

// Of whose steps somebody said something that changes when they are.
StepIds reportedSteps(const v1::Progress& progress) {
  StepIds steps;
  for (const v1::Report* report : standingReports(progress))
    if (report->what_case() != v1::Report::WHAT_NOT_SET)
      steps.insert(report->dish_id() + "/" + report->step_id());
  return steps;
}

// What moved though it would have begun within kAboutToStart.
StepIds movedAboutToStart(const v1::Plan& made, const RunningPlan& running, const StepIds& reported) {
  StepIds steps;
  const std::int64_t now = running.now.seconds();
  for (const v1::MovedStep& moved : made.moved_steps()) {
    if (!moved.has_old_start_time() || reported.count(moved.step_id()) > 0) continue;
    const std::int64_t start = moved.old_start_time().seconds();
    if (start > now && start <= now + kAboutToStart * 60) steps.insert(moved.step_id());
  }
  return steps;
}

bool isPinned(const v1::Event& event, const v1::PlannedStep& step) {
  return std::any_of(event.pins().begin(), event.pins().end(), [&](const v1::StepPin& pin) {
    return pin.dish_id() == step.dish_id() && pin.step_id() == step.step_id();
  });
}

// The event with these steps pinned where the plan has them.
Documents holding(const Documents& documents, const v1::Plan& plan, const StepIds& steps) {
  Documents held = documents;
  for (const v1::PlannedStep& step : plan.steps()) {
    if (steps.count(step.id()) == 0 || isPinned(documents.event, step)) continue;
    v1::StepPin& pin = *held.event.add_pins();
    pin.set_dish_id(step.dish_id());
    pin.set_step_id(step.step_id());
    *pin.mutable_start_time() = step.start_time();
    pin.set_cook_member_id(step.cook_member_id());
    pin.set_oven_id(step.oven_id());
    pin.set_place_id(step.place_id());
  }
  return held;
}

// Nobody pinned them: they only stay.
void unpin(const v1::Plan& before, const StepIds& steps, v1::Plan& plan) {
  const auto old = stepsById(before);
  for (v1::PlannedStep& step : *plan.mutable_steps()) {
    const auto was = old.find(step.id());
    if (steps.count(step.id()) == 0 || was == old.end()) continue;
    step.set_pinned(was->second->pinned());
    *step.mutable_reason() = was->second->reason();
  }
}

std::pair<std::int64_t, std::int64_t> shortfallOf(const v1::Plan& plan) {
  return {plan.quality().costs().unserved(), plan.quality().costs().lateness()};
}

bool differs(const google::protobuf::Timestamp& a, const google::protobuf::Timestamp& b) {
  return std::abs(a.seconds() - b.seconds()) >= 60;
}

// Samples are denser or sparser with the time of planning: what people read counts.
bool isForeseenOtherwise(const v1::FermentForecast& a, const v1::FermentForecast& b) {
  return differs(a.ready_from_time(), b.ready_from_time()) || differs(a.best_time(), b.best_time()) ||
         differs(a.ready_until_time(), b.ready_until_time()) ||
         std::abs(a.rise_at_end() - b.rise_at_end()) > 0.02 ||
         std::abs(a.celsius_at_end() - b.celsius_at_end()) > 0.2;
}

// Of which doughs somebody said how they stand.
std::set<std::string> seenDishes(const v1::Progress& progress) {
  std::set<std::string> dishes;
  for (const v1::Report* report : standingReports(progress)) {
    const v1::Report::WhatCase what = report->what_case();
    if (what == v1::Report::kRise || what == v1::Report::kDoughCelsius || what == v1::Report::kDentTest ||
        what == v1::Report::kDone || what == v1::Report::kNeedsMoreDuration)
      dishes.insert(report->dish_id());
  }
  return dishes;
}

bool saysMoreThan(const v1::Plan& before, const v1::Plan& after, const v1::Progress& progress) {
  constexpr std::int64_t kNoticed = 5 * 60;
  const auto seen = seenDishes(progress);
  std::map<std::string, const v1::FermentForecast*> old;
  for (const v1::DoughForecast& dough : before.doughs())
    for (const v1::FermentForecast& stage : dough.stages()) old[stage.step_id()] = &stage;
  for (const v1::DoughForecast& dough : after.doughs()) {
    if (seen.count(dough.dish_id()) == 0) continue;
    for (const v1::FermentForecast& stage : dough.stages()) {
      const auto was = old.find(stage.step_id());
      if (was == old.end() || isForeseenOtherwise(*was->second, stage)) return true;
    }
  }
  for (int c = 0; c < std::min(before.courses_size(), after.courses_size()); ++c)
    if (std::abs(before.courses(c).ready_time().seconds() - after.courses(c).ready_time().seconds()) >=
        kNoticed)
      return true;
  return false;
}

CorrectedPlan corrected(ReplannedEvent made, const RunningPlan& running) {
  CorrectedPlan out;
  out.nothingMoves = made.nothingMoves;
  out.saysMore = !made.nothingMoves || saysMoreThan(running.plan, made.plan, running.progress);
  out.plan = std::move(made.plan);
  return out;
}

}  // namespace

absl::StatusOr<CorrectedPlan> correctPlan(const Documents& documents, const RunningPlan& given,
                                          const PlanOptions& options, PlanMonitor* monitor) {
  // The event is composed up to four times: as it was believed to be and as it was seen, free and held.
  BreadTables own;
  RunningPlan running = given;
  if (running.tables == nullptr) running.tables = &own;
  auto free = replanEvent(documents, running, options, monitor);
  if (!free.ok()) return free.status();
  const StepIds reported = reportedSteps(running.progress);
  const StepIds near = movedAboutToStart(free->plan, running, reported);
  if (near.empty()) return corrected(*std::move(free), running);
  auto held = replanEvent(holding(documents, running.plan, near), running, options, monitor);
  if (held.ok() && shortfallOf(held->plan) <= shortfallOf(free->plan) &&
      movedAboutToStart(held->plan, running, reported).empty()) {
    unpin(running.plan, near, held->plan);
    return corrected(*std::move(held), running);
  }
  CorrectedPlan out = corrected(*std::move(free), running);
  out.forcedStepIds.assign(near.begin(), near.end());
  return out;
}

void carryOver(const v1::Plan& before, bool underWay, v1::Plan& plan) {
  StepIds moved;
  for (const v1::MovedStep& step : movedSteps(before, plan)) moved.insert(step.step_id());
  const auto old = stepsById(before);
  for (v1::PlannedStep& step : *plan.mutable_steps()) {
    const auto was = old.find(step.id());
    if (was == old.end()) {
      // Calendars may have been told that it is cancelled, at most at that revision.
      step.set_move_count(static_cast<int>(before.meta().revision() & 0x3FFFFFFF));
      continue;
    }
    step.set_move_count(was->second->move_count() + (moved.count(step.id()) > 0 ? 1 : 0));
    if (was->second->has_first_start_time()) {
      *step.mutable_first_start_time() = was->second->first_start_time();
      *step.mutable_first_end_time() = was->second->first_end_time();
    } else if (underWay) {
      *step.mutable_first_start_time() = was->second->start_time();
      *step.mutable_first_end_time() = was->second->end_time();
    }
  }
}

}  // namespace suppertide::compose
