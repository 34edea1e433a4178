#include "client/terminal/moved_text.h"

#include <algorithm>
#include <cstdlib>
#include <vector>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_join.h"
#include "client/terminal/headline.h"
#include "client/terminal/lost_text.h"
#include "client/terminal/step_text.h"
#include "client/terminal/table.h"
#include "client/terminal/wish_text.h"
#include "client/terminal/words.h"

namespace suppertide::terminal {
namespace {

std::string by(const PlanView& view, const std::string& stepId) {
  return stepId.empty() ? "" : absl::StrCat(" (", view.titleWithDish(stepId), ")");
}

std::string timesText(const PlanView& view, bool there, const google::protobuf::Timestamp& start) {
  return there ? view.clock().dayHour(toTime(start)) : "–";
}

std::string fromTo(const std::string& from, const std::string& to, const std::string& word) {
  if (from == to || to.empty()) return "";
  return from.empty() ? absl::StrCat(word, to) : absl::StrCat(word, to, " instead of ", from);
}

// What is another besides the time.
std::vector<std::string> otherChanges(const PlanView& view, const v1::MovedStep& moved) {
  if (!moved.has_old_start_time() || !moved.has_new_start_time()) return {};
  const Names& names = view.names();
  const auto named = [](const std::string& id, const std::string& name) { return id.empty() ? id : name; };
  const auto dial = [&](int celsius) { return celsius == 0 ? "" : view.units().dial(celsius); };
  std::vector<std::string> changes = {
      fromTo(named(moved.old_cook_member_id(), names.cook(moved.old_cook_member_id())),
             named(moved.new_cook_member_id(), names.cook(moved.new_cook_member_id())), ""),
      fromTo(named(moved.old_oven_id(), names.oven(moved.old_oven_id())),
             named(moved.new_oven_id(), names.oven(moved.new_oven_id())), "in "),
      fromTo(dial(moved.old_setpoint_celsius()), dial(moved.new_setpoint_celsius()), "at "),
      fromTo(named(moved.old_place_id(), names.place(moved.old_place_id())),
             named(moved.new_place_id(), names.place(moved.new_place_id())), "in ")};
  // Of a step that stays where it is, but not as long.
  if (moved.cause() == v1::MOVE_CAUSE_LENGTH &&
      moved.old_start_time().seconds() == moved.new_start_time().seconds())
    changes.push_back(fromTo(view.clock().dayHour(toTime(moved.old_end_time())),
                             view.clock().dayHour(toTime(moved.new_end_time())), "until "));
  std::erase(changes, "");
  return changes;
}

std::string latenessText(const PlanView& view) {
  std::string text;
  for (const v1::PlannedCourse& course : view.plan().courses()) {
    const absl::Duration late = toDuration(course.late_duration());
    if (late >= absl::Minutes(1))
      text += view.strongItem(
          "• ", absl::StrCat(view.names().course(course.course_id()), " is ", durationText(late), " late."));
  }
  for (const v1::Unserved& left : view.plan().unserved()) {
    const std::string lost = left.impossible_alone() ? "" : lostWords(left.cause());
    text += view.strongItem("• ", absl::StrCat(view.names().dish(left.dish_id()), " ",
                                               lost.empty() ? "does not fit any more." : lost));
  }
  return text;
}

}  // namespace

std::string moveCauseText(const PlanView& view, const v1::MovedStep& moved) {
  const std::string thing = moved.thing_id().empty() ? "" : view.names().thing(moved.thing_id());
  const std::string other = by(view, moved.cause_step_id());
  switch (moved.cause()) {
    case v1::MOVE_CAUSE_REPORTED:
      return "as reported";
    case v1::MOVE_CAUSE_FOLLOWS:
      return moved.cause_step_id().empty() ? "goes with its dish"
                                           : absl::StrCat("goes with ", view.title(moved.cause_step_id()));
    case v1::MOVE_CAUSE_COOK:
      return absl::StrCat(thing, other.empty() ? " is away then" : absl::StrCat(" is busy then", other));
    case v1::MOVE_CAUSE_OVEN:
      return absl::StrCat(thing,
                          other.empty() ? " is not to be had then" : absl::StrCat(" is taken then", other));
    case v1::MOVE_CAUSE_THING:
      return absl::StrCat(thing, " in use then", other);
    case v1::MOVE_CAUSE_NOT_BEGUN:
      return "had not begun";
    case v1::MOVE_CAUSE_LENGTH:
      return "takes another time now";
    case v1::MOVE_CAUSE_SERVING:
      return "for its serving time";
    case v1::MOVE_CAUSE_PINNED:
      return "put there by hand";
    case v1::MOVE_CAUSE_DISH:
      if (!moved.has_new_start_time()) return "its dish is left out";
      return moved.has_old_start_time() ? "its dish is planned anew" : "its dish is new";
    case v1::MOVE_CAUSE_MADE_ROOM:
      return "made room for others";
    default:
      return "";
  }
}

std::string movedText(const PlanView& view, const google::protobuf::RepeatedPtrField<v1::MovedStep>& moved) {
  if (moved.empty()) return "";
  Table table({{.title = "Was"},
               {.title = "Now"},
               {.title = "Step", .fitted = false, .weight = 3},
               {.title = "Why", .fitted = false, .weight = 2}});
  for (const v1::MovedStep& step : moved) {
    Cell what = {view.titleWithDish(step.step_id())};
    for (const std::string& change : otherChanges(view, step)) what.push_back(change);
    table.add({{timesText(view, step.has_old_start_time(), step.old_start_time())},
               {timesText(view, step.has_new_start_time(), step.new_start_time())},
               what,
               {moveCauseText(view, step)}});
  }
  return table.text(view.width(), view.style(), true);
}

std::string reasonText(const PlanView& view, const v1::Reason& reason) {
  const std::string thing = reason.thing_id().empty() ? "" : view.names().thing(reason.thing_id());
  const std::string other = by(view, reason.blocking_step_id());
  switch (reason.cause()) {
    case v1::CAUSE_SERVING:
      return "its course waits for it then";
    case v1::CAUSE_FOLLOWS:
      return absl::StrCat("it comes right before or after another step", other);
    case v1::CAUSE_MUST_FOLLOW:
      return absl::StrCat("it may not be further from another step", other);
    case v1::CAUSE_READINESS:
      return "it is ready neither sooner nor later";
    case v1::CAUSE_COOK_BUSY:
      return absl::StrCat(thing, " is busy", other);
    case v1::CAUSE_COOK_AWAY:
      return absl::StrCat(thing, " is away");
    case v1::CAUSE_OVEN_SETPOINT:
      return absl::StrCat(thing, " is at another temperature, or changing", other);
    case v1::CAUSE_OVEN_FULL:
      if (reason.may_fit()) return absl::StrCat(thing, " is perhaps full", other, "; it ", mayFitWords());
      return absl::StrCat(thing, " is full or closed", other);
    case v1::CAUSE_THING_BUSY:
      return absl::StrCat(thing, " in use", other);
    case v1::CAUSE_FOOD_SAFETY:
      return absl::StrCat(safetyLimitNamed(reason.thing_id()), " would run over");
    case v1::CAUSE_KEPT_APART:
      return absl::StrCat("it is kept apart from what a guest must not have", other);
    case v1::CAUSE_PINNED:
      return "it was put there by hand, or may not be earlier or later";
    default:
      return "nothing pushes it: this is its best time";
  }
}

std::string costsText(const v1::TierCosts& costs) {
  std::vector<std::string> parts;
  if (costs.unserved() > 0) parts.push_back(counted(costs.unserved(), "dish unserved", "dishes unserved"));
  if (costs.lateness() > 0) parts.push_back(absl::StrCat(costs.lateness(), " min late"));
  if (costs.quality() > 0) parts.push_back(absl::StrCat("quality ", costs.quality()));
  if (costs.people() > 0) parts.push_back(absl::StrCat("people ", costs.people()));
  if (costs.calm() > 0) parts.push_back(absl::StrCat("calm ", costs.calm()));
  if (costs.ovens() > 0) parts.push_back(absl::StrCat(costs.ovens(), " min of empty oven"));
  return parts.empty() ? "nothing" : absl::StrJoin(parts, ", ");
}

namespace {

// Limits of food under way that are overrun rather than throw it away, and whatever else is wrong.
std::string overrunText(const PlanView& view) {
  std::string text;
  for (const v1::Breach& breach : view.plan().breaches()) {
    if (breach.rule() != v1::HARD_RULE_GAP || breach.amount() <= 0) {
      text += view.item("• ", breachText(view, breach));
      continue;
    }
    text += view.item("• ", absl::StrCat("“", view.titleWithDish(breach.step_id()), "” comes ",
                                         durationText(absl::Minutes(breach.amount())), " later after “",
                                         view.title(breach.other_step_id()),
                                         "” than its recipe allows, so that nothing is thrown away. Look at "
                                         "it before you go on."));
  }
  return text;
}

}  // namespace

std::string replanText(const PlanView& view, const v1::MakePlanResponse& answer) {
  std::string text = view.style().heading(plainLine(view.event().display_name())) + "\n";
  text += latenessText(view) + overrunText(view);
  const auto& moved = answer.plan().moved_steps();
  if (answer.nothing_moves())
    text += view.paragraph("Nothing needs to move: the plan still fits.");
  else
    text += view.paragraph(
        absl::StrCat(counted(moved.size(), "step moves", "steps move"), "; all others stay where they are."));
  if (!moved.empty()) text += "\n" + movedText(view, moved);
  return text + wishClashesText(view);
}

std::string whyText(const PlanView& view, const v1::ExplainStepResponse& answer, int shiftMinutes) {
  const v1::PlannedStep& step = answer.step();
  std::string text = view.style().heading(view.titleWithDish(step)) + "\n";
  std::string when = view.clock().spanWithDay(toTime(step.start_time()), toTime(step.end_time()));
  if (!step.cook_member_id().empty()) absl::StrAppend(&when, ", ", view.names().cook(step.cook_member_id()));
  if (const std::string where = whereText(view, step); !where.empty()) absl::StrAppend(&when, ", ", where);
  text += view.paragraph(absl::StrCat(when, "; ", slackText(step), "."));
  text += view.item("Why there: ", absl::StrCat(reasonText(view, step.reason()), "."));
  text += view.item("Its dish costs: ", absl::StrCat(costsText(answer.dish_costs()), "."));
  if (shiftMinutes == 0) return text;
  text += "\n" +
          view.style().strong(absl::StrCat(durationText(absl::Minutes(std::abs(shiftMinutes))),
                                           shiftMinutes < 0 ? " earlier" : " later")) +
          "\n";
  for (const v1::Reason& reason : answer.obstacles())
    text += view.item("• in its way: ", absl::StrCat(reasonText(view, reason), "."));
  if (answer.obstacles_size() == 0) text += view.item("• ", "nothing is in its way.");
  if (!answer.possible())
    return text + view.paragraph("No plan with it there was found that serves as many dishes.");
  text += view.item("• cost: ", absl::StrCat(costsText(answer.costs_now()), " now; then ",
                                             costsText(answer.costs_then()), "."));
  return text + "\n" + movedText(view, answer.moved_steps());
}

}  // namespace suppertide::terminal
