#include "client/terminal/run_sheet.h"

#include <algorithm>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_join.h"
#include "client/terminal/step_text.h"
#include "client/terminal/table.h"
#include "client/terminal/words.h"

namespace suppertide::terminal {
namespace {

constexpr int kTableFrom = 100;  // columns needed for a table
constexpr char kAnyone[] = "anyone";
constexpr int kWidestName = 12;
constexpr int kSlackWidth = 10;
constexpr int kLeastDetail = 26;  // columns that a detail wants beside the times

std::string quoted(const std::string& text) {
  return absl::StrCat("“", text, "”");
}

// The step in the way: by its title within the same dish, with its dish otherwise.
std::string blockerName(const PlanView& view, const v1::PlannedStep& step) {
  const std::string& id = step.reason().blocking_step_id();
  const bool same = splitPlannedId(id).first == step.dish_id();
  return quoted(same ? view.title(id) : view.titleWithDish(id));
}

bool comesLater(const PlanView& view, const v1::PlannedStep& step) {
  const v1::PlannedStep* blocker = view.step(step.reason().blocking_step_id());
  return blocker != nullptr && blocker->start_time().seconds() >= step.end_time().seconds();
}

std::string setpointReason(const PlanView& view, const v1::PlannedStep& step, const std::string& oven) {
  const v1::PlannedStep* blocker = view.step(step.reason().blocking_step_id());
  if (blocker == nullptr) return absl::StrCat(oven, " has another temperature before and after");
  const std::string needs = blocker->setpoint_celsius() == 0 ? "another temperature"
                                                             : view.units().dial(blocker->setpoint_celsius());
  return absl::StrCat(comesLater(view, step) ? "before " : "after ", blockerName(view, step),
                      ", which needs ", needs, " in ", oven);
}

// The two may not be far apart; which comes first decides the words.
std::string followReason(const PlanView& view, const v1::PlannedStep& step) {
  const v1::PlannedStep* blocker = view.step(step.reason().blocking_step_id());
  if (blocker == nullptr) return "must stay close to the step beside it";
  const std::string name = blockerName(view, step);
  if (comesLater(view, step)) return absl::StrCat(name, " must follow soon");
  const bool over = blocker->end_time().seconds() <= step.start_time().seconds();
  return over ? absl::StrCat("must soon follow ", name) : absl::StrCat("timed by ", name);
}

// Ferments end when they are ready; other waits may only last so long.
std::string readinessReason(const PlanView& view, const v1::PlannedStep& step) {
  const v1::PlannedStep* blocker = view.step(step.reason().blocking_step_id());
  const v1::PlannedStep& waiting = blocker == nullptr ? step : *blocker;
  const bool ferments = waiting.kind() == v1::STEP_KIND_FERMENT;
  if (blocker == nullptr) return ferments ? "it is ready then" : "may only last so long";
  return absl::StrCat(blockerName(view, step), ferments ? " is ready then" : " may only last so long");
}

// A bake asks for no cook, but does not put itself into the oven.
bool goesInByHand(const v1::PlannedStep& step) {
  return step.kind() == v1::STEP_KIND_OVEN && step.cook_member_id().empty();
}

std::string cookName(const PlanView& view, const v1::PlannedStep& step) {
  if (!step.cook_member_id().empty()) return view.names().cook(step.cook_member_id());
  return goesInByHand(step) ? kAnyone : "no one";
}

// Steps of one day, with what still goes on from the days before.
struct Day {
  absl::Time start;  // of its first step
  std::vector<const v1::PlannedStep*> steps;
  std::vector<const v1::PlannedStep*> goingOn;
};

using StepList = std::vector<const v1::PlannedStep*>;

// A wait that the day makes nothing of: food that is used at once need not be kept.
bool isNotNeeded(const v1::PlannedStep& step) {
  return step.cook_member_id().empty() && step.start_time().seconds() == step.end_time().seconds();
}

StepList stepsByStart(const PlanView& view, const std::string& cookId) {
  StepList steps;
  for (const v1::PlannedStep& step : view.plan().steps()) {
    if (step.left_out() || isNotNeeded(step)) continue;
    if (cookId.empty() || step.cook_member_id() == cookId) steps.push_back(&step);
  }
  std::stable_sort(steps.begin(), steps.end(), [](const v1::PlannedStep* a, const v1::PlannedStep* b) {
    return a->start_time().seconds() < b->start_time().seconds();
  });
  return steps;
}

// Those of `steps` that run across the midnight.
StepList across(const StepList& steps, absl::Time midnight) {
  StepList result;
  for (const v1::PlannedStep* step : steps) {
    if (toTime(step->start_time()) < midnight && toTime(step->end_time()) > midnight) result.push_back(step);
  }
  return result;
}

std::vector<Day> daysOf(const PlanView& view, const RunSheetOptions& options) {
  const StepList steps = stepsByStart(view, options.cookId);
  std::vector<Day> days;
  for (const v1::PlannedStep* step : steps) {
    const absl::Time start = toTime(step->start_time());
    if (days.empty() || !view.clock().sameDay(days.back().start, start)) {
      days.push_back(
          {.start = start, .steps = {}, .goingOn = across(steps, view.clock().midnightBefore(start))});
    }
    days.back().steps.push_back(step);
  }
  return days;
}

// What runs across midnight, by when it ends.
std::string goingOnText(const PlanView& view, const Day& day) {
  if (day.goingOn.empty()) return "";
  StepList steps = day.goingOn;
  std::stable_sort(steps.begin(), steps.end(), [](const v1::PlannedStep* a, const v1::PlannedStep* b) {
    return a->end_time().seconds() < b->end_time().seconds();
  });
  std::string text = "Still going on:\n";
  for (const v1::PlannedStep* step : steps) {
    const std::string until = view.clock().hourSeenFrom(day.start, toTime(step->end_time()));
    text += view.item(absl::StrCat("  until ", until, "  "), view.titleWithDish(*step));
  }
  return text + "\n";
}

std::string timesText(const PlanView& view, const v1::PlannedStep& step) {
  return view.clock().span(toTime(step.start_time()), toTime(step.end_time()));
}

// Columns that all days share, so that the eye finds them again.
struct Widths {
  int time = 0;
  int name = 0;
};

Widths widthsOf(const PlanView& view, const std::vector<Day>& days) {
  Widths widths;
  for (const Day& day : days) {
    for (const v1::PlannedStep* step : day.steps) {
      widths.time = std::max(widths.time, displayWidth(timesText(view, *step)));
      widths.name = std::max(widths.name, displayWidth(cookName(view, *step)));
    }
  }
  widths.name = std::min(widths.name, kWidestName);
  return widths;
}

std::string dayTable(const PlanView& view, const Day& day, const Widths& widths,
                     const RunSheetOptions& options) {
  Table table({{.title = "Time", .least = widths.time},
               {.title = "Cook", .most = kWidestName, .least = widths.name},
               {.title = "What", .fitted = false, .weight = 5},
               {.title = "Where", .fitted = false, .weight = 4},
               {.title = "Slack", .least = kSlackWidth},
               {.title = "Why then", .fitted = false, .weight = 4}});
  for (const v1::PlannedStep* step : day.steps) {
    Cell what = {view.titleWithDish(*step)};
    for (std::string& note : stepNotes(view, *step)) what.push_back(std::move(note));
    if (options.instructions && !step->instructions().empty())
      what.push_back(plainLine(step->instructions()));
    const absl::Duration slack = toDuration(step->slack_duration());
    table.add({{timesText(view, *step)},
               {cookName(view, *step)},
               std::move(what),
               {whereText(view, *step)},
               {slack >= absl::Minutes(1) ? durationText(slack) : "none"},
               {reasonText(view, *step)}});
  }
  return table.text(view.width(), view.style(), true);
}

std::string stepBlock(const PlanView& view, const v1::PlannedStep& step, const Widths& widths,
                      const RunSheetOptions& options) {
  const int beside = widths.time + widths.name + 4;
  const int indent = view.width() - beside >= kLeastDetail ? beside : 6;
  const std::string name = padRight(shortened(cookName(view, step), kWidestName), widths.name);
  std::string text = view.strongItem(
      absl::StrCat(padRight(timesText(view, step), widths.time), "  ", name, "  "), view.titleWithDish(step));
  std::vector<std::string> details = stepNotes(view, step);
  if (const std::string where = whereText(view, step); !where.empty()) details.insert(details.begin(), where);
  const std::string why = reasonText(view, step);
  details.push_back(why.empty() ? slackText(step) : absl::StrCat(slackText(step), " · ", why));
  if (options.instructions && !step.instructions().empty()) details.push_back(plainLine(step.instructions()));
  for (const std::string& detail : details) text += view.paragraph(detail, indent);
  return text;
}

std::string leftOutText(const PlanView& view) {
  std::string text;
  for (const v1::PlannedStep& step : view.plan().steps())
    if (step.left_out() && step.load() == 0)
      text += view.item("• ",
                        absl::StrCat("Left out, as the day has no room for it: ", view.titleWithDish(step)));
  return text.empty() ? text : "\n" + text;
}

}  // namespace

std::string reasonText(const PlanView& view, const v1::PlannedStep& step) {
  const v1::Reason& reason = step.reason();
  const bool known = view.step(reason.blocking_step_id()) != nullptr;
  const std::string thing = reason.thing_id().empty() ? "" : view.names().thing(reason.thing_id());
  const std::string beforeOrAfter = comesLater(view, step) ? "before " : "after ";
  switch (reason.cause()) {
    case v1::CAUSE_SERVING:
      return absl::StrCat("in time for ", view.names().courseOfDish(step.dish_id()));
    case v1::CAUSE_FOLLOWS:
      return known ? absl::StrCat(beforeOrAfter, blockerName(view, step)) : "right after the step before it";
    case v1::CAUSE_MUST_FOLLOW:
      return followReason(view, step);
    case v1::CAUSE_READINESS:
      return readinessReason(view, step);
    case v1::CAUSE_COOK_BUSY:
      return absl::StrCat(
          thing.empty() ? "the cook" : thing, " is busy",
          known ? absl::StrCat(" with ", blockerName(view, step)) : "",
          known ? (comesLater(view, step) ? " afterwards" : " until then") : " before and after");
    case v1::CAUSE_COOK_AWAY:
      return absl::StrCat(thing.empty() ? "the cook" : thing, " is away or asleep otherwise");
    case v1::CAUSE_OVEN_SETPOINT:
      return setpointReason(view, step, thing.empty() ? "the oven" : thing);
    case v1::CAUSE_OVEN_FULL:
      return absl::StrCat(reason.may_fit() ? "no rack surely free in " : "no rack free in ",
                          thing.empty() ? "the oven" : thing,
                          known ? absl::StrCat(" beside ", blockerName(view, step)) : "",
                          reason.may_fit() ? absl::StrCat("; it ", mayFitWords()) : "");
    case v1::CAUSE_THING_BUSY:
      return absl::StrCat(thing.empty() ? "what it needs" : thing, thing == "the burners" ? " are" : " is",
                          " in use", known ? absl::StrCat(" for ", blockerName(view, step)) : "",
                          known ? (comesLater(view, step) ? " afterwards" : " until then") : " otherwise");
    case v1::CAUSE_FOOD_SAFETY:
      return absl::StrCat("within ", safetyLimitNamed(reason.thing_id()));
    case v1::CAUSE_PINNED:
      return "fixed by hand";
    case v1::CAUSE_KEPT_APART:
      return absl::StrCat("kept apart from ", known ? blockerName(view, step) : "another dish",
                          " for a guest", thing.empty() ? "" : absl::StrCat(", both with ", thing));
    case v1::CAUSE_BEST:
      return step.cook_member_id().empty() ? "" : "the best time for it";
    default:
      return "";
  }
}

std::string runSheetText(const PlanView& view, const RunSheetOptions& options) {
  std::string title = "Run sheet";
  if (!options.cookId.empty()) absl::StrAppend(&title, " of ", view.names().cook(options.cookId));
  std::string text = view.section(title);
  const std::vector<Day> days = daysOf(view, options);
  if (days.empty()) return text + "Nothing to do.\n";
  text += view.paragraph("Slack says how much later a step may end without moving any serving time.");
  if (options.cookId.empty() &&
      std::any_of(view.plan().steps().begin(), view.plan().steps().end(), goesInByHand)) {
    text += view.paragraph("Where the cook is “anyone”, whoever is nearest puts it in and takes it out.");
  }
  const Widths widths = widthsOf(view, days);
  for (const Day& day : days) {
    text += "\n" + view.part(view.clock().date(day.start)) + goingOnText(view, day);
    if (view.width() >= kTableFrom) {
      text += dayTable(view, day, widths, options);
      continue;
    }
    for (const v1::PlannedStep* step : day.steps) text += stepBlock(view, *step, widths, options);
  }
  return text + leftOutText(view);
}

}  // namespace suppertide::terminal
