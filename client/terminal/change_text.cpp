#include "client/terminal/change_text.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "absl/strings/str_cat.h"
#include "client/terminal/names.h"
#include "client/terminal/text.h"
#include "client/terminal/time_text.h"
#include "client/terminal/units.h"

namespace suppertide::terminal {
namespace {

bool sameDocument(const google::protobuf::Message& a, const google::protobuf::Message& b) {
  return a.SerializeAsString() == b.SerializeAsString();
}

// An etag says at once whether a document was written; without one its content does.
template <typename Document>
bool differs(const Document& before, const Document& after) {
  if (!before.meta().etag().empty() && !after.meta().etag().empty())
    return before.meta().etag() != after.meta().etag();
  return !sameDocument(before, after);
}

template <typename Document>
void compare(const std::map<std::string, Document>& before, const std::map<std::string, Document>& after,
             const std::string& kind, std::vector<ChangeLine>& lines) {
  const auto named = [&](const Document& document) {
    return absl::StrCat("the ", kind, " ", plainLine(document.display_name()));
  };
  for (const auto& [id, document] : after) {
    const auto old = before.find(id);
    if (old == before.end()) {
      lines.push_back({kind, id, absl::StrCat("added ", named(document))});
    } else if (differs(old->second, document)) {
      lines.push_back({kind, id, absl::StrCat("changed ", named(document))});
    }
  }
  for (const auto& [id, document] : before) {
    if (after.count(id) == 0) lines.push_back({kind, id, absl::StrCat("deleted ", named(document))});
  }
}

std::string eventName(const link::Replica& replica, const std::string& id) {
  const auto event = replica.events.find(id);
  return event == replica.events.end() ? plainLine(id) : plainLine(event->second.display_name());
}

void comparePlans(const link::Replica& before, const link::Replica& after, std::vector<ChangeLine>& lines) {
  for (const auto& [id, plan] : after.plans) {
    const auto old = before.plans.find(id);
    if (old != before.plans.end() && !differs(old->second, plan)) continue;
    std::string text = absl::StrCat(
        old == before.plans.end() ? "made a plan for " : "made a new plan for ", eventName(after, id), ": ",
        plan.unserved_size() == 0
            ? "all dishes served"
            : absl::StrCat(counted(plan.unserved_size(), "dish", "dishes"), " not served"));
    if (plan.quality().costs().lateness() > 0)
      absl::StrAppend(&text, ", ", plan.quality().costs().lateness(), " min late");
    lines.push_back({"plan", id, text});
  }
  for (const auto& [id, plan] : before.plans) {
    if (after.plans.count(id) == 0)
      lines.push_back({"plan", id, absl::StrCat("deleted the plan for ", eventName(before, id))});
  }
}

std::string dentWords(v1::DentTest dent) {
  switch (dent) {
    case v1::DENT_TEST_SPRINGS_BACK:
      return "a dent springs back at once";
    case v1::DENT_TEST_SLOW_RETURN:
      return "a dent comes back slowly";
    case v1::DENT_TEST_STAYS:
      return "a dent stays";
    default:
      return "a dent was tried";
  }
}

std::string oneDecimal(double value) {
  return absl::StrCat(std::round(value * 10) / 10);
}

std::string reportWords(const v1::Report& report, const Names& names, const Units& units) {
  switch (report.what_case()) {
    case v1::Report::kStarted:
      return "started";
    case v1::Report::kFinished:
      return "finished";
    case v1::Report::kSkipped:
      return "left out";
    case v1::Report::kDelayedBy:
      return absl::StrCat("later by ", durationText(report.delayed_by()));
    case v1::Report::kHandedToMemberId:
      return absl::StrCat("handed to ", names.cook(report.handed_to_member_id()));
    case v1::Report::kRise:
      return absl::StrCat("risen to ", oneDecimal(report.rise()), " times its volume");
    case v1::Report::kDoughCelsius:
      return absl::StrCat("the dough is at ", units.degrees(report.dough_celsius()));
    case v1::Report::kCoreCelsius:
      return absl::StrCat("the core is at ", units.degrees(report.core_celsius()));
    case v1::Report::kOvenCelsius:
      return absl::StrCat("the oven is at ", units.degrees(report.oven_celsius()));
    case v1::Report::kDentTest:
      return dentWords(report.dent_test());
    case v1::Report::kUndoneReportId:
      return "took back a report";
    case v1::Report::kDone:
      return "is done, by its look";
    case v1::Report::kNeedsMoreDuration:
      return absl::StrCat("needs ", durationText(report.needs_more_duration()), " more");
    case v1::Report::kLeftOverServingCount:
      return absl::StrCat(oneDecimal(report.left_over_serving_count()), " portions were left over");
    case v1::Report::WHAT_NOT_SET:
      return "a note";
  }
  return "reported";
}

v1::Bundle documentsOf(const link::Replica& replica) {
  v1::Bundle bundle;
  *bundle.mutable_household() = replica.household;
  for (const auto& [id, kitchen] : replica.kitchens) *bundle.add_kitchens() = kitchen;
  for (const auto& [id, recipe] : replica.recipes) *bundle.add_recipes() = recipe;
  return bundle;
}

// "Shape the rolls · Butter rolls: ", "Butter rolls: "; empty for what is of no dish.
std::string aboutWhat(const v1::Report& report, const Names& names) {
  if (report.dish_id().empty()) return "";
  if (report.step_id().empty()) return absl::StrCat(names.dish(report.dish_id()), ": ");
  return absl::StrCat(names.step(report.dish_id(), report.step_id()), " · ", names.dish(report.dish_id()),
                      ": ");
}

void compareProgress(const link::Replica& before, const link::Replica& after,
                     std::vector<ChangeLine>& lines) {
  for (const auto& [id, progress] : after.progresses) {
    const auto old = before.progresses.find(id);
    if (old != before.progresses.end() && !differs(old->second, progress)) continue;
    std::set<std::string> known;
    if (old != before.progresses.end()) {
      for (const v1::Report& report : old->second.reports()) known.insert(report.id());
    }
    const auto event = after.events.find(id);
    const v1::Event& shown = event == after.events.end() ? v1::Event::default_instance() : event->second;
    const Names names(documentsOf(after), shown);
    const Clock clock(shown.time_zone().empty() ? after.household.time_zone() : shown.time_zone());
    for (const v1::Report& report : progress.reports()) {
      if (known.count(report.id()) > 0) continue;
      std::string text = absl::StrCat("reports: ", aboutWhat(report, names),
                                      reportWords(report, names, Units(after.household)));
      if (report.has_happen_time())
        absl::StrAppend(&text, ", at ", clock.dayHour(toTime(report.happen_time())));
      if (!report.note().empty()) absl::StrAppend(&text, " (", plainLine(report.note()), ")");
      lines.push_back({"report", id, text});
    }
  }
}

template <typename List, typename Key, typename Same>
std::vector<std::string> newIn(const List& before, const List& after, Key key, Same same) {
  std::vector<std::string> found;
  for (const auto& one : after)
    if (std::none_of(before.begin(), before.end(), [&](const auto& old) { return same(old, one); }))
      found.push_back(plainLine(key(one)));
  return found;
}

// Who shops wants to know what is in somebody's basket; the rest is told as a change.
void compareShopping(const link::Replica& before, const link::Replica& after,
                     std::vector<ChangeLine>& lines) {
  for (const auto& [id, shopping] : after.shoppings) {
    const auto found = before.shoppings.find(id);
    if (found != before.shoppings.end() && !differs(found->second, shopping)) continue;
    const v1::Shopping old = found == before.shoppings.end() ? v1::Shopping() : found->second;
    const auto named = [](const auto& one) { return one.name(); };
    const auto sameItem = [](const v1::Tick& a, const v1::Tick& b) { return a.item_id() == b.item_id(); };
    const auto sameId = [](const v1::OwnItem& a, const v1::OwnItem& b) { return a.id() == b.id(); };
    const std::string where = absl::StrCat("shopping for ", eventName(after, id), ": ");
    const std::size_t count = lines.size();
    const auto tell = [&, event = id](const std::string& what, const std::vector<std::string>& names) {
      if (!names.empty()) lines.push_back({"shopping", event, absl::StrCat(where, what, joinWords(names))});
    };
    tell("in the basket: ", newIn(old.ticks(), shopping.ticks(), named, sameItem));
    tell("not in the basket after all: ", newIn(shopping.ticks(), old.ticks(), named, sameItem));
    tell("added: ", newIn(old.own_items(), shopping.own_items(), named, sameId));
    tell("dropped: ", newIn(shopping.own_items(), old.own_items(), named, sameId));
    if (lines.size() == count)
      lines.push_back({"shopping", id, absl::StrCat(where, "changed what is at hand or who buys")});
  }
}

}  // namespace

std::vector<ChangeLine> changesBetween(const link::Replica& before, const link::Replica& after) {
  std::vector<ChangeLine> lines;
  if (differs(before.household, after.household)) {
    lines.push_back({"household", after.household.id(), "changed the household"});
  }
  compare(before.kitchens, after.kitchens, "kitchen", lines);
  compare(before.starters, after.starters, "starter", lines);
  compare(before.recipes, after.recipes, "recipe", lines);
  compare(before.events, after.events, "event", lines);
  comparePlans(before, after, lines);
  compareProgress(before, after, lines);
  compareShopping(before, after, lines);
  return lines;
}

}  // namespace suppertide::terminal
