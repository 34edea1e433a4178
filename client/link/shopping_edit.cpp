#include "client/link/shopping_edit.h"

#include <algorithm>

#include "absl/strings/ascii.h"
#include "absl/strings/match.h"
#include "absl/strings/str_cat.h"
#include "client/link/request_id.h"

namespace suppertide::link {
namespace {

template <class Items, class Is>
void eraseIf(Items& items, Is is) {
  items.erase(std::remove_if(items.begin(), items.end(), is), items.end());
}

// In the place of the one that `is` finds, else at the end.
template <class Items, class Item, class Is>
void put(Items& items, const Item& item, Is is) {
  const auto found = std::find_if(items.begin(), items.end(), is);
  if (found != items.end())
    *found = item;
  else
    *items.Add() = item;
}

// As the server takes names to be the same, but for its plurals and other words.
bool sameName(const std::string& a, const std::string& b) {
  return absl::EqualsIgnoreCase(absl::StripAsciiWhitespace(a), absl::StripAsciiWhitespace(b));
}

void untick(const std::string& itemId, v1::Shopping& shopping) {
  eraseIf(*shopping.mutable_ticks(), [&](const v1::Tick& tick) { return tick.item_id() == itemId; });
}

void tick(const v1::TickOff& off, const std::string& memberId, v1::Shopping& shopping) {
  untick(off.item_id(), shopping);
  v1::Tick& made = *shopping.add_ticks();
  made.set_item_id(off.item_id());
  made.set_member_id(memberId);
  if (off.has_bought()) *made.mutable_bought() = off.bought();
}

void removeOwn(const std::string& id, v1::Shopping& shopping) {
  eraseIf(*shopping.mutable_own_items(), [&](const v1::OwnItem& item) { return item.id() == id; });
  untick(ownItemId(id), shopping);
}

bool takesRest(const v1::Buyer& buyer) {
  return buyer.sections().empty() && buyer.item_ids().empty();
}

void dropBuyer(const std::string& memberId, v1::Shopping& shopping) {
  eraseIf(*shopping.mutable_buyers(), [&](const v1::Buyer& one) { return one.member_id() == memberId; });
}

// What is taken over is nobody else's any more; who then has nothing left buys nothing.
void setBuyer(const v1::Buyer& buyer, v1::Shopping& shopping) {
  auto& buyers = *shopping.mutable_buyers();
  const auto isOther = [&](const v1::Buyer& one) { return one.member_id() != buyer.member_id(); };
  eraseIf(buyers, [&](v1::Buyer& other) {
    if (!isOther(other)) return false;
    if (takesRest(other)) return takesRest(buyer);
    for (const int section : buyer.sections())
      eraseIf(*other.mutable_sections(), [=](int one) { return one == section; });
    for (const std::string& id : buyer.item_ids())
      eraseIf(*other.mutable_item_ids(), [&](const std::string& one) { return one == id; });
    return takesRest(other);
  });
  put(buyers, buyer, [&](const v1::Buyer& one) { return !isOther(one); });
}

void carryOut(const v1::ShoppingEdit& edit, const std::string& memberId, v1::Shopping& shopping) {
  const auto isNamed = [](const std::string& name) {
    return [name](const auto& one) { return sameName(one.name(), name); };
  };
  switch (edit.what_case()) {
    case v1::ShoppingEdit::kTick:
      return tick(edit.tick(), memberId, shopping);
    case v1::ShoppingEdit::kUntickItemId:
      return untick(edit.untick_item_id(), shopping);
    case v1::ShoppingEdit::kAtHand:
      return put(*shopping.mutable_at_hand(), edit.at_hand(), [&](const v1::AtHand& one) {
        return sameName(one.name(), edit.at_hand().name()) &&
               one.amount().kind_case() == edit.at_hand().amount().kind_case();
      });
    case v1::ShoppingEdit::kNotAtHandName:
      return eraseIf(*shopping.mutable_at_hand(), isNamed(edit.not_at_hand_name()));
    case v1::ShoppingEdit::kBuyer:
      return setBuyer(edit.buyer(), shopping);
    case v1::ShoppingEdit::kNoBuyerMemberId:
      return dropBuyer(edit.no_buyer_member_id(), shopping);
    case v1::ShoppingEdit::kOwnItem:
      return put(*shopping.mutable_own_items(), edit.own_item(),
                 [&](const v1::OwnItem& one) { return one.id() == edit.own_item().id(); });
    case v1::ShoppingEdit::kNoOwnItemId:
      return removeOwn(edit.no_own_item_id(), shopping);
    case v1::ShoppingEdit::kPacket:
    case v1::ShoppingEdit::kNoPacketName:
    case v1::ShoppingEdit::WHAT_NOT_SET:
      return;
  }
}

using Edits = std::vector<v1::ShoppingEdit>;

Edits formerAtHand(const std::string& name, const v1::Shopping& before) {
  Edits back(1);
  back[0].set_not_at_hand_name(name);
  for (const v1::AtHand& one : before.at_hand())
    if (sameName(one.name(), name)) *back.emplace_back().mutable_at_hand() = one;
  return back;
}

Edits formerBuyers(const std::string& memberId, const v1::Shopping& before) {
  Edits back(1);
  back[0].set_no_buyer_member_id(memberId);
  for (const v1::Buyer& one : before.buyers()) *back.emplace_back().mutable_buyer() = one;
  return back;
}

// Empty: there is no way back.
Edits inverse(const v1::ShoppingEdit& edit, const v1::Shopping& before) {
  Edits back;
  switch (edit.what_case()) {
    case v1::ShoppingEdit::kTick:
      back.emplace_back().set_untick_item_id(edit.tick().item_id());
      break;
    case v1::ShoppingEdit::kUntickItemId:
      for (const v1::Tick& tick : before.ticks()) {
        if (tick.item_id() != edit.untick_item_id()) continue;
        v1::TickOff& again = *back.emplace_back().mutable_tick();
        again.set_item_id(tick.item_id());
        if (tick.has_bought()) *again.mutable_bought() = tick.bought();
      }
      break;
    case v1::ShoppingEdit::kAtHand:
      return formerAtHand(edit.at_hand().name(), before);
    case v1::ShoppingEdit::kNotAtHandName:
      return formerAtHand(edit.not_at_hand_name(), before);
    case v1::ShoppingEdit::kBuyer:
      return formerBuyers(edit.buyer().member_id(), before);
    case v1::ShoppingEdit::kNoBuyerMemberId:
      return formerBuyers(edit.no_buyer_member_id(), before);
    case v1::ShoppingEdit::kOwnItem:
    case v1::ShoppingEdit::kNoOwnItemId: {
      const std::string& id = edit.has_own_item() ? edit.own_item().id() : edit.no_own_item_id();
      if (edit.has_own_item()) back.emplace_back().set_no_own_item_id(id);
      for (const v1::OwnItem& item : before.own_items()) {
        if (item.id() != id) continue;
        back.clear();
        *back.emplace_back().mutable_own_item() = item;
      }
      break;
    }
    case v1::ShoppingEdit::kPacket:
    case v1::ShoppingEdit::kNoPacketName:
    case v1::ShoppingEdit::WHAT_NOT_SET:
      break;
  }
  return back;
}

}  // namespace

std::string ownItemId(const std::string& id) {
  return absl::StrCat("own:", id);
}

void editShopping(const v1::EditShoppingRequest& request, const std::string& memberId,
                  v1::Shopping& shopping) {
  shopping.set_id(request.event_id());
  for (const v1::ShoppingEdit& edit : request.edits()) carryOut(edit, memberId, shopping);
}

bool concernsItem(const v1::ShoppingEdit& edit, const std::string& itemId) {
  switch (edit.what_case()) {
    case v1::ShoppingEdit::kTick:
      return edit.tick().item_id() == itemId;
    case v1::ShoppingEdit::kUntickItemId:
      return edit.untick_item_id() == itemId;
    case v1::ShoppingEdit::kOwnItem:
      return ownItemId(edit.own_item().id()) == itemId;
    default:
      return false;
  }
}

std::unique_ptr<v1::EditShoppingRequest> inverseShopping(const v1::EditShoppingRequest& request,
                                                         const v1::Shopping* before) {
  auto undo = std::make_unique<v1::EditShoppingRequest>();
  undo->set_household_id(request.household_id());
  undo->set_event_id(request.event_id());
  undo->set_request_id(newRequestId());
  const v1::Shopping nothing;
  for (auto edit = request.edits().rbegin(); edit != request.edits().rend(); ++edit) {
    const Edits back = inverse(*edit, before == nullptr ? nothing : *before);
    if (back.empty()) return nullptr;
    for (const v1::ShoppingEdit& one : back) *undo->add_edits() = one;
  }
  return undo;
}

}  // namespace suppertide::link
