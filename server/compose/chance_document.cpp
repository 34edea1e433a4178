#include "server/compose/chance_document.h"

#include <algorithm>
#include <map>

#include "server/compose/documents.h"
#include "server/planning/chance/robustness.h"

namespace suppertide::compose {
namespace {

// Work spent on robustness: plans tried times their steps.
constexpr int kTriedSteps = 10'000;
constexpr int kLeastTrials = 30;
constexpr int kMostTrials = 200;

// The event's courses in their order, each with its dishes.
std::vector<std::vector<int>> coursesOf(const Composition& composition) {
  std::vector<std::vector<int>> courses;
  for (const v1::Course& course : composition.documents.event.courses()) {
    courses.emplace_back();
    for (std::size_t d = 0; d < composition.dishes.size(); ++d)
      if (composition.dishes[d].course == &course) courses.back().push_back(static_cast<int>(d));
  }
  return courses;
}

v1::TimeBand bandOf(const Composition& composition, const planning::Band& band) {
  v1::TimeBand out;
  *out.mutable_early() = composition.axis.timeOf(band.early);
  *out.mutable_late() = composition.axis.timeOf(band.late);
  return out;
}

std::size_t unreadyDoughs(const Composition& composition, const planning::Schedule& schedule) {
  v1::Plan scratch;
  return addDoughs(composition, schedule, scratch).size();
}

void addCourseChances(const Composition& composition, const planning::Schedule& schedule,
                      const std::vector<std::vector<int>>& courses, const planning::Chances& chances,
                      v1::Plan& plan) {
  for (int c = 0; c < plan.courses_size() && c < static_cast<int>(courses.size()); ++c) {
    const auto course = static_cast<std::size_t>(c);
    const bool planned = std::any_of(courses[course].begin(), courses[course].end(), [&](int dish) {
      return !schedule.unserved[static_cast<std::size_t>(dish)];
    });
    if (!planned) continue;
    v1::PlannedCourse& out = *plan.mutable_courses(c);
    out.set_on_time_chance(chances.byCourse[course]);
    const planning::Blame& blame = chances.blame[course];
    if (blame.step < 0) continue;
    out.set_late_step_id(composition.stepId(blame.step));
    out.set_late_step_share(blame.share);
  }
}

}  // namespace

planning::Schedule robust(const Composition& composition, const planning::Schedule& schedule) {
  planning::RobustnessOptions options;
  options.evenings.courses = coursesOf(composition);
  options.trials = std::clamp(kTriedSteps / std::max(1, static_cast<int>(composition.steps.size())),
                              kLeastTrials, kMostTrials);
  const planning::Schedule bought = planning::buyRobustness(composition.problem, schedule, options);
  return unreadyDoughs(composition, bought) > unreadyDoughs(composition, schedule) ? schedule : bought;
}

void addChances(const Composition& composition, const planning::Schedule& schedule, int evenings,
                v1::Plan& plan) {
  planning::EveningOptions options;
  options.evenings = evenings;
  options.courses = coursesOf(composition);
  const planning::Chances chances = planning::chancesOf(composition.problem, schedule, options);
  addCourseChances(composition, schedule, options.courses, chances, plan);
  std::map<std::string, double> byDish;
  for (std::size_t d = 0; d < composition.dishes.size(); ++d)
    byDish[composition.dishes[d].dish->id()] = chances.byDish[d];
  for (v1::PlannedDish& dish : *plan.mutable_dishes()) dish.set_on_time_chance(byDish[dish.dish_id()]);
  std::map<std::string, int> steps;
  for (int i = 0; i < static_cast<int>(composition.steps.size()); ++i) steps[composition.stepId(i)] = i;
  for (v1::PlannedStep& step : *plan.mutable_steps()) {
    const auto index = static_cast<std::size_t>(steps[step.id()]);
    *step.mutable_start_band() = bandOf(composition, chances.starts[index]);
    *step.mutable_end_band() = bandOf(composition, chances.ends[index]);
  }
  plan.mutable_search()->set_simulated_evening_count(evenings);
}

}  // namespace suppertide::compose
