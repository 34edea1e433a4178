// The rule sets of food safety side by side.
#include <cmath>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "client/link/request_id.h"
#include "client/terminal/bundle_source.h"
#include "client/terminal/commands.h"
#include "client/terminal/event_task.h"
#include "client/terminal/report.h"
#include "client/terminal/table.h"
#include "client/terminal/text.h"
#include "client/terminal/time_text.h"
#include "client/terminal/units.h"

namespace suppertide::terminal {
namespace {

const char* kindWords(v1::SafetyLimitKind kind) {
  switch (kind) {
    case v1::SAFETY_LIMIT_KIND_END_TEMPERATURE:
      return "Cooked to, in the middle";
    case v1::SAFETY_LIMIT_KIND_REST:
      return "Rest after the heat, at least";
    case v1::SAFETY_LIMIT_KIND_ROOM_TIME:
      return "Out of fridge and heat, at most";
    case v1::SAFETY_LIMIT_KIND_HOT_HOLD:
      return "Kept hot at, at least";
    case v1::SAFETY_LIMIT_KIND_COLD_HOLD:
      return "Kept cold at, at most";
    case v1::SAFETY_LIMIT_KIND_RAW_FRIDGE:
      return "In the fridge before cooking, at most";
    case v1::SAFETY_LIMIT_KIND_COOKED_FRIDGE:
      return "In the fridge when cooked, at most";
    case v1::SAFETY_LIMIT_KIND_FIRST_COOLING:
      return "Cooled first to, within";
    case v1::SAFETY_LIMIT_KIND_COOLING:
      return "Cooled at last to, within";
    case v1::SAFETY_LIMIT_KIND_REHEAT:
      return "Heated again to, at least";
    case v1::SAFETY_LIMIT_KIND_ROASTING_OVEN:
      return "Oven for roasting at, at least";
    default:
      return "Limit";
  }
}

const char* foodWords(v1::SafetyClass food) {
  switch (food) {
    case v1::SAFETY_CLASS_WHOLE_MEAT:
      return "whole meat";
    case v1::SAFETY_CLASS_GROUND_MEAT:
      return "minced meat";
    case v1::SAFETY_CLASS_POULTRY:
      return "poultry";
    case v1::SAFETY_CLASS_GROUND_POULTRY:
      return "minced poultry";
    case v1::SAFETY_CLASS_STUFFING:
      return "stuffing";
    case v1::SAFETY_CLASS_RAW_HAM:
      return "raw ham";
    case v1::SAFETY_CLASS_PACKED_HAM:
      return "cooked ham in its pack";
    case v1::SAFETY_CLASS_OTHER_COOKED_HAM:
      return "other cooked ham";
    case v1::SAFETY_CLASS_EGG_DISH:
      return "egg dishes";
    case v1::SAFETY_CLASS_LEFTOVERS:
      return "leftovers, casseroles";
    case v1::SAFETY_CLASS_FISH:
      return "fish";
    case v1::SAFETY_CLASS_PLANTS:
      return "vegetables, grains";
    case v1::SAFETY_CLASS_COLD_DISH:
      return "cold dishes";
    default:
      return "";
  }
}

std::string circumstanceWords(const v1::SafetyRule& row, const Units& units) {
  const std::string degrees = row.limits().empty() ? "" : units.degrees(row.limits(0).celsius());
  switch (row.circumstance()) {
    case v1::SAFETY_CIRCUMSTANCE_VERY_WARM_ROOM:
      return absl::StrCat("in a room above ", degrees);
    case v1::SAFETY_CIRCUMSTANCE_COLD_FOOD_IN_COOL_ROOM:
      return absl::StrCat("from the cold, in a room up to ", degrees);
    case v1::SAFETY_CIRCUMSTANCE_SMALL_ROAST:
      return "small roasts, no fan";
    default:
      return "";
  }
}

std::string durationWords(const v1::SafetyLimit& limit) {
  const std::int64_t seconds = limit.duration().seconds();
  constexpr std::int64_t kDay = 24 * 3600;
  if (seconds < 60) return absl::StrCat(seconds, " s");
  if (seconds >= kDay) return counted(seconds / kDay, "day", "days");
  return durationText(limit.duration());
}

// Never on the wrong side of the limit.
std::string degreesOf(const v1::SafetyLimit& limit, const Units& units) {
  const bool most = limit.kind() == v1::SAFETY_LIMIT_KIND_COLD_HOLD ||
                    limit.kind() == v1::SAFETY_LIMIT_KIND_FIRST_COOLING ||
                    limit.kind() == v1::SAFETY_LIMIT_KIND_COOLING;
  return most ? units.degreesAtMost(limit.celsius()) : units.degreesAtLeast(limit.celsius());
}

std::string limitWords(const v1::SafetyRule& row, v1::SafetyRules rules, const Units& units) {
  for (const v1::SafetyLimit& limit : row.limits()) {
    if (limit.rules() != rules) continue;
    const bool time = limit.duration().seconds() > 0;
    const bool timed =
        row.kind() == v1::SAFETY_LIMIT_KIND_ROOM_TIME || row.kind() == v1::SAFETY_LIMIT_KIND_REST ||
        row.kind() == v1::SAFETY_LIMIT_KIND_RAW_FRIDGE || row.kind() == v1::SAFETY_LIMIT_KIND_COOKED_FRIDGE;
    if (timed && !time) return row.kind() == v1::SAFETY_LIMIT_KIND_REST ? "none" : "never";
    const bool elsewhere = std::abs(limit.celsius() - row.limits(0).celsius()) > 0.1;
    if (timed)
      return durationWords(limit) +
             (elsewhere ? absl::StrCat(" up to ", units.degrees(limit.celsius())) : "");
    if (!time) return degreesOf(limit, units);
    return absl::StrCat(degreesOf(limit, units),
                        row.kind() == v1::SAFETY_LIMIT_KIND_END_TEMPERATURE ? " for " : " in ",
                        durationWords(limit));
  }
  return "–";
}

const char* rulesWords(v1::SafetyRules rules) {
  if (rules == v1::SAFETY_RULES_FOOD_SERVICE) return "for food service";
  return rules == v1::SAFETY_RULES_UK ? "of the United Kingdom" : "for cooking at home";
}

std::string rulesText(const v1::ListSafetyRulesResponse& answer, const Units& units, bool all, int width,
                      const Style& style) {
  Table table({{.title = "Limit", .fitted = false, .weight = 4},
               {.title = "Food", .fitted = false, .weight = 3},
               {.title = "At home"},
               {.title = "Food service"},
               {.title = "United Kingdom"},
               {.title = "Sources", .fitted = false, .weight = 5}});
  for (const v1::SafetyRule& row : answer.rows()) {
    if (!all && !row.differs()) continue;
    Cell sources;
    for (const v1::SafetyLimit& limit : row.limits())
      if (std::find(sources.begin(), sources.end(), limit.source()) == sources.end())
        sources.push_back(limit.source());
    const std::string food = foodWords(row.safety_class());
    const std::string when = circumstanceWords(row, units);
    table.add({{kindWords(row.kind())},
               {absl::StrCat(food, !food.empty() && !when.empty() ? ", " : "", when)},
               {limitWords(row, v1::SAFETY_RULES_CONSUMER, units)},
               {limitWords(row, v1::SAFETY_RULES_FOOD_SERVICE, units)},
               {limitWords(row, v1::SAFETY_RULES_UK, units)},
               std::move(sources)});
  }
  const std::string text =
      absl::StrCat("This household's plans keep the limits ", rulesWords(answer.rules()), ".\n",
                   "Where the United Kingdom's say nothing (–), its plans keep those for cooking at home.\n",
                   "Local codes and licensed practice come first.\n\n");
  return text + table.text(width, style, true);
}

absl::Status choose(const EventTask& task, const std::string& set) {
  v1::GetHouseholdRequest asked;
  asked.set_household_id(task.connection.householdId);
  auto household = task.connection.session->household(asked);
  if (!household.ok()) return household.status();
  v1::UpdateHouseholdRequest request;
  *request.mutable_household() = *std::move(household);
  request.mutable_household()->set_safety_rules(set == "uk"             ? v1::SAFETY_RULES_UK
                                                : set == "food-service" ? v1::SAFETY_RULES_FOOD_SERVICE
                                                                        : v1::SAFETY_RULES_CONSUMER);
  request.mutable_update_mask()->add_paths("safety_rules");
  request.set_request_id(link::newRequestId());
  return task.connection.session->updateHousehold(request).status();
}

}  // namespace

int runSafetyRules(const SafetyRulesCommand& command, Environment& environment) {
  int exitCode = kFailed;
  const auto task =
      eventTask({command.bundle, "", command.server, command.json, true}, environment, exitCode);
  if (!task) return exitCode;
  if (!command.choose.empty())
    if (const absl::Status status = choose(*task, command.choose); !status.ok())
      return reportFailure(environment, status, command.json);
  v1::ListSafetyRulesRequest request;
  request.set_household_id(task->connection.householdId);
  const auto answer = task->connection.session->safetyRules(request);
  if (!answer.ok()) return reportFailure(environment, answer.status(), command.json);
  environment.out << (command.json ? jsonOf(*answer)
                                   : rulesText(*answer, Units(task->bundle.household()), command.all,
                                               environment.width, Style(environment.colour)));
  return kOk;
}

}  // namespace suppertide::terminal
