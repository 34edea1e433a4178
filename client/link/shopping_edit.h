// What people do at the shop, ahead of the server's answer.
#pragma once

#include <memory>
#include <string>

#include "suppertide/v1/shopping_service.pb.h"

namespace suppertide::link {

// Ticks, and lines of the household's own; what is at hand, buyers and packets wait for the server.
void editShopping(const v1::EditShoppingRequest& request, const std::string& memberId,
                  v1::Shopping& shopping);

// The request that takes ticks and own lines back; `before`: as it was, null when nothing was noted.
// Null when the request does anything else.
std::unique_ptr<v1::EditShoppingRequest> inverseShopping(const v1::EditShoppingRequest& request,
                                                         const v1::Shopping* before);

}  // namespace suppertide::link
