// The ingredients of an event's dishes in the amounts that its guests need.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "absl/time/time.h"
#include "server/compose/menu/menu.h"
#include "server/kitchen/menu/shopping.h"

namespace suppertide::compose {

// One ingredient or formula line of one dish.
struct DishIngredient {
  const v1::Dish* dish;
  std::string name;
  kitchen::Amount amount;
  v1::PlaceKind keptIn = v1::PLACE_KIND_UNSPECIFIED;
  std::vector<std::string> contains;
  bool knownContents = false;
  bool inFormula = false;
};

// In the event's order of dishes, each as its recipe lists them. A bread's
// formula in grams of the dough for whole pieces, scaled as plans scale it.
std::vector<DishIngredient> ingredientsOf(const Menu& menu);
// Those of one dish in so many makings.
std::vector<DishIngredient> ingredientsOf(const v1::Dish& dish, const v1::Recipe& recipe, double scale);

// The text's words as names of ingredients are compared: " stir curd egg and sugar ".
std::string plainWords(const std::string& text);

// Whether the step's words are about the ingredient of that name.
bool speaksOf(const v1::Step& step, const std::string& ingredient);

// The event's, else the household's.
absl::TimeZone zoneOf(const Menu& menu);

// When a plan has the first step of the dish begin.
std::optional<google::protobuf::Timestamp> beginOf(const Menu& menu, const std::string& dishId);

// When a plan needs the ingredient: at the first step that weighs it or speaks of it, else when
// work on the dish begins; what is frozen, when it goes to thaw.
std::optional<google::protobuf::Timestamp> neededOf(const Menu& menu, const DishIngredient& one);

}  // namespace suppertide::compose
