#include "client/terminal/headline.h"

#include <algorithm>
#include <set>
#include <vector>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_join.h"
#include "client/terminal/chance_text.h"
#include "client/terminal/lost_text.h"
#include "client/terminal/table.h"
#include "client/terminal/words.h"

namespace suppertide::terminal {
namespace {

std::string quoted(const std::string& text) {
  return absl::StrCat("“", text, "”");
}

std::vector<const v1::PlannedStep*> stepsWithoutSlack(const PlanView& view, const std::string& courseId) {
  std::set<std::string> dishes;
  for (const v1::Dish& dish : view.event().dishes())
    if (dish.course_id() == courseId) dishes.insert(dish.id());
  std::vector<const v1::PlannedStep*> steps;
  for (const v1::PlannedStep& step : view.plan().steps())
    if (!step.left_out() && dishes.contains(step.dish_id()) &&
        toDuration(step.slack_duration()) <= absl::ZeroDuration())
      steps.push_back(&step);
  return steps;
}

// Where the course has none, the step that may not run late: it can be days before.
std::string slackText(const PlanView& view, const v1::PlannedCourse& course) {
  const absl::Duration slack = toDuration(course.slack_duration());
  if (slack > absl::ZeroDuration()) return absl::StrCat("slack ", durationText(slack));
  const auto steps = stepsWithoutSlack(view, course.course_id());
  if (steps.empty()) return "no slack: no step may run late";
  const v1::PlannedStep& first = *steps.front();
  return absl::StrCat(
      "no slack: ", quoted(view.title(first.id())), ", ", view.clock().dayHour(toTime(first.start_time())),
      steps.size() > 1 ? absl::StrCat(" and ", steps.size() - 1, " more") : "", ", may not run late");
}

Cell courseWords(const PlanView& view, const v1::PlannedCourse& course, int dishCount) {
  if (dishCount == 0) return {"nothing planned for it"};
  const absl::Time serving = toTime(course.serving_time());
  std::string words;
  if (course.has_late_duration() && toDuration(course.late_duration()) > absl::ZeroDuration()) {
    words = absl::StrCat("LATE by ", durationText(course.late_duration()), ": ready at ",
                         view.clock().hourSeenFrom(serving, toTime(course.ready_time())));
  } else {
    words = absl::StrCat("ready ", view.clock().hourSeenFrom(serving, toTime(course.ready_time())));
  }
  absl::StrAppend(&words, ", ", slackText(view, course));
  return {words};
}

std::string coursesText(const PlanView& view) {
  Table table({{.title = "Served"}, {.title = "Course", .most = 24}, {.title = "", .fitted = false}});
  absl::Time last = absl::InfinitePast();
  for (const v1::PlannedCourse& course : view.plan().courses()) {
    const absl::Time serving = toTime(course.serving_time());
    const bool newDay = last != absl::InfinitePast() && !view.clock().sameDay(last, serving);
    int dishes = 0;
    for (const v1::Dish& dish : view.event().dishes()) {
      const bool planned = std::any_of(view.plan().dishes().begin(), view.plan().dishes().end(),
                                       [&](const v1::PlannedDish& p) { return p.dish_id() == dish.id(); });
      dishes += dish.course_id() == course.course_id() && planned ? 1 : 0;
    }
    table.add({{newDay ? view.clock().dayHour(serving) : view.clock().hour(serving)},
               {view.names().course(course.course_id())},
               courseWords(view, course, dishes)});
    last = serving;
  }
  return table.text(view.width(), view.style(), false);
}

std::string unservedWords(const PlanView& view, const v1::Unserved& unserved) {
  std::string words = absl::StrCat(view.names().dish(unserved.dish_id()), " (",
                                   view.names().courseOfDish(unserved.dish_id()), ")");
  if (!unserved.impossible_alone() && !lostWords(unserved.cause()).empty())
    return absl::StrCat(words, " ", lostWords(unserved.cause()));
  if (!unserved.impossible_alone() && view.plan().rack_doubts_size() > 0) {
    return absl::StrCat(words, " was not fitted in; what is not sure about the ovens stands with them.");
  }
  if (!unserved.impossible_alone() && view.plan().quality().proven_tier_count() < 1) {
    return absl::StrCat(words,
                        " was not fitted in before the search ended; a longer search may still do it.");
  }
  if (!unserved.impossible_alone()) return absl::StrCat(words, " does not fit beside the other dishes.");
  absl::StrAppend(&words, " cannot be made even with the whole kitchen to itself");
  if (!unserved.step_id().empty()) {
    absl::StrAppend(&words, ": nothing works for ", quoted(view.title(unserved.step_id())));
  }
  const std::string cause = impossibleWords(unserved.cause());
  if (!cause.empty()) absl::StrAppend(&words, ", because ", cause);
  return words + ".";
}

std::string troublesText(const PlanView& view) {
  std::string text;
  if (view.plan().unserved_size() > 0) {
    text += "\n" +
            view.style().warning(
                absl::StrCat("NOT SERVED: ", counted(view.plan().unserved_size(), "dish", "dishes"))) +
            "\n";
    for (const v1::Unserved& unserved : view.plan().unserved())
      text += view.item("• ", unservedWords(view, unserved));
  }
  if (view.plan().breaches_size() > 0) {
    text += "\n" +
            view.style().warning(
                absl::StrCat("THIS PLAN BREAKS ", counted(view.plan().breaches_size(), "RULE", "RULES"))) +
            "\n";
    for (const v1::Breach& breach : view.plan().breaches()) text += view.item("• ", breachText(view, breach));
  }
  return text;
}

// What could still be better in the first part that is not proven.
std::string gapWords(const v1::Quality& quality) {
  const auto gap = [&](auto part) {
    return std::max<long long>(0, part(quality.costs()) - part(quality.bounds()));
  };
  switch (quality.proven_tier_count()) {
    case 0: {
      const long long dishes = gap([](const v1::TierCosts& c) { return c.unserved(); });
      if (dishes == 0) return "how much better a plan might be is not known";
      return absl::StrCat("a longer search might serve up to ", counted(dishes, "dish", "dishes"), " more");
    }
    case 1: {
      const long long late = gap([](const v1::TierCosts& c) { return c.lateness(); });
      return absl::StrCat("a better plan might be less late, by at most ", durationText(absl::Minutes(late)));
    }
    case 2:
      return "a better plan might move less of what was told";
    case 3: {
      const long long waiting = gap([](const v1::TierCosts& c) { return c.quality(); });
      return absl::StrCat("a better plan might save waiting and staleness, at most ",
                          durationText(absl::Minutes(waiting)), " over all dishes");
    }
    case 4: {
      const long long hours = gap([](const v1::TierCosts& c) { return c.people(); });
      return absl::StrCat("a better plan might save work at unsocial hours or share it more fairly, at most ",
                          durationText(absl::Minutes(hours)));
    }
    case 5:
      return "a better plan might leave the cooks more air between tasks";
    default: {
      const long long heat = gap([](const v1::TierCosts& c) { return c.ovens(); });
      return absl::StrCat("a better plan might heat an empty oven less, by at most ",
                          durationText(absl::Minutes(heat)));
    }
  }
}

bool isTemperature(v1::SafetyLimitKind kind) {
  return kind == v1::SAFETY_LIMIT_KIND_END_TEMPERATURE || kind == v1::SAFETY_LIMIT_KIND_COLD_HOLD ||
         kind == v1::SAFETY_LIMIT_KIND_ROASTING_OVEN;
}

std::string safetyBreachWords(const std::string& step, const v1::Breach& breach) {
  v1::SafetyLimitKind kind = v1::SAFETY_LIMIT_KIND_UNSPECIFIED;
  const bool known = v1::SafetyLimitKind_Parse(breach.thing_id(), &kind);
  std::string words = absl::StrCat(step, " misses a food-safety limit");
  const std::string which = safetyLimitWords(kind);
  if (!which.empty()) absl::StrAppend(&words, " ", which);
  if (breach.amount() <= 0) return words;
  if (isTemperature(kind)) return absl::StrCat(words, " by ", breach.amount(), " °C");
  return known ? absl::StrCat(words, " by ", durationText(absl::Minutes(breach.amount()))) : words;
}

}  // namespace

std::string proofText(const v1::Quality& quality) {
  if (quality.optimal()) return "Proven best: no plan with these dishes, people and ovens is better.";
  std::vector<std::string> proven;
  if (quality.proven_tier_count() >= 1 && quality.costs().unserved() > 0)
    proven.push_back("no more dishes can be served");
  if (quality.proven_tier_count() >= 2 && quality.costs().lateness() > 0)
    proven.push_back("none can be less late");
  if (quality.proven_tier_count() >= 4) proven.push_back("nothing can wait less");
  std::string text = "Good, not proven best: ";
  if (!proven.empty()) absl::StrAppend(&text, joinWords(proven), " (proven), but ");
  return absl::StrCat(text, gapWords(quality), ".");
}

std::string headlineText(const PlanView& view) {
  const v1::Plan& plan = view.plan();
  std::string text = view.style().heading(plainLine(view.event().display_name())) + "\n";
  std::string when;
  if (plan.courses_size() > 0) when = view.clock().date(toTime(plan.courses(0).serving_time()));
  if (!view.event().location().empty()) absl::StrAppend(&when, ", ", plainLine(view.event().location()));
  text += view.paragraph(when);
  text += view.paragraph(absl::StrCat("All times are in the time zone ", view.clock().zoneName(), "."));
  text += "\n" + coursesText(view) + chancesText(view) + troublesText(view) + "\n";
  std::string summary = plan.quality().costs().lateness() > 0 ? "Every dish is served, but not all on time. "
                                                              : "Every dish is served on time. ";
  if (plan.unserved_size() > 0) {
    summary = absl::StrCat(plan.dishes_size(), " of ", plan.dishes_size() + plan.unserved_size(),
                           " dishes are served. ");
  }
  return text + view.paragraph(summary + proofText(plan.quality()));
}

std::string breachText(const PlanView& view, const v1::Breach& breach) {
  const std::string step = breach.step_id().empty() ? "a step" : quoted(view.titleWithDish(breach.step_id()));
  const std::string other =
      breach.other_step_id().empty() ? "another step" : quoted(view.titleWithDish(breach.other_step_id()));
  const std::string thing = breach.thing_id().empty() ? "" : view.names().thing(breach.thing_id());
  const std::string at =
      breach.has_time() ? absl::StrCat(" (", view.clock().dayHour(toTime(breach.time())), ")") : "";
  std::string words;
  switch (breach.rule()) {
    case v1::HARD_RULE_GAP:
      words = absl::StrCat(step, " and ", other,
                           " are not in the order, or not the time apart, that the recipe asks for");
      break;
    case v1::HARD_RULE_SERVING:
      words = absl::StrCat(step, " is not done within the time that its course allows");
      break;
    case v1::HARD_RULE_COOK:
      words = absl::StrCat(thing.empty() ? "a cook" : thing, " cannot do ", step,
                           ": busy with something else, away, asleep or without the skill");
      break;
    case v1::HARD_RULE_CAPACITY:
      words = absl::StrCat(thing.empty() ? "something" : thing, ": more is wanted than there is, for ", step);
      break;
    case v1::HARD_RULE_OVEN_TEMPERATURE:
      words = absl::StrCat(thing.empty() ? "the oven" : thing, " is not at the temperature that ", step,
                           " needs");
      break;
    case v1::HARD_RULE_OVEN_RACKS:
      words = absl::StrCat(step, breach.may_fit() ? " is not known to fit on" : " does not fit on",
                           " the racks of ", thing.empty() ? "its oven" : thing);
      if (breach.may_fit()) absl::StrAppend(&words, "; it ", mayFitWords());
      break;
    case v1::HARD_RULE_OVEN_PROOFING:
      words = absl::StrCat(thing.empty() ? "the oven" : thing, " is heated while dough stands in it: ", step);
      break;
    case v1::HARD_RULE_READINESS:
      words = absl::StrCat(step, " ends when its dough is not ready, or past it");
      break;
    case v1::HARD_RULE_PINNED:
      words = absl::StrCat(step, " is not where it was fixed by hand");
      break;
    case v1::HARD_RULE_MODE_LINK:
      words = absl::StrCat(step, " and ", other, " must use the same oven, place or levain, but don't");
      break;
    case v1::HARD_RULE_FOOD_SAFETY:
      words = safetyBreachWords(step, breach);
      break;
    case v1::HARD_RULE_ALLERGEN:
      words = absl::StrCat(step, " must stay free of an allergen that ", other, " handles");
      if (!thing.empty()) absl::StrAppend(&words, "; both use ", thing);
      words += ": it has to go first, or cleaning has to come between";
      break;
    default:
      words = absl::StrCat(step, " breaks a rule");
      break;
  }
  return capitalised(words) + at + ".";
}

std::string firstActionsText(const PlanView& view, const std::string& cookId) {
  std::vector<const v1::PlannedStep*> steps;
  for (const v1::FirstAction& action : view.plan().first_actions()) {
    const v1::PlannedStep* step = view.step(action.step_id());
    if (step != nullptr && (cookId.empty() || action.cook_member_id() == cookId)) steps.push_back(step);
  }
  std::stable_sort(steps.begin(), steps.end(), [](const v1::PlannedStep* a, const v1::PlannedStep* b) {
    return a->start_time().seconds() < b->start_time().seconds();
  });
  Table table({{.title = "Day"},
               {.title = "At"},
               {.title = "Cook", .most = 16},
               {.title = "First thing", .fitted = false}});
  std::string lastDay;
  for (const v1::PlannedStep* step : steps) {
    const absl::Time start = toTime(step->start_time());
    const std::string day = view.clock().day(start);
    table.add({{day == lastDay ? "" : day},
               {view.clock().hour(start)},
               {view.names().cook(step->cook_member_id())},
               {view.titleWithDish(*step)}});
    lastDay = day;
  }
  return table.empty() ? ""
                       : view.section("First thing each day") + table.text(view.width(), view.style(), false);
}

namespace {

// Where the limits at the steps come from, each once.
std::string limitSources(const PlanView& view) {
  std::set<std::string> sources;
  bool service = false;
  for (const v1::PlannedStep& step : view.plan().steps())
    for (const v1::SafetyLimit& limit : step.safety_limits()) {
      sources.insert(plainLine(limit.source()));
      service |= limit.rules() == v1::SAFETY_RULES_FOOD_SERVICE;
    }
  if (sources.empty()) return "";
  return view.paragraph(absl::StrCat("Food-safety limits are those ",
                                     service ? "for food service" : "told to home cooks",
                                     ", from: ", absl::StrJoin(sources, "; "), "."));
}

}  // namespace

std::string cautionsText(const PlanView& view, const std::string& cookId) {
  std::set<int> cautions;
  for (const v1::PlannedStep& step : view.plan().steps()) {
    if (step.left_out() || (!cookId.empty() && step.cook_member_id() != cookId)) continue;
    cautions.insert(step.cautions().begin(), step.cautions().end());
  }
  std::string text = view.section("Take care");
  for (const int caution : cautions) {
    const auto kind = static_cast<v1::Caution>(caution);
    text += view.item("• ", absl::StrCat(capitalised(cautionWords(kind)), ": ", cautionSentence(kind)));
  }
  return text + (cautions.empty() ? "" : "\n") + limitSources(view) + view.paragraph(safetyNotice());
}

}  // namespace suppertide::terminal
