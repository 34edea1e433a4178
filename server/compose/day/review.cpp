#include "server/compose/day/review.h"

#include <algorithm>
#include <map>

#include "absl/strings/str_cat.h"
#include "server/compose/axis.h"
#include "server/compose/day/local_hours.h"
#include "server/compose/day/told_steps.h"
#include "server/compose/safety_view.h"
#include "server/compose/seen_doughs.h"
#include "server/kitchen/safety.h"
#include "server/kitchen/safety_life.h"

namespace suppertide::compose {
namespace {

constexpr double kRoomCelsius = 21;

void addSteps(const PastEvent& past, v1::Review& review) {
  const auto told = toldOf(past.progress);
  for (const v1::PlannedStep& step : past.plan.steps()) {
    const auto found = told.find(step.id());
    if (found == told.end()) continue;
    v1::StepReview& row = *review.add_steps();
    row.set_step_id(step.id());
    row.set_title(step.title());
    *row.mutable_planned_start_time() = firstStart(step);
    *row.mutable_planned_end_time() = firstEnd(step);
    if (found->second.start) *row.mutable_start_time() = stampOf(*found->second.start);
    if (found->second.end) *row.mutable_end_time() = stampOf(*found->second.end);
    row.set_skipped(found->second.skipped);
    row.set_member_id(found->second.member);
  }
  std::stable_sort(review.mutable_steps()->begin(), review.mutable_steps()->end(),
                   [](const v1::StepReview& a, const v1::StepReview& b) {
                     return a.planned_start_time().seconds() < b.planned_start_time().seconds();
                   });
}

// When a dish was ready: its last step as told, else as the last plan has it.
std::int64_t readyAt(const PastEvent& past, const std::map<std::string, Told>& told,
                     const std::string& dish) {
  std::int64_t ready = 0;
  for (const v1::PlannedStep& step : past.plan.steps()) {
    if (step.dish_id() != dish || step.left_out()) continue;
    const auto found = told.find(step.id());
    const bool said = found != told.end() && found->second.end;
    ready = std::max(ready, said ? *found->second.end : step.end_time().seconds());
  }
  return ready;
}

void addCourses(const PastEvent& past, v1::Review& review) {
  const auto told = toldOf(past.progress);
  for (const v1::Course& course : past.documents.event.courses()) {
    std::int64_t ready = 0;
    for (const v1::Dish& dish : past.documents.event.dishes())
      if (dish.course_id() == course.id()) ready = std::max(ready, readyAt(past, told, dish.id()));
    if (ready == 0) continue;
    v1::CourseReview& row = *review.add_courses();
    row.set_course_id(course.id());
    *row.mutable_serving_time() = course.serving_time();
    *row.mutable_ready_time() = stampOf(ready);
    row.mutable_late_duration()->set_seconds(
        std::max<std::int64_t>(0, ready - course.serving_time().seconds()));
  }
}

void addDoughLooks(const PastEvent& past, v1::Review& review) {
  for (const v1::Report* report : standingReports(past.progress)) {
    const bool rise = report->what_case() == v1::Report::kRise;
    if (!rise && report->what_case() != v1::Report::kDoughCelsius) continue;
    v1::DoughReview& row = *review.add_doughs();
    row.set_step_id(absl::StrCat(report->dish_id(), "/", report->step_id()));
    *row.mutable_look_time() = report->happen_time();
    if (rise)
      row.set_seen_rise(report->rise());
    else
      row.set_seen_celsius(report->dough_celsius());
  }
}

void setLimits(const PastEvent& past, std::int64_t ready, v1::Leftover& left) {
  const kitchen::RuleSet rules = rulesOf(past.documents.household);
  left.set_rules(rulesOf(rules));
  const absl::TimeZone zone = zoneOf(past.documents.household, past.documents.event);
  const kitchen::Limit& room = kitchen::roomLimit(kRoomCelsius, false, rules);
  *left.mutable_chill_by_time() = stampOf(ready + static_cast<std::int64_t>(room.value * 60));
  left.add_sources(std::string(room.source.title));
  const absl::CivilDay cooked = absl::ToCivilDay(absl::FromUnixSeconds(ready), zone);
  const auto through = kitchen::keepThrough(
      std::chrono::sys_days(std::chrono::days(cooked - absl::CivilDay(1970, 1, 1))), rules);
  const absl::CivilDay last = absl::CivilDay(1970, 1, 1) + through.time_since_epoch().count();
  // The end of that day.
  *left.mutable_use_by_time() = toTimestamp(absl::FromCivil(last + 1, zone));
  left.add_sources(std::string(kitchen::limit(kitchen::LimitKind::kKeepDays, rules).source.title));
  const kitchen::Limit& reheat = kitchen::limit(kitchen::LimitKind::kReheat, rules);
  left.set_reheat_celsius(reheat.value);
  left.add_sources(std::string(reheat.source.title));
}

void addLeftovers(const PastEvent& past, v1::Review& review) {
  std::map<std::string, double> told;
  for (const v1::Report* report : standingReports(past.progress))
    if (report->what_case() == v1::Report::kLeftOverServingCount)
      told[report->dish_id()] = report->left_over_serving_count();
  const auto steps = toldOf(past.progress);
  for (const v1::Dish& dish : past.documents.event.dishes()) {
    const auto found = told.find(dish.id());
    const double count = found != told.end() ? found->second : dish.leftover_serving_count();
    const std::int64_t ready = readyAt(past, steps, dish.id());
    if (count <= 0 || ready == 0) continue;
    v1::Leftover& left = *review.add_leftovers();
    left.set_dish_id(dish.id());
    left.set_serving_count(count);
    left.set_reported(found != told.end());
    setLimits(past, ready, left);
  }
}

}  // namespace

v1::Review reviewOf(const PastEvent& past) {
  v1::Review review;
  review.set_id(past.documents.event.id());
  addSteps(past, review);
  addCourses(past, review);
  addDoughLooks(past, review);
  addLeftovers(past, review);
  return review;
}

}  // namespace suppertide::compose
