// A menu's table, shopping list, sizes and read lines in words.
#pragma once

#include <string>
#include <vector>

#include "client/terminal/names.h"
#include "client/terminal/time_text.h"
#include "suppertide/v1/bundle.pb.h"
#include "suppertide/v1/menu_service.pb.h"

namespace suppertide::terminal {

// How wide, and whether in colour.
struct Page {
  int width = 80;
  bool colour = false;
  bool ounces = false;  // amounts in ounces, not grams
};

// "250 g", "1.2 l", "3"; rounded to what a scale shows. Empty for none.
std::string amountText(const v1::Amount& amount);
// The same, or "8.8 oz" on a page in ounces.
std::string amountText(const v1::Amount& amount, const Page& page);

// Guests with needs against courses, what needs care, then portions.
std::string menuCheckText(const v1::Bundle& bundle, const v1::Event& event,
                          const v1::CheckMenuResponse& check, const Page& page);
// The warnings of `after` that `before` has not; empty when there are none.
std::string newWarningsText(const v1::Bundle& bundle, const v1::Event& event,
                            const v1::CheckMenuResponse& before, const v1::CheckMenuResponse& after,
                            const Page& page);
// By day and section, then what to take out.
std::string shoppingText(const v1::Bundle& bundle, const v1::Event& event,
                         const v1::MakeShoppingListResponse& list, const Page& page);
// What is at hand for nothing, by its names; empty without any.
std::string uncountedText(const std::vector<std::string>& names, const Page& page);
// What is bought more, less, newly or not at all; says so when nothing is.
std::string shoppingChangesText(const v1::MakeShoppingListResponse& list, const Page& page);
std::string scaledText(const v1::Recipe& recipe, const v1::Kitchen& kitchen, const v1::ScaledRecipe& scaled,
                       const v1::Household& household, const Page& page);
// A line each, with what is not sure of it below.
std::string ingredientText(const v1::ParseIngredientsResponse& parsed, const Page& page);

// "2027-08-28": "Saturday 28 August"; what is no date as it is.
std::string dateText(const std::string& date);

}  // namespace suppertide::terminal
