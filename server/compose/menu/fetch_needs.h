// What a recipe's ingredients need before the step that uses them: soft butter, eggs and curd
// not straight from the fridge, anything frozen thawed. Said of the recipe alone, before any plan.
#pragma once

#include <string>
#include <vector>

#include "server/compose/menu/uses.h"

namespace suppertide::compose {

struct FetchNeed {
  std::string name;  // as the recipe calls it
  kitchen::Amount amount;
  v1::PlaceKind from = v1::PLACE_KIND_FRIDGE;  // or the freezer
  v1::PlaceKind to = v1::PLACE_KIND_COUNTER;   // or the fridge
  int leadMinutes = 0;                         // at least, before the using step begins
  bool thaws = false;                          // raw meat or fish: thawed by the rules for its mass
  std::string source;                          // of the lead
  const v1::Step* user = nullptr;              // the step of the recipe that uses it
  const v1::Step* own = nullptr;               // the recipe's own step that takes it out; null: it has none
};

// One a line that must be taken out, in the recipe's order; the lines must be those of `recipe`.
std::vector<FetchNeed> fetchNeeds(const v1::Recipe& recipe, const std::vector<DishIngredient>& lines);

}  // namespace suppertide::compose
