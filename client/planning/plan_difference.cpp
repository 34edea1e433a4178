#include "client/planning/plan_difference.h"

#include <algorithm>
#include <cstdlib>
#include <map>
#include <string>

namespace suppertide {
namespace {

constexpr std::int64_t kSameSeconds = 5 * 60;

using Steps = std::map<std::string, const v1::PlannedStep*>;

Steps stepsOf(const v1::Plan& plan) {
  Steps steps;
  for (const v1::PlannedStep& step : plan.steps())
    if (!step.left_out()) steps[step.id()] = &step;
  return steps;
}

bool standsElsewhere(const v1::PlannedStep& a, const v1::PlannedStep& b) {
  return std::abs(a.start_time().seconds() - b.start_time().seconds()) >= kSameSeconds ||
         a.oven_id() != b.oven_id() || a.cook_member_id() != b.cook_member_id() ||
         a.place_id() != b.place_id() || a.setpoint_celsius() != b.setpoint_celsius();
}

v1::MovedStep named(const v1::PlannedStep& step) {
  v1::MovedStep moved;
  moved.set_step_id(step.id());
  moved.set_title(step.title());
  return moved;
}

void fillOld(const v1::PlannedStep& step, v1::MovedStep& moved) {
  *moved.mutable_old_start_time() = step.start_time();
  *moved.mutable_old_end_time() = step.end_time();
  moved.set_old_cook_member_id(step.cook_member_id());
  moved.set_old_oven_id(step.oven_id());
  moved.set_old_place_id(step.place_id());
  moved.set_old_setpoint_celsius(step.setpoint_celsius());
}

void fillNew(const v1::PlannedStep& step, v1::MovedStep& moved) {
  *moved.mutable_new_start_time() = step.start_time();
  *moved.mutable_new_end_time() = step.end_time();
  moved.set_new_cook_member_id(step.cook_member_id());
  moved.set_new_oven_id(step.oven_id());
  moved.set_new_place_id(step.place_id());
  moved.set_new_setpoint_celsius(step.setpoint_celsius());
}

std::int64_t order(const v1::MovedStep& moved) {
  return moved.has_new_start_time() ? moved.new_start_time().seconds() : moved.old_start_time().seconds();
}

}  // namespace

google::protobuf::RepeatedPtrField<v1::MovedStep> movedBetween(const v1::Plan& before,
                                                               const v1::Plan& after) {
  const Steps old = stepsOf(before);
  const Steps now = stepsOf(after);
  google::protobuf::RepeatedPtrField<v1::MovedStep> moves;
  for (const auto& [id, step] : now) {
    const auto was = old.find(id);
    if (was != old.end() && !standsElsewhere(*was->second, *step)) continue;
    v1::MovedStep moved = named(*step);
    if (was != old.end()) fillOld(*was->second, moved);
    fillNew(*step, moved);
    *moves.Add() = std::move(moved);
  }
  for (const auto& [id, step] : old) {
    if (now.count(id) > 0) continue;
    v1::MovedStep moved = named(*step);
    moved.set_cause(v1::MOVE_CAUSE_DISH);
    fillOld(*step, moved);
    *moves.Add() = std::move(moved);
  }
  std::stable_sort(moves.begin(), moves.end(),
                   [](const v1::MovedStep& a, const v1::MovedStep& b) { return order(a) < order(b); });
  return moves;
}

}  // namespace suppertide
