#include "server/service/shopping_edits.h"

#include <algorithm>

#include "server/compose/menu/menu.h"
#include "server/compose/validate/shopping.h"
#include "server/kitchen/ingredients/ingredient_table.h"

namespace suppertide::service {
namespace {

template <typename List, typename Drop>
void dropIf(List* list, Drop drop) {
  list->erase(std::remove_if(list->begin(), list->end(), drop), list->end());
}

// In the place of the one that `same` finds, else at the end.
template <typename List, typename Item, typename Same>
void put(List* list, const Item& item, Same same) {
  const auto found = std::find_if(list->begin(), list->end(), same);
  if (found != list->end())
    *found = item;
  else
    *list->Add() = item;
}

bool sameName(const std::string& a, const std::string& b) {
  return kitchen::plainName(a) == kitchen::plainName(b);
}

class Editing {
 public:
  Editing(const ShoppingEditor& editor, v1::Shopping& shopping, compose::Violations& violations)
      : editor_(editor), shopping_(shopping), violations_(violations) {}

  void apply(const compose::Checker& here, const v1::ShoppingEdit& edit) {
    const std::size_t before = violations_.size();
    const auto good = [&] { return violations_.size() == before; };
    switch (edit.what_case()) {
      case v1::ShoppingEdit::kTick:
        return tick(here.at("tick"), edit.tick());
      case v1::ShoppingEdit::kUntickItemId:
        return untick(edit.untick_item_id());
      case v1::ShoppingEdit::kAtHand:
        compose::checkAtHand(here.at("atHand"), edit.at_hand());
        if (good()) setAtHand(edit.at_hand());
        return;
      case v1::ShoppingEdit::kNotAtHandName:
        return dropIf(shopping_.mutable_at_hand(),
                      [&](const v1::AtHand& one) { return sameName(one.name(), edit.not_at_hand_name()); });
      case v1::ShoppingEdit::kBuyer:
        compose::checkBuyer(here.at("buyer"), edit.buyer(), editor_.household);
        if (good()) setBuyer(edit.buyer());
        return;
      case v1::ShoppingEdit::kNoBuyerMemberId:
        return dropBuyer(edit.no_buyer_member_id());
      case v1::ShoppingEdit::kPacket:
        compose::checkPacket(here.at("packet"), edit.packet());
        if (good())
          put(shopping_.mutable_packets(), edit.packet(),
              [&](const v1::Packet& one) { return sameName(one.name(), edit.packet().name()); });
        return;
      case v1::ShoppingEdit::kNoPacketName:
        return dropIf(shopping_.mutable_packets(),
                      [&](const v1::Packet& one) { return sameName(one.name(), edit.no_packet_name()); });
      case v1::ShoppingEdit::kOwnItem:
        compose::checkOwnItem(here.at("ownItem"), edit.own_item());
        if (good())
          put(shopping_.mutable_own_items(), edit.own_item(),
              [&](const v1::OwnItem& one) { return one.id() == edit.own_item().id(); });
        return;
      case v1::ShoppingEdit::kNoOwnItemId:
        return dropOwnItem(edit.no_own_item_id());
      case v1::ShoppingEdit::WHAT_NOT_SET:
        here.wrong("", "must say what to change");
    }
  }

 private:
  void tick(const compose::Checker& here, const v1::TickOff& off) {
    const Amountable line = lineOf(off.item_id());
    if (!line.known) {
      here.at("itemId").wrong(off.item_id(), "must be a line of the list as it is now");
      return;
    }
    if (off.has_bought() && !compose::checkShopAmount(here.at("bought"), off.bought())) return;
    if (off.has_bought() && off.bought().kind_case() != line.toBuy.kind_case()) {
      here.at("bought").wrong("", "must be of the kind that the line is measured in");
      return;
    }
    v1::Tick made;
    made.set_item_id(off.item_id());
    made.set_name(line.name);
    made.set_member_id(editor_.memberId);
    made.mutable_time()->set_seconds(editor_.seconds);
    const v1::Amount& bought = off.has_bought() ? off.bought() : line.toBuy;
    if (bought.kind_case() != v1::Amount::KIND_NOT_SET) *made.mutable_bought() = bought;
    const auto same = [&](const v1::Tick& one) { return one.item_id() == off.item_id(); };
    const auto old = std::find_if(shopping_.ticks().begin(), shopping_.ticks().end(), same);
    if (old == shopping_.ticks().end() ||
        old->bought().SerializeAsString() != made.bought().SerializeAsString())
      put(shopping_.mutable_ticks(), made, same);
  }

  void untick(const std::string& itemId) {
    dropIf(shopping_.mutable_ticks(), [&](const v1::Tick& one) { return one.item_id() == itemId; });
  }

  void setAtHand(const v1::AtHand& atHand) {
    put(shopping_.mutable_at_hand(), atHand, [&](const v1::AtHand& one) {
      return sameName(one.name(), atHand.name()) && one.amount().kind_case() == atHand.amount().kind_case();
    });
  }

  static bool takesRest(const v1::Buyer& buyer) {
    return buyer.sections().empty() && buyer.item_ids().empty();
  }

  // Nobody else keeps what is taken over; who then has nothing left buys nothing.
  void setBuyer(const v1::Buyer& buyer) {
    for (v1::Buyer& other : *shopping_.mutable_buyers()) {
      if (other.member_id() == buyer.member_id() || takesRest(other)) continue;
      const auto taken = [](const auto& mine, const auto& one) {
        return std::find(mine.begin(), mine.end(), one) != mine.end();
      };
      dropIf(other.mutable_sections(), [&](int section) { return taken(buyer.sections(), section); });
      dropIf(other.mutable_item_ids(), [&](const std::string& id) { return taken(buyer.item_ids(), id); });
      if (takesRest(other)) other.clear_member_id();
    }
    dropIf(shopping_.mutable_buyers(), [&](const v1::Buyer& other) {
      return other.member_id().empty() ||
             (other.member_id() != buyer.member_id() && takesRest(buyer) && takesRest(other));
    });
    put(shopping_.mutable_buyers(), buyer,
        [&](const v1::Buyer& one) { return one.member_id() == buyer.member_id(); });
  }

  void dropBuyer(const std::string& memberId) {
    dropIf(shopping_.mutable_buyers(), [&](const v1::Buyer& one) { return one.member_id() == memberId; });
  }

  void dropOwnItem(const std::string& id) {
    untick(compose::ownItemId(id));
    dropIf(shopping_.mutable_own_items(), [&](const v1::OwnItem& one) { return one.id() == id; });
  }

  struct Amountable {
    bool known = false;
    std::string name;
    v1::Amount toBuy;
  };

  Amountable lineOf(const std::string& itemId) const {
    for (const v1::OwnItem& own : shopping_.own_items())
      if (compose::ownItemId(own.id()) == itemId) return {true, own.name(), {}};
    for (const v1::ShoppingItem& item : *editor_.items)
      if (item.id() == itemId && !item.own()) return {true, item.name(), item.to_buy()};
    return {};
  }

  const ShoppingEditor& editor_;
  v1::Shopping& shopping_;
  compose::Violations& violations_;
};

}  // namespace

compose::Violations editShopping(const ShoppingEditor& editor,
                                 const google::protobuf::RepeatedPtrField<v1::ShoppingEdit>& edits,
                                 v1::Shopping& shopping) {
  compose::Violations violations;
  const compose::Checker top(violations);
  if (!top.at("edits").count(edits.size(), 1, kMostShoppingEdits, "edits")) return violations;
  v1::Shopping edited = shopping;
  Editing editing(editor, edited, violations);
  for (int i = 0; i < edits.size(); ++i) editing.apply(top.at("edits", i), edits[i]);
  if (violations.empty()) compose::checkShopping(top, edited);
  if (violations.empty()) shopping = std::move(edited);
  return violations;
}

}  // namespace suppertide::service
