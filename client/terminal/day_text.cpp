#include "client/terminal/day_text.h"

#include <algorithm>
#include <set>
#include <vector>

#include "absl/strings/str_cat.h"
#include "client/terminal/step_text.h"
#include "client/terminal/words.h"

namespace suppertide::terminal {
namespace {

using Steps = std::vector<const v1::PlannedStep*>;

constexpr std::size_t kNextSteps = 4;

// One's steps that are not over by report, by start; those without hands are left out.
Steps openSteps(const PlanView& view, const std::map<std::string, StepStage>& stages,
                const std::string& memberId) {
  Steps steps;
  for (const v1::PlannedStep& step : view.plan().steps()) {
    if (step.left_out() || step.cook_member_id().empty()) continue;
    if (!memberId.empty() && step.cook_member_id() != memberId) continue;
    const auto stage = stages.find(step.id());
    if (stage != stages.end() && stage->second != StepStage::kStarted) continue;
    steps.push_back(&step);
  }
  std::stable_sort(steps.begin(), steps.end(), [](const v1::PlannedStep* a, const v1::PlannedStep* b) {
    return a->start_time().seconds() < b->start_time().seconds();
  });
  return steps;
}

// Under way by report or by plan. What was to be over long ago and nobody spoke of is taken as done.
bool isNow(const v1::PlannedStep& step, const std::map<std::string, StepStage>& stages, absl::Time now) {
  if (stages.count(step.id()) > 0) return true;
  return toTime(step.start_time()) <= now && now < toTime(step.end_time());
}

std::string stepLines(const PlanView& view, const v1::PlannedStep& step, const std::string& memberId,
                      absl::Time now) {
  const std::string times = view.clock().span(toTime(step.start_time()), toTime(step.end_time()));
  const std::string who =
      memberId.empty() ? absl::StrCat(view.names().cook(step.cook_member_id()), "  ") : "";
  std::string text = view.strongItem(absl::StrCat("  ", times, "  ", who), view.titleWithDish(step));
  std::vector<std::string> details = stepNotes(view, step);
  if (const std::string where = whereText(view, step); !where.empty()) details.insert(details.begin(), where);
  for (const std::string& detail : details) text += view.paragraph(detail, 8);
  (void)now;
  return text + view.paragraph(absl::StrCat("tell ", step.id()), 8);
}

std::string coursesText(const PlanView& view) {
  std::string text;
  for (const v1::PlannedCourse& course : view.plan().courses()) {
    const absl::Duration late = toDuration(course.late_duration());
    absl::StrAppend(&text, text.empty() ? "" : " · ", view.names().course(course.course_id()), " ",
                    view.clock().hour(toTime(course.serving_time())),
                    late >= absl::Minutes(1) ? absl::StrCat(", ", durationText(late), " late") : ", in time");
  }
  return text;
}

}  // namespace

std::map<std::string, StepStage> stagesOf(const v1::Progress& progress) {
  std::set<std::string> undone;
  for (const v1::Report& report : progress.reports())
    if (report.what_case() == v1::Report::kUndoneReportId) undone.insert(report.undone_report_id());
  std::map<std::string, StepStage> stages;
  for (const v1::Report& report : progress.reports()) {
    if (undone.count(report.id()) > 0) continue;
    const std::string step = absl::StrCat(report.dish_id(), "/", report.step_id());
    if (report.what_case() == v1::Report::kStarted) stages.try_emplace(step, StepStage::kStarted);
    if (report.what_case() == v1::Report::kFinished) stages[step] = StepStage::kFinished;
    if (report.what_case() == v1::Report::kSkipped) stages[step] = StepStage::kSkipped;
  }
  return stages;
}

std::string dayText(const PlanView& view, const v1::Progress& progress, const std::string& memberId,
                    absl::Time now) {
  const auto stages = stagesOf(progress);
  const Steps steps = openSteps(view, stages, memberId);
  std::string text =
      view.section(absl::StrCat(view.clock().day(now), ", ", view.clock().hour(now),
                                memberId.empty() ? "" : absl::StrCat(" · ", view.names().cook(memberId))));
  text += view.paragraph(coursesText(view));
  std::string nowText;
  std::string nextText;
  std::size_t next = 0;
  for (const v1::PlannedStep* step : steps) {
    if (isNow(*step, stages, now))
      nowText += stepLines(view, *step, memberId, now);
    else if (toTime(step->start_time()) > now && next++ < kNextSteps)
      nextText +=
          view.item(absl::StrCat("  ", view.clock().hourSeenFrom(now, toTime(step->start_time())), "  "),
                    absl::StrCat(view.titleWithDish(*step), " (in ",
                                 durationText(toTime(step->start_time()) - now), ")"));
  }
  text += view.part("Now") + (nowText.empty() ? "Nothing.\n" : nowText);
  text += view.part("Next") + (nextText.empty() ? "Nothing.\n" : nextText);
  return text;
}

std::string countdownText(const PlanView& view, const v1::Progress& progress, const std::string& memberId,
                          absl::Time now) {
  for (const v1::PlannedStep* step : openSteps(view, stagesOf(progress), memberId)) {
    const absl::Time start = toTime(step->start_time());
    if (start <= now) continue;
    const absl::Duration left = start - now;
    const std::string wait =
        left < absl::Minutes(2) ? absl::StrCat(absl::ToInt64Seconds(left), " s") : durationText(left);
    return absl::StrCat("in ", wait, ": ", view.titleWithDish(*step));
  }
  return "";
}

std::string reminderText(const PlanView& view, const v1::Reminder& reminder) {
  const absl::Time due = toTime(reminder.due_time());
  const std::string at = view.clock().hourSeenFrom(toTime(reminder.remind_time()), due);
  const std::string what = view.step(reminder.step_id()) != nullptr ? view.titleWithDish(reminder.step_id())
                                                                    : plainLine(reminder.title());
  switch (reminder.kind()) {
    case v1::REMINDER_KIND_TOMORROW:
      return absl::StrCat("First thing tomorrow, ", view.clock().dayHour(due), ": ", what);
    case v1::REMINDER_KIND_MORNING:
      return absl::StrCat("The first thing today, ", at, ": ", what);
    case v1::REMINDER_KIND_STEP_SOON:
      return absl::StrCat("Soon, at ", at, ": ", what);
    case v1::REMINDER_KIND_STEP_DUE:
      return absl::StrCat("Due now: ", what);
    case v1::REMINDER_KIND_PREHEAT:
      return absl::StrCat("Set ", view.names().oven(reminder.oven_id()), " to ",
                          view.units().dial(reminder.setpoint_celsius()), " for ", what);
    case v1::REMINDER_KIND_DOUGH_LOOK:
      return absl::StrCat(
          "Look at the dough: ", what,
          reminder.has_until_time()
              ? absl::StrCat(", ready until about ", view.clock().hour(toTime(reminder.until_time())))
              : "");
    case v1::REMINDER_KIND_FETCH:
      return absl::StrCat("Take out: ", plainLine(reminder.title()), ", for ", what);
    case v1::REMINDER_KIND_TAKE_OUT:
      return absl::StrCat("Out of ",
                          reminder.oven_id().empty() ? "the oven" : view.names().oven(reminder.oven_id()),
                          ": ", what);
    default:
      return what;
  }
}

}  // namespace suppertide::terminal
