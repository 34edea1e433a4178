// What is in a dish, for judging it against guests' needs.
#pragma once

#include "server/kitchen/guests/menu_check.h"
#include "suppertide/v1/event.pb.h"
#include "suppertide/v1/recipe.pb.h"

namespace suppertide::compose {

kitchen::GuestNeed needOf(const v1::Need& need);

// Ingredients, then formula lines; their contents as the recipe and the table of ingredients say.
kitchen::MenuDish contentsOf(const v1::Dish& dish, const v1::Recipe& recipe);

}  // namespace suppertide::compose
