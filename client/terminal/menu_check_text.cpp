// Who can eat what, what needs care, and whether it is enough.
#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "absl/time/civil_time.h"
#include "client/terminal/menu_text.h"
#include "client/terminal/table.h"
#include "client/terminal/text.h"

namespace suppertide::terminal {
namespace {

constexpr int kWideEnough = 100;  // for a column a course
constexpr int kMostColumns = 4;

constexpr const char* kLegend = "✓ suits   ✗ does not   ~ disliked   ? not known   ! ask";

const char* fitSign(v1::DishFit fit) {
  switch (fit) {
    case v1::DISH_FIT_SUITS:
      return "✓";
    case v1::DISH_FIT_ASK:
      return "!";
    case v1::DISH_FIT_DISLIKED:
      return "~";
    case v1::DISH_FIT_HOLDS:
      return "✗";
    default:
      return "?";
  }
}

// Each ingredient once: "butter: milk"; what is unknown by its ingredient alone.
std::string whyOf(const v1::DishForGuest& dish) {
  std::vector<std::string> told;
  std::set<std::string> seen;
  for (const v1::FitReason& reason : dish.reasons()) {
    if (reason.fit() != dish.fit()) continue;
    // What stands behind the comma is how it is prepared.
    const std::string whole = plainLine(reason.ingredient());
    const std::string part = whole.substr(0, whole.find(','));
    if (!seen.insert(part).second) continue;
    const bool named = reason.substance().empty() || part.find(reason.substance()) != std::string::npos;
    told.push_back(part.empty() ? "nothing is told of it"
                   : named      ? part
                                : absl::StrCat(part, ": ", plainLine(reason.substance())));
  }
  if (told.size() > 3) {
    const std::size_t more = told.size() - 2;
    told.resize(2);
    told.push_back(absl::StrCat(more, " more"));
  }
  return told.empty() ? "" : absl::StrCat(" (", joinWords(told), ")");
}

std::string dishLine(const v1::DishForGuest& dish, const Names& names) {
  return absl::StrCat(fitSign(dish.fit()), " ", names.dish(dish.dish_id()), whyOf(dish));
}

std::string needsOf(const v1::Guest& guest) {
  std::vector<std::string> needs;
  for (const v1::Need& need : guest.needs()) {
    std::string text = plainLine(need.name());
    if (need.severity() == v1::NEED_SEVERITY_NO_TRACES) text += ", not even traces";
    if (need.severity() == v1::NEED_SEVERITY_DISLIKE) text += " disliked";
    needs.push_back(text);
  }
  return joinWords(needs);
}

// "2027-09-01" to "Wed 1 September".
std::string shortDay(const std::string& date) {
  absl::CivilDay day;
  if (!absl::ParseCivilTime(date, &day)) return date;
  return absl::FormatTime("%a %e %B", absl::FromCivil(day, absl::UTCTimeZone()), absl::UTCTimeZone());
}

class Told {
 public:
  Told(const v1::Bundle& bundle, const v1::Event& event, const Page& page)
      : event_(event), names_(bundle, event), style_(page.colour), page_(page) {
    for (const v1::Guest& guest : event.guests())
      guestNames_[guest.id()] = plainLine(guest.display_name().empty() ? guest.id() : guest.display_name());
  }

  std::string table(const v1::CheckMenuResponse& check) const {
    const bool wide = page_.width >= kWideEnough && event_.courses_size() <= kMostColumns;
    std::string text = wide ? columns(check) : blocks(check);
    std::vector<std::string> easy;
    for (const v1::Guest& guest : event_.guests())
      if (guest.needs().empty()) easy.push_back(guestName(guest.id()));
    if (text.empty()) return "No guest has a need.\n";
    absl::StrAppend(&text, "\n", kLegend, "\n");
    if (!easy.empty()) absl::StrAppend(&text, wrapped("", "Without needs: " + joinWords(easy) + "."));
    return text;
  }

  std::string warning(const v1::MenuWarning& warning) const {
    const std::string who = guestName(warning.guest_id());
    const std::string course = names_.course(warning.course_id());
    switch (warning.kind()) {
      case v1::MENU_WARNING_KIND_NOTHING_TO_EAT:
        return absl::StrCat(who, " has nothing to eat at ", course, ".");
      case v1::MENU_WARNING_KIND_CONTENTS_UNKNOWN:
        return absl::StrCat("Nothing at ", course, " is known to suit ", who, ": read the labels and ask.");
      case v1::MENU_WARNING_KIND_OWN_WORDS:
        return absl::StrCat("\"", plainLine(warning.need()), "\" of ", who,
                            " was only looked for in the names of ingredients.");
      case v1::MENU_WARNING_KIND_NO_TRACES:
        return absl::StrCat(
            who, ": not even traces of ", plainLine(warning.need()),
            ". Dishes free of it get clean tools and never share an oven with the others; the "
            "plan keeps them apart.");
      case v1::MENU_WARNING_KIND_CONTENTS_DIFFER:
        return absl::StrCat(names_.dish(warning.dish_id()), ": ", plainLine(warning.ingredient()),
                            " usually holds ", plainLine(warning.substance()),
                            ", and its recipe does not say so.");
      case v1::MENU_WARNING_KIND_TOO_LITTLE:
      case v1::MENU_WARNING_KIND_TOO_MUCH:
        return amountWarning(warning);
      default:
        return "";
    }
  }

  std::string portions(const v1::CheckMenuResponse& check) const {
    Table table({{"Dish", true, 1, 34}, {"Made for"}, {"Eaten"}, {"Usual", false}, {"Left-overs until"}});
    for (const v1::DishPortion& portion : check.portions()) {
      Cell guides;
      for (const v1::PortionGuide& guide : portion.guides()) guides.push_back(guideText(guide));
      table.add({{names_.dish(portion.dish_id())},
                 {number(portion.made_servings())},
                 {number(portion.eaten_servings())},
                 guides,
                 {shortDay(portion.use_by_date())}});
    }
    if (table.empty()) return "";
    return absl::StrCat("\n", style_.heading("Portions"), "\n", table.text(page_.width, style_, true));
  }

  std::string heading(const std::string& text) const { return style_.heading(text); }

  std::string wrapped(const std::string& first, const std::string& text) const {
    return hanging(first, text, page_.width);
  }

 private:
  std::string guestName(const std::string& id) const {
    const auto found = guestNames_.find(id);
    return found == guestNames_.end() ? plainLine(id) : found->second;
  }

  static std::string number(double value) {
    return std::abs(value - std::round(value)) < 0.05 ? absl::StrFormat("%.0f", value)
                                                      : absl::StrFormat("%.1f", value);
  }

  static std::string guideText(const v1::PortionGuide& guide) {
    const std::string amount = amountText(guide.amount());
    return absl::StrCat(amount, amount.empty() ? "" : " ", plainLine(guide.name()), ", usual ", range(guide),
                        " (", plainLine(guide.source()), ")");
  }

  static std::string range(const v1::PortionGuide& guide) {
    const std::string least = amountText(guide.least());
    const std::string most = amountText(guide.most());
    return least == most ? least : absl::StrCat(least, " to ", most);
  }

  std::string amountWarning(const v1::MenuWarning& warning) const {
    const v1::PortionGuide& guide = warning.portion();
    const bool little = warning.kind() == v1::MENU_WARNING_KIND_TOO_LITTLE;
    const std::string where = warning.dish_id().empty() ? "The whole menu" : names_.dish(warning.dish_id());
    return absl::StrCat(where, " has ", amountText(guide.amount()), " of ", plainLine(guide.name()), ", far ",
                        little ? "less" : "more", " than these guests usually eat: ", range(guide), " (",
                        plainLine(guide.source()), ").");
  }

  // A guest a row, a course a column.
  std::string columns(const v1::CheckMenuResponse& check) const {
    std::vector<Column> heads = {{.title = "Guest", .most = 20}};
    for (const v1::Course& course : event_.courses())
      heads.push_back({.title = names_.course(course.id()), .fitted = false});
    Table table(heads);
    for (const v1::Guest& guest : event_.guests()) {
      if (guest.needs().empty()) continue;
      Row row = {{guestName(guest.id()), needsOf(guest)}};
      for (const v1::Course& course : event_.courses()) {
        Cell cell;
        for (const v1::GuestCourse& one : check.cells())
          if (one.guest_id() == guest.id() && one.course_id() == course.id())
            for (const v1::DishForGuest& dish : one.dishes()) cell.push_back(dishLine(dish, names_));
        cell.push_back("");
        row.push_back(cell);
      }
      table.add(row);
    }
    return table.empty() ? "" : table.text(page_.width, style_, true);
  }

  // A guest a paragraph.
  std::string blocks(const v1::CheckMenuResponse& check) const {
    std::string text;
    for (const v1::Guest& guest : event_.guests()) {
      if (guest.needs().empty()) continue;
      absl::StrAppend(&text, text.empty() ? "" : "\n", style_.heading(guestName(guest.id())), "  ",
                      needsOf(guest), "\n");
      Table table({{.title = "", .most = 20, .least = 14}, {.title = "", .fitted = false}});
      for (const v1::GuestCourse& cell : check.cells()) {
        if (cell.guest_id() != guest.id()) continue;
        Cell dishes;
        for (const v1::DishForGuest& dish : cell.dishes()) dishes.push_back(dishLine(dish, names_));
        table.add({{"  " + names_.course(cell.course_id())}, dishes});
      }
      text += table.text(page_.width, style_, false);
    }
    return text;
  }

  const v1::Event& event_;
  Names names_;
  Style style_;
  Page page_;
  std::map<std::string, std::string> guestNames_;
};

// Dishes whose recipes do not say what they handle: nothing keeps their hours or temperatures.
std::vector<std::string> dishesWithoutLimits(const v1::Bundle& bundle, const v1::Event& event) {
  const Names names(bundle, event);
  std::vector<std::string> dishes;
  for (const v1::Dish& dish : event.dishes())
    for (const v1::Recipe& recipe : bundle.recipes()) {
      if (recipe.id() != dish.recipe_id() || recipe.safety_class() != v1::SAFETY_CLASS_UNSPECIFIED) continue;
      if (std::none_of(recipe.steps().begin(), recipe.steps().end(), [](const v1::Step& step) {
            return step.safety_class() != v1::SAFETY_CLASS_UNSPECIFIED;
          }))
        dishes.push_back(names.dish(dish.id()));
    }
  return dishes;
}

}  // namespace

std::string menuCheckText(const v1::Bundle& bundle, const v1::Event& event,
                          const v1::CheckMenuResponse& check, const Page& page) {
  const Told told(bundle, event, page);
  std::string text = told.table(check);
  if (!check.warnings().empty()) absl::StrAppend(&text, "\n", told.heading("Take care"), "\n");
  for (const v1::MenuWarning& warning : check.warnings()) text += told.wrapped("• ", told.warning(warning));
  if (const auto without = dishesWithoutLimits(bundle, event); !without.empty())
    absl::StrAppend(&text, "\n",
                    told.wrapped("", absl::StrCat("No food-safety limits are kept for ", joinWords(without),
                                                  ": the recipe does not say what it handles "
                                                  "(safetyClass). Unknown is not safe.")));
  text += told.portions(check);
  return text + "\n" + told.wrapped("", "Ask the guests and read the labels; this is no medical advice.");
}

std::string newWarningsText(const v1::Bundle& bundle, const v1::Event& event,
                            const v1::CheckMenuResponse& before, const v1::CheckMenuResponse& after,
                            const Page& page) {
  const Told told(bundle, event, page);
  std::set<std::string> known;
  for (const v1::MenuWarning& warning : before.warnings()) known.insert(told.warning(warning));
  std::string text;
  for (const v1::MenuWarning& warning : after.warnings())
    if (const std::string words = told.warning(warning); known.count(words) == 0)
      text += told.wrapped("• ", words);
  return text;
}

}  // namespace suppertide::terminal
