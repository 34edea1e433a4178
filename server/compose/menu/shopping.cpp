// What a menu asks to buy, as documents.
#include <algorithm>

#include "absl/strings/str_cat.h"
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

std::vector<kitchen::ShoppingLine> linesOf(const Menu& menu, const v1::Shopping& notes) {
  const absl::TimeZone zone = zoneOf(menu);
  std::vector<kitchen::Use> uses;
  for (const DishIngredient& one : ingredientsOf(menu))
    uses.push_back({one.dish->id(), one.name, one.amount, dayOf(menu, one, zone)});
  std::vector<kitchen::Stock> stock;
  for (const v1::AtHand& one : notes.at_hand()) stock.push_back({one.name(), amountOf(one.amount())});
  std::vector<kitchen::Pack> packs;
  for (const v1::Packet& one : notes.packets()) packs.push_back({one.name(), amountOf(one.size())});
  return kitchen::shoppingList(uses, stock, packs);
}

// With amounts as the list tells them: a few grams more that nobody weighs out at the shop are no change.
std::vector<kitchen::ShoppingLine> roundedLines(const Menu& menu, const v1::Shopping& notes) {
  std::vector<kitchen::ShoppingLine> lines = linesOf(menu, notes);
  for (kitchen::ShoppingLine& line : lines)
    if (line.packCount == 0) line.toBuy = asBought(line.toBuy);
  return lines;
}

bool isFrozen(const kitchen::ShoppingLine& line) {
  return line.name.rfind("frozen ", 0) == 0;
}

v1::ShoppingItem itemOf(const kitchen::ShoppingLine& line, kitchen::Measures shownIn) {
  v1::ShoppingItem item;
  item.set_id(line.key);
  item.set_name(line.name);
  item.set_section(static_cast<v1::ShopSection>(static_cast<int>(line.section) + 1));
  item.set_needed_date(std::string(absl::FormatCivilTime(absl::CivilDay() + line.day)));
  *item.mutable_needed() = amountOf(line.needed);
  if (line.atHand.value > 0) *item.mutable_at_hand() = amountOf(line.atHand);
  *item.mutable_to_buy() = amountOf(line.toBuy);
  item.set_shown(shownToBuy(line.toBuy, shownIn));
  if (line.packCount > 0) {
    *item.mutable_packet_size() = amountOf(line.pack);
    item.set_packet_count(line.packCount);
    item.set_shown(absl::StrCat(line.packCount, " × ", shownAmount(line.pack, shownIn)));
  }
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

v1::ShoppingItem ownItem(const v1::OwnItem& own) {
  v1::ShoppingItem item;
  item.set_id(ownItemId(own.id()));
  item.set_name(own.name());
  item.set_section(own.section() == v1::SHOP_SECTION_UNSPECIFIED ? v1::SHOP_SECTION_OTHER : own.section());
  item.set_own(true);
  return item;
}

// Whoever took the line, else its section, else the rest.
std::string buyerOf(const v1::Shopping& notes, const v1::ShoppingItem& item) {
  const auto has = [](const auto& list, const auto& one) {
    return std::find(list.begin(), list.end(), one) != list.end();
  };
  for (const v1::Buyer& buyer : notes.buyers())
    if (has(buyer.item_ids(), item.id())) return buyer.member_id();
  for (const v1::Buyer& buyer : notes.buyers())
    if (has(buyer.sections(), item.section())) return buyer.member_id();
  for (const v1::Buyer& buyer : notes.buyers())
    if (buyer.sections().empty() && buyer.item_ids().empty()) return buyer.member_id();
  return "";
}

// `line`: null for one of the household's own.
void addNotes(const v1::Shopping& notes, const kitchen::ShoppingLine* line, v1::ShoppingItem& item) {
  item.set_buyer_member_id(buyerOf(notes, item));
  for (const v1::Tick& tick : notes.ticks()) {
    if (tick.item_id() != item.id()) continue;
    item.set_ticked_by_member_id(tick.member_id());
    *item.mutable_tick_time() = tick.time();
    if (tick.has_bought()) *item.mutable_bought() = tick.bought();
    const kitchen::Amount bought = amountOf(tick.bought());
    if (line == nullptr || bought.kind != line->toBuy.kind) continue;
    const kitchen::Amount missing{bought.kind, kitchen::stillToBuy(*line, bought.value)};
    if (missing.value > 0) *item.mutable_missing() = amountOf(missing);
  }
}

}  // namespace

std::string ownItemId(const std::string& id) {
  return "own:" + id;
}

std::vector<v1::ShoppingItem> shoppingItems(const Menu& menu, const v1::Shopping& notes,
                                            kitchen::Measures shownIn) {
  const bool planned = menu.plan != nullptr && !menu.plan->steps().empty();
  std::vector<v1::ShoppingItem> items;
  for (const kitchen::ShoppingLine& line : linesOf(menu, notes)) {
    v1::ShoppingItem item = itemOf(line, shownIn);
    item.set_date_from_plan(planned && std::any_of(line.uses.begin(), line.uses.end(), [&](const auto& use) {
                              return beginOf(menu, use.dishId).has_value();
                            }));
    addNotes(notes, &line, item);
    items.push_back(std::move(item));
  }
  for (const v1::OwnItem& own : notes.own_items()) {
    addNotes(notes, nullptr, items.emplace_back(ownItem(own)));
  }
  return items;
}

std::vector<v1::Tick> needlessTicks(const std::vector<v1::ShoppingItem>& items, const v1::Shopping& notes) {
  std::vector<v1::Tick> needless;
  for (const v1::Tick& tick : notes.ticks()) {
    const bool asked = std::any_of(items.begin(), items.end(), [&](const v1::ShoppingItem& item) {
      const kitchen::Amount toBuy = amountOf(item.to_buy());
      const bool nothing = toBuy.kind != kitchen::AmountKind::kSome && toBuy.value <= 0;
      return item.id() == tick.item_id() && !nothing;
    });
    if (!asked) needless.push_back(tick);
  }
  return needless;
}

std::vector<v1::ShoppingChange> shoppingChanges(const Menu& before, const Menu& after,
                                                const v1::Shopping& notes) {
  std::vector<v1::ShoppingChange> changes;
  for (const kitchen::LineChange& from :
       kitchen::changesOf(roundedLines(before, notes), roundedLines(after, notes))) {
    v1::ShoppingChange& change = changes.emplace_back();
    change.set_name(from.name);
    if (from.before) *change.mutable_before() = amountOf(*from.before);
    if (from.after) *change.mutable_after() = amountOf(*from.after);
  }
  return changes;
}

}  // namespace suppertide::compose
