// Amounts of documents against the kitchen's.
#pragma once

#include <string>

#include "server/kitchen/ingredients/line.h"
#include "server/kitchen/menu/shopping.h"
#include "suppertide/v1/menu.pb.h"

namespace suppertide::compose {

v1::Amount amountOf(const kitchen::Amount& from);
kitchen::Amount amountOf(const v1::Amount& from);

// "281 g", "2 1/4 cups", "3"; "some" for what is not measured.
std::string shownAmount(const kitchen::Amount& amount, kitchen::Measures measures);
// Rounded up to what a shop's scale or shelf gives.
kitchen::Amount asBought(const kitchen::Amount& amount);
std::string shownToBuy(const kitchen::Amount& amount, kitchen::Measures measures);

}  // namespace suppertide::compose
