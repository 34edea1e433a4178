// What people do to a shopping list, on top of what others did.
#pragma once

#include <google/protobuf/repeated_ptr_field.h>

#include <string>
#include <vector>

#include "server/compose/validate.h"
#include "suppertide/v1/household.pb.h"
#include "suppertide/v1/shopping_service.pb.h"

namespace suppertide::service {

inline constexpr int kMostShoppingEdits = 200;

// Who edits, when (unix seconds), and what stands on the list now.
struct ShoppingEditor {
  std::string memberId;
  std::int64_t seconds = 0;
  const v1::Household* household;
  const std::vector<v1::ShoppingItem>* items;
};

// All edits in their order onto `shopping`, or none: what is wrong with them, by "edits[2].tick.itemId".
// An own line may be ticked right after the edit that adds it.
compose::Violations editShopping(const ShoppingEditor& editor,
                                 const google::protobuf::RepeatedPtrField<v1::ShoppingEdit>& edits,
                                 v1::Shopping& shopping);

}  // namespace suppertide::service
