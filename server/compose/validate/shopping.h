// The parts of a shopping document, checked alike wherever they stand.
#pragma once

#include <google/protobuf/repeated_ptr_field.h>

#include "server/compose/validate/checker.h"
#include "suppertide/v1/household.pb.h"
#include "suppertide/v1/shopping.pb.h"

namespace suppertide::compose {

inline constexpr int kMostTicks = 1000;
inline constexpr int kMostAtHand = 500;
inline constexpr int kMostBuyers = 20;
inline constexpr int kMostPackets = 200;
inline constexpr int kMostOwnItems = 200;

// Exactly one kind, above 0. `here` stands at the amount.
bool checkShopAmount(const Checker& here, const v1::Amount& amount);

void checkAtHand(const Checker& here, const v1::AtHand& one);
void checkPacket(const Checker& here, const v1::Packet& packet);
void checkOwnItem(const Checker& here, const v1::OwnItem& item);
// Alone; what others buy is checkBuyers's. `household` null: people who left it since may be named.
void checkBuyer(const Checker& here, const v1::Buyer& buyer, const v1::Household* household);
// Each section and line has one buyer at most. `here` stands at the message that holds `buyers`.
void checkBuyers(const Checker& here, const google::protobuf::RepeatedPtrField<v1::Buyer>& buyers,
                 const v1::Household* household);

// A document as it is stored, sizes of lists, too.
void checkShopping(const Checker& here, const v1::Shopping& shopping);

}  // namespace suppertide::compose
