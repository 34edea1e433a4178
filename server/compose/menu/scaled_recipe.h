// A recipe in another size: for other guests, pieces or pans.
#pragma once

#include <vector>

#include "server/kitchen/ingredients/line.h"
#include "suppertide/v1/kitchen.pb.h"
#include "suppertide/v1/menu.pb.h"
#include "suppertide/v1/recipe.pb.h"
#include "suppertide/v1/shopping.pb.h"

namespace suppertide::compose {

// One of the three; pieces only for breads, a pan only where the recipe has one.
struct RecipeSize {
  double servings = 0;
  int pieces = 0;
  double pieceGrams = 0;  // with pieces; 0: the recipe's
  const v1::Pan* pan = nullptr;
};

// Whole pieces of bread; ingredients by the same factor, eggs whole, and what is sold in one of `packets`
// in half ones where that is near. `kitchen` may be null: then loads are left out.
v1::ScaledRecipe scaledRecipe(const v1::Recipe& recipe, const RecipeSize& size, const v1::Kitchen* kitchen,
                              const std::vector<v1::Packet>& packets, kitchen::Measures shownIn);

}  // namespace suppertide::compose
