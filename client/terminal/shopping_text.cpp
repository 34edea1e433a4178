// What to buy, by day and section, and what to take out.
#include <cmath>
#include <set>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "absl/time/civil_time.h"
#include "client/terminal/fetch_text.h"
#include "client/terminal/menu_text.h"
#include "client/terminal/text.h"

namespace suppertide::terminal {
namespace {

constexpr int kAmountWidth = 11;
constexpr std::size_t kMostDishes = 3;  // told by name

const char* sectionWords(v1::ShopSection section) {
  switch (section) {
    case v1::SHOP_SECTION_PRODUCE:
      return "Vegetables and fruit";
    case v1::SHOP_SECTION_MEAT_FISH:
      return "Meat and fish";
    case v1::SHOP_SECTION_DAIRY_EGGS:
      return "Milk, butter and eggs";
    case v1::SHOP_SECTION_BAKING:
      return "Baking";
    case v1::SHOP_SECTION_DRY_GOODS:
      return "Dry goods";
    case v1::SHOP_SECTION_SPICES:
      return "Herbs and spices";
    case v1::SHOP_SECTION_FROZEN:
      return "Frozen";
    case v1::SHOP_SECTION_DRINKS:
      return "Drinks";
    default:
      return "Other";
  }
}

double valueOf(const v1::Amount& amount) {
  return amount.has_mass_g() ? amount.mass_g() : amount.has_volume_ml() ? amount.volume_ml() : amount.count();
}

bool isEnough(const v1::ShoppingItem& item) {
  return item.to_buy().kind_case() != v1::Amount::KIND_NOT_SET && valueOf(item.to_buy()) <= 0;
}

std::string itemText(const v1::ShoppingItem& item, const Names& names, const Page& page) {
  std::set<std::string> all;
  for (const v1::ItemUse& use : item.uses()) all.insert(names.dish(use.dish_id()));
  std::vector<std::string> dishes(all.begin(), all.end());
  if (dishes.size() > kMostDishes) {
    dishes.resize(kMostDishes - 1);
    dishes.push_back(absl::StrCat(all.size() - dishes.size(), " more dishes"));
  }
  const bool ticked = !item.ticked_by_member_id().empty();
  std::string text = plainLine(item.name());
  if (ticked) absl::StrAppend(&text, ", in the basket of ", names.cook(item.ticked_by_member_id()));
  if (item.has_missing()) absl::StrAppend(&text, ", ", amountText(item.missing(), page), " more to buy");
  if (item.has_at_hand()) absl::StrAppend(&text, ", beside ", amountText(item.at_hand(), page), " at hand");
  if (!ticked && !item.buyer_member_id().empty())
    absl::StrAppend(&text, ", ", names.cook(item.buyer_member_id()));
  if (!dishes.empty()) absl::StrAppend(&text, "  (", joinWords(dishes), ")");
  const char* mark = !ticked ? "    " : item.has_missing() ? "  ~ " : "  ✓ ";
  return hanging(absl::StrCat(mark, padLeft(item.shown(), kAmountWidth), "  "), text, page.width);
}

}  // namespace

std::string dateText(const std::string& date) {
  absl::CivilDay day;
  if (!absl::ParseCivilTime(date, &day)) return date;
  const absl::Time time = absl::FromCivil(day, absl::UTCTimeZone());
  return absl::StrCat(absl::FormatTime("%A ", time, absl::UTCTimeZone()), day.day(),
                      absl::FormatTime(" %B", time, absl::UTCTimeZone()));
}

std::string amountText(const v1::Amount& amount) {
  const auto scale = [](double value, const char* small, const char* large) {
    return value < 1000 ? absl::StrCat(value < 10 ? std::round(value * 10) / 10 : std::round(value), small)
                        : absl::StrFormat("%.4g%s", value / 1000, large);
  };
  if (amount.has_mass_g()) return scale(amount.mass_g(), " g", " kg");
  if (amount.has_volume_ml()) return scale(amount.volume_ml(), " ml", " l");
  return amount.has_count() ? absl::StrCat(std::round(amount.count() * 4) / 4) : "";
}

std::string amountText(const v1::Amount& amount, const Page& page) {
  constexpr double kGramsInOunce = 28.349523125;  // the international avoirdupois ounce, exact
  if (!page.ounces || !amount.has_mass_g()) return amountText(amount);
  const double ounces = amount.mass_g() / kGramsInOunce;
  return absl::StrCat(std::round(ounces * 10) / 10, " oz");
}

std::string shoppingText(const v1::Bundle& bundle, const v1::Event& event,
                         const v1::MakeShoppingListResponse& list, const Page& page) {
  const Style style(page.colour);
  const Names names(bundle, event);
  std::string text;
  std::string day;
  std::string section;
  std::vector<std::string> enough;
  bool own = false;
  for (const v1::ShoppingItem& item : list.items()) {
    if (isEnough(item)) {
      enough.push_back(plainLine(item.name()));
      continue;
    }
    const bool first = text.empty();
    if (item.own() ? !own : item.needed_date() != day) {
      absl::StrAppend(&text, first ? "" : "\n",
                      style.heading(item.own() ? "Added by hand"
                                               : absl::StrCat("Needed on ", dateText(item.needed_date()))),
                      item.own() || item.date_from_plan() ? "" : " (when it is served: there is no plan yet)",
                      "\n");
      section.clear();
    }
    own = item.own();
    day = item.needed_date();
    if (const std::string words = sectionWords(item.section()); words != section)
      absl::StrAppend(&text, "  ", section = words, "\n");
    text += itemText(item, names, page);
  }
  if (text.empty()) text = "Nothing to buy.\n";
  if (!enough.empty())
    absl::StrAppend(&text, "\n", hanging("", "Enough at hand: " + joinWords(enough), page.width));
  std::vector<std::string> needless;
  for (const v1::Tick& tick : list.needless_ticks()) {
    const std::string bought = amountText(tick.bought(), page);
    needless.push_back(absl::StrCat(bought, bought.empty() ? "" : " ", plainLine(tick.name())));
  }
  if (!needless.empty())
    absl::StrAppend(&text, "\n",
                    hanging("", "Bought, and not on the list any more: " + joinWords(needless), page.width));
  const Clock clock(event.time_zone().empty() ? bundle.household().time_zone() : event.time_zone());
  const std::string fetches = fetchLines(list.fetches(), names, clock, "", page.width);
  if (!fetches.empty()) absl::StrAppend(&text, "\n", style.heading("Take out in time"), "\n", fetches);
  return text;
}

std::string uncountedText(const std::vector<std::string>& names, const Page& page) {
  if (names.empty()) return "";
  return "\n" + hanging("",
                        absl::StrCat("Not counted: ", plainLine(joinWords(names)),
                                     " (not on the list, or measured in a way that cannot be compared)."),
                        page.width);
}

std::string shoppingChangesText(const v1::MakeShoppingListResponse& list, const Page& page) {
  if (list.changes().empty()) return "Nothing else is bought.\n";
  std::string text;
  for (const v1::ShoppingChange& change : list.changes()) {
    const std::string before = change.has_before() ? amountText(change.before(), page) : "";
    const std::string after = change.has_after() ? amountText(change.after(), page) : "";
    std::string words;
    if (!change.has_after())
      words = absl::StrCat("no ", plainLine(change.name()), before.empty() ? "" : " (was " + before + ")");
    else if (!change.has_before())
      words = absl::StrCat("new: ", after, after.empty() ? "" : " ", plainLine(change.name()));
    else
      words = absl::StrCat(plainLine(change.name()), ": ", after, " instead of ", before);
    text += hanging("• ", words, page.width);
  }
  return text;
}

}  // namespace suppertide::terminal
