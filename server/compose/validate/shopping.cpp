#include "server/compose/validate/shopping.h"

#include <algorithm>
#include <utility>

namespace suppertide::compose {
namespace {

constexpr double kMostAmount = 1'000'000;
constexpr int kMostName = 100;
constexpr int kMostItemId = 200;
constexpr int kMostBuyerItems = 200;

double valueOf(const v1::Amount& amount) {
  return amount.has_mass_g() ? amount.mass_g() : amount.has_volume_ml() ? amount.volume_ml() : amount.count();
}

void checkMember(const Checker& here, const std::string& id, const v1::Household* household) {
  if (household == nullptr) {
    here.id(id);
    return;
  }
  if (std::none_of(household->members().begin(), household->members().end(),
                   [&](const v1::Member& member) { return member.id() == id; }))
    here.wrong(id, "must be a member of the household");
}

void checkTick(const Checker& here, const v1::Tick& tick) {
  here.at("itemId").text(tick.item_id(), kMostItemId);
  here.at("name").text(tick.name(), kMostName);
  here.at("memberId").id(tick.member_id());
  here.at("time").time(tick.has_time(), tick.time());
  if (tick.has_bought()) checkShopAmount(here.at("bought"), tick.bought());
}

// Checks every one of a list, and that `keyOf` is there once.
template <typename List, typename Key, typename Check>
void checkEach(const Checker& here, std::string_view field, const List& list, int most, Key keyOf,
               Check check) {
  if (!here.at(field).count(list.size(), 0, most, "of them")) return;
  Once once;
  for (int i = 0; i < list.size(); ++i) {
    check(here.at(field, i), list[i]);
    once.add(here.at(field, i), keyOf(list[i]));
  }
}

}  // namespace

bool checkShopAmount(const Checker& here, const v1::Amount& amount) {
  if (amount.kind_case() == v1::Amount::KIND_NOT_SET)
    return here.wrong("", "must be one of massG, volumeMl and count");
  return here.aboveZero(valueOf(amount), kMostAmount);
}

void checkAtHand(const Checker& here, const v1::AtHand& one) {
  here.at("name").text(one.name(), kMostName);
  checkShopAmount(here.at("amount"), one.amount());
}

void checkPacket(const Checker& here, const v1::Packet& packet) {
  here.at("name").text(packet.name(), kMostName);
  checkShopAmount(here.at("size"), packet.size());
}

void checkOwnItem(const Checker& here, const v1::OwnItem& item) {
  here.at("id").id(item.id());
  here.at("name").text(item.name(), kMostName);
  here.at("section").known(item.section(), "a section of the shop");
}

void checkBuyer(const Checker& here, const v1::Buyer& buyer, const v1::Household* household) {
  checkMember(here.at("memberId"), buyer.member_id(), household);
  for (int s = 0; s < buyer.sections_size(); ++s)
    here.at("sections", s).chosen(buyer.sections(s), "a section of the shop");
  if (here.at("itemIds").count(buyer.item_ids_size(), 0, kMostBuyerItems, "lines"))
    for (int i = 0; i < buyer.item_ids_size(); ++i)
      here.at("itemIds", i).text(buyer.item_ids(i), kMostItemId);
}

void checkBuyers(const Checker& here, const google::protobuf::RepeatedPtrField<v1::Buyer>& buyers,
                 const v1::Household* household) {
  if (!here.at("buyers").count(buyers.size(), 0, kMostBuyers, "buyers")) return;
  std::set<int> sections;
  Once items;
  bool rest = false;
  for (int i = 0; i < buyers.size(); ++i) {
    const v1::Buyer& buyer = buyers[i];
    const Checker place = here.at("buyers", i);
    checkBuyer(place, buyer, household);
    const bool takesRest = buyer.sections().empty() && buyer.item_ids().empty();
    if (takesRest && std::exchange(rest, true))
      place.at("sections").wrong("", "only one buyer may buy the rest");
    for (int s = 0; s < buyer.sections_size(); ++s)
      if (v1::ShopSection_IsValid(buyer.sections(s)) && !sections.insert(buyer.sections(s)).second)
        place.at("sections", s)
            .wrong(v1::ShopSection_Name(buyer.sections(s)), "each section has one buyer at most");
    for (int k = 0; k < buyer.item_ids_size(); ++k) items.add(place.at("itemIds", k), buyer.item_ids(k));
  }
}

void checkShopping(const Checker& here, const v1::Shopping& shopping) {
  checkEach(
      here, "ticks", shopping.ticks(), kMostTicks, [](const v1::Tick& tick) { return tick.item_id(); },
      checkTick);
  checkEach(
      here, "atHand", shopping.at_hand(), kMostAtHand,
      [](const v1::AtHand& one) { return one.name() + "/" + std::to_string(one.amount().kind_case()); },
      checkAtHand);
  checkBuyers(here, shopping.buyers(), nullptr);
  checkEach(
      here, "packets", shopping.packets(), kMostPackets, [](const v1::Packet& one) { return one.name(); },
      checkPacket);
  checkEach(
      here, "ownItems", shopping.own_items(), kMostOwnItems, [](const v1::OwnItem& one) { return one.id(); },
      checkOwnItem);
}

}  // namespace suppertide::compose
