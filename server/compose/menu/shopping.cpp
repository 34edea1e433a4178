// What a menu asks to buy, as documents.
#include <algorithm>

#include "absl/time/civil_time.h"
#include "absl/time/time.h"
#include "server/compose/menu/amounts.h"
#include "server/compose/menu/uses.h"

namespace suppertide::compose {
namespace {

int dayOf(const google::protobuf::Timestamp& time, const absl::TimeZone& zone) {
  return static_cast<int>(absl::ToCivilDay(absl::FromUnixSeconds(time.seconds()), zone) - absl::CivilDay());
}

int dayOf(const Menu& menu, const DishIngredient& one, const absl::TimeZone& zone) {
  if (const auto needed = neededOf(menu, one)) return dayOf(*needed, zone);
  for (const v1::Course& course : menu.event->courses())
    if (course.id() == one.dish->course_id()) return dayOf(course.serving_time(), zone);
  return 0;
}

std::vector<kitchen::ShoppingLine> linesOf(const Menu& menu, const std::vector<AtHand>& atHand) {
  const absl::TimeZone zone = zoneOf(menu);
  std::vector<kitchen::Use> uses;
  for (const DishIngredient& one : ingredientsOf(menu))
    uses.push_back({one.dish->id(), one.name, one.amount, dayOf(menu, one, zone)});
  std::vector<kitchen::Stock> stock;
  for (const AtHand& one : atHand) stock.push_back({one.name, amountOf(one.amount)});
  return kitchen::shoppingList(uses, stock);
}

bool isFrozen(const kitchen::ShoppingLine& line) {
  return line.name.rfind("frozen ", 0) == 0;
}

v1::ShoppingItem itemOf(const kitchen::ShoppingLine& line, kitchen::Measures shownIn) {
  v1::ShoppingItem item;
  item.set_name(line.name);
  item.set_section(static_cast<v1::ShopSection>(static_cast<int>(line.section) + 1));
  item.set_needed_date(std::string(absl::FormatCivilTime(absl::CivilDay() + line.day)));
  *item.mutable_needed() = amountOf(line.needed);
  if (line.atHand.value > 0) *item.mutable_at_hand() = amountOf(line.atHand);
  *item.mutable_to_buy() = amountOf(line.toBuy);
  item.set_shown(shownToBuy(line.toBuy, shownIn));
  if (item.section() == v1::SHOP_SECTION_OTHER && isFrozen(line)) item.set_section(v1::SHOP_SECTION_FROZEN);
  for (const kitchen::Use& use : line.uses) {
    v1::ItemUse& told = *item.add_uses();
    told.set_dish_id(use.dishId);
    told.set_name(use.name);
    *told.mutable_amount() = amountOf(use.amount);
  }
  return item;
}
static_assert(static_cast<int>(kitchen::ShopSection::kOther) + 1 == v1::SHOP_SECTION_OTHER);

}  // namespace

std::vector<v1::ShoppingItem> shoppingItems(const Menu& menu, const std::vector<AtHand>& atHand,
                                            kitchen::Measures shownIn) {
  const bool planned = menu.plan != nullptr && !menu.plan->steps().empty();
  std::vector<v1::ShoppingItem> items;
  for (const kitchen::ShoppingLine& line : linesOf(menu, atHand)) {
    v1::ShoppingItem item = itemOf(line, shownIn);
    item.set_date_from_plan(planned && std::any_of(line.uses.begin(), line.uses.end(), [&](const auto& use) {
                              return beginOf(menu, use.dishId).has_value();
                            }));
    items.push_back(std::move(item));
  }
  return items;
}

std::vector<v1::ShoppingChange> shoppingChanges(const Menu& before, const Menu& after,
                                                const std::vector<AtHand>& atHand) {
  std::vector<v1::ShoppingChange> changes;
  for (const kitchen::LineChange& from :
       kitchen::changesOf(linesOf(before, atHand), linesOf(after, atHand))) {
    v1::ShoppingChange& change = changes.emplace_back();
    change.set_name(from.name);
    if (from.before) *change.mutable_before() = amountOf(*from.before);
    if (from.after) *change.mutable_after() = amountOf(*from.after);
  }
  return changes;
}

}  // namespace suppertide::compose
