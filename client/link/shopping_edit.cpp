#include "client/link/shopping_edit.h"

#include <algorithm>

#include "client/link/request_id.h"

namespace suppertide::link {
namespace {

template <class Items, class Is>
void eraseIf(Items& items, Is is) {
  items.erase(std::remove_if(items.begin(), items.end(), is), items.end());
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
  untick("own:" + id, shopping);
}

void putOwn(const v1::OwnItem& item, v1::Shopping& shopping) {
  for (v1::OwnItem& there : *shopping.mutable_own_items()) {
    if (there.id() != item.id()) continue;
    there = item;
    return;
  }
  *shopping.add_own_items() = item;
}

// Empty: there is no way back.
v1::ShoppingEdit inverse(const v1::ShoppingEdit& edit, const v1::Shopping& before) {
  v1::ShoppingEdit back;
  if (edit.has_tick()) back.set_untick_item_id(edit.tick().item_id());
  if (edit.has_own_item()) back.set_no_own_item_id(edit.own_item().id());
  for (const v1::OwnItem& item : before.own_items())
    if (edit.has_own_item() ? item.id() == edit.own_item().id() : item.id() == edit.no_own_item_id())
      *back.mutable_own_item() = item;
  if (edit.what_case() != v1::ShoppingEdit::kUntickItemId) return back;
  for (const v1::Tick& tick : before.ticks()) {
    if (tick.item_id() != edit.untick_item_id()) continue;
    back.mutable_tick()->set_item_id(tick.item_id());
    if (tick.has_bought()) *back.mutable_tick()->mutable_bought() = tick.bought();
  }
  return back;
}

}  // namespace

void editShopping(const v1::EditShoppingRequest& request, const std::string& memberId,
                  v1::Shopping& shopping) {
  shopping.set_id(request.event_id());
  for (const v1::ShoppingEdit& edit : request.edits()) {
    if (edit.has_tick()) tick(edit.tick(), memberId, shopping);
    if (edit.what_case() == v1::ShoppingEdit::kUntickItemId) untick(edit.untick_item_id(), shopping);
    if (edit.has_own_item()) putOwn(edit.own_item(), shopping);
    if (edit.what_case() == v1::ShoppingEdit::kNoOwnItemId) removeOwn(edit.no_own_item_id(), shopping);
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
    v1::ShoppingEdit back = inverse(*edit, before == nullptr ? nothing : *before);
    if (back.what_case() == v1::ShoppingEdit::WHAT_NOT_SET) return nullptr;
    *undo->add_edits() = std::move(back);
  }
  return undo;
}

}  // namespace suppertide::link
