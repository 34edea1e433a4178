// What people do about the shopping, ahead of the server's answer.
#pragma once

#include <memory>
#include <string>

#include "suppertide/v1/shopping_service.pb.h"

namespace suppertide::link {

// The line that stands for an own item: ShoppingItem.id.
std::string ownItemId(const std::string& id);

// All but packets, which wait for the server.
void editShopping(const v1::EditShoppingRequest& request, const std::string& memberId,
                  v1::Shopping& shopping);

// Whether it ticks that line or takes its tick back, or adds it to the list.
bool concernsItem(const v1::ShoppingEdit& edit, const std::string& itemId);

// The request that takes it back; `before`: as it was, null when nothing was noted.
// Null when there is no way back.
std::unique_ptr<v1::EditShoppingRequest> inverseShopping(const v1::EditShoppingRequest& request,
                                                         const v1::Shopping* before);

}  // namespace suppertide::link
