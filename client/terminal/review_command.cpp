// Looking back on an event: what really happened, and what of it to use next time.
#include <cmath>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "client/link/request_id.h"
#include "client/terminal/day_options.h"
#include "client/terminal/event_task.h"
#include "client/terminal/exit_code.h"
#include "client/terminal/plan_view.h"
#include "client/terminal/report.h"
#include "client/terminal/table.h"

namespace suppertide::terminal {
namespace {

std::string signedMinutes(std::int64_t seconds) {
  const auto minutes = static_cast<std::int64_t>(std::llround(static_cast<double>(seconds) / 60));
  return minutes == 0 ? "as planned" : absl::StrFormat("%+d min", minutes);
}

std::string stepsText(const PlanView& view, const v1::Review& review) {
  Table table({{.title = "Planned"},
               {.title = "Was"},
               {.title = "Began"},
               {.title = "Lasted"},
               {.title = "What", .fitted = false}});
  for (const v1::StepReview& step : review.steps()) {
    const absl::Time start = toTime(step.planned_start_time());
    const absl::Time end = toTime(step.planned_end_time());
    std::string was = step.skipped() ? "left out" : "";
    std::string began;
    std::string lasted;
    if (step.has_start_time()) {
      was = view.clock().hour(toTime(step.start_time()));
      began = signedMinutes(step.start_time().seconds() - step.planned_start_time().seconds());
    }
    if (step.has_end_time()) absl::StrAppend(&was, "–", view.clock().hour(toTime(step.end_time())));
    if (step.has_start_time() && step.has_end_time())
      lasted = signedMinutes(step.end_time().seconds() - step.start_time().seconds() -
                             step.planned_end_time().seconds() + step.planned_start_time().seconds());
    table.add({{view.clock().spanWithDay(start, end)},
               {was},
               {began},
               {lasted},
               {view.titleWithDish(step.step_id())}});
  }
  return view.section("What really happened") + table.text(view.width(), view.style(), true);
}

std::string coursesText(const PlanView& view, const v1::Review& review) {
  std::string text;
  for (const v1::CourseReview& course : review.courses())
    text +=
        view.item("• ", absl::StrCat(view.names().course(course.course_id()), " for ",
                                     view.clock().hour(toTime(course.serving_time())), ": ready at ",
                                     view.clock().hour(toTime(course.ready_time())),
                                     course.late_duration().seconds() >= 60
                                         ? absl::StrCat(", ", durationText(course.late_duration()), " late")
                                         : ""));
  for (const v1::DoughReview& look : review.doughs())
    text +=
        view.item("• ", absl::StrCat(view.titleWithDish(look.step_id()), " at ",
                                     view.clock().dayHour(toTime(look.look_time())), ": ",
                                     look.has_seen_rise() ? absl::StrFormat("risen to %.2f", look.seen_rise())
                                                          : view.units().degrees(look.seen_celsius())));
  return text.empty() ? text : "\n" + text;
}

std::string recipeNamed(const v1::Bundle& bundle, const std::string& id) {
  for (const v1::Recipe& recipe : bundle.recipes())
    if (recipe.id() == id) return recipe.display_name();
  return id;
}

std::string ovenNamed(const v1::Bundle& bundle, const std::string& id) {
  for (const v1::Kitchen& kitchen : bundle.kitchens())
    for (const v1::Oven& oven : kitchen.ovens())
      if (oven.id() == id) return oven.display_name();
  return id;
}

std::string lessonText(const v1::Bundle& bundle, const v1::Lesson& lesson, const Units& units) {
  if (lesson.kind() == v1::LESSON_KIND_STARTER_VIGOUR) {
    std::string name = lesson.subject_id();
    for (const v1::Starter& starter : bundle.starters())
      if (starter.id() == lesson.subject_id()) name = starter.display_name();
    return absl::StrFormat("%s goes %.2f times as fast as average, not %.2f", plainLine(name),
                           lesson.value_after(), lesson.value_before());
  }
  if (lesson.kind() == v1::LESSON_KIND_RECIPE_PACE)
    return absl::StrFormat("%s rises %.2f times as fast as its recipe says, not %.2f",
                           plainLine(recipeNamed(bundle, lesson.subject_id())), lesson.value_after(),
                           lesson.value_before());
  if (lesson.kind() == v1::LESSON_KIND_OVEN_HEATING)
    return absl::StrFormat("%s takes %.0f min to %s, not %.0f",
                           plainLine(ovenNamed(bundle, lesson.subject_id())), lesson.value_after(),
                           units.degrees(lesson.celsius()), lesson.value_before());
  std::string name = absl::StrCat(lesson.subject_id(), "/", lesson.step_id());
  for (const v1::Recipe& recipe : bundle.recipes())
    for (const v1::Step& step : recipe.steps())
      if (recipe.id() == lesson.subject_id() && step.id() == lesson.step_id())
        name = absl::StrCat(step.title(), " · ", recipe.display_name());
  return absl::StrFormat("%s takes %.0f min rather than %.0f (it took %.0f)", plainLine(name),
                         lesson.value_after(), lesson.value_before(), lesson.value_seen());
}

std::string lessonsText(const PlanView& view, const v1::Bundle& bundle, const v1::Review& review) {
  if (review.lessons().empty())
    return view.section("Use next time?") + "Nothing to learn: all went as believed.\n";
  std::string text = view.section("Use next time?");
  for (const v1::Lesson& lesson : review.lessons()) {
    const char* state = lesson.state() == v1::LESSON_STATE_TAKEN      ? " — used"
                        : lesson.state() == v1::LESSON_STATE_DECLINED ? " — declined"
                                                                      : "";
    text += view.item("• ", absl::StrCat(lessonText(bundle, lesson, view.units()), state));
    if (lesson.state() == v1::LESSON_STATE_UNSPECIFIED)
      text += view.paragraph(absl::StrCat("--use ", lesson.id()), 4);
  }
  return text;
}

std::string leftoversText(const PlanView& view, const v1::Review& review) {
  if (review.leftovers().empty()) return "";
  std::string text = view.section("Leftovers");
  for (const v1::Leftover& left : review.leftovers()) {
    // The limit is the end of a day: people read the day itself.
    const absl::Time last = toTime(left.use_by_time()) - absl::Minutes(1);
    text += view.item("• ", absl::StrCat(view.names().dish(left.dish_id()), ", ", left.serving_count(),
                                         " portions: into the fridge by ",
                                         view.clock().dayHour(toTime(left.chill_by_time())), ", eat by ",
                                         view.clock().day(last), ", heated to ",
                                         view.units().degrees(left.reheat_celsius()), " if reheated"));
  }
  return text + view.paragraph(
                    "Local food-safety codes and licensed practice come first. When in doubt, throw it out.");
}

}  // namespace

int runReview(const ReviewCommand& command, Environment& environment) {
  int exitCode = kFailed;
  const auto task = eventTask({"", command.eventId, command.server, command.json}, environment, exitCode);
  if (!task) return exitCode;
  v1::Review review;
  if (command.use.empty() && command.decline.empty()) {
    v1::GetReviewRequest request;
    request.set_household_id(task->connection.householdId);
    request.set_event_id(task->event.id());
    const auto answer = task->connection.session->review(request);
    if (!answer.ok()) return reportFailure(environment, answer.status(), command.json);
    review = *answer;
  } else {
    v1::KeepReviewRequest request;
    request.set_household_id(task->connection.householdId);
    request.set_event_id(task->event.id());
    for (const std::string& id : command.use) request.add_taken_lesson_ids(id);
    for (const std::string& id : command.decline) request.add_declined_lesson_ids(id);
    request.set_request_id(link::newRequestId());
    const auto answer = task->connection.session->keepReview(request);
    if (!answer.ok()) return reportFailure(environment, answer.status(), command.json);
    review = answer->review();
  }
  if (command.json) {
    environment.out << jsonOf(review);
    return kOk;
  }
  v1::Plan plan;
  for (const v1::Plan& one : task->bundle.plans())
    if (one.id() == task->event.id()) plan = one;
  const PlanView view(task->bundle, task->event, plan, environment.width, environment.colour);
  environment.out << stepsText(view, review) << coursesText(view, review)
                  << lessonsText(view, task->bundle, review) << leftoversText(view, review);
  return kOk;
}

}  // namespace suppertide::terminal
