// One shopping list of all dishes: merged, less what is at hand, by day, section and buyer.
//
// Amounts of different kinds are never turned into each other by a guess: a
// volume joins a mass only by a measured entry of the table of ingredients, else
// both stay as two lines. Only what is at hand may be counted in pieces against a
// line that weighs, or the other way round: then pieces are middling ones.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "server/kitchen/ingredients/ingredient_table.h"

namespace suppertide::kitchen {

enum class AmountKind { kSome, kGrams, kMillilitres, kPieces };

struct Amount {
  AmountKind kind = AmountKind::kSome;  // "to taste"
  double value = 0;
};

struct Use {
  std::string dishId;
  std::string name;  // as the recipe calls it
  Amount amount;     // for the dish as it is scaled
  int day = 0;       // when work on the dish begins; any numbering that ascends
};

struct Stock {
  std::string name;
  Amount amount;
};

// A size that something is sold in.
struct Pack {
  std::string name;
  Amount size;
};

struct ShoppingLine {
  std::string
      key;  // of what is bought and how it is measured: "butter:g"; stays when name, day and amount change
  std::string name;
  ShopSection section = ShopSection::kOther;
  int day = 0;  // of its first use
  Amount needed;
  Amount atHand;   // used up from the stock; kSome with 0 when there is none
  Amount toBuy;    // whole pieces and packs; 0 when enough is at hand
  Amount lacking;  // the same before packs
  Amount pack;     // bought in whole ones of this size; kSome with 0 when loose
  int packCount = 0;
  std::vector<Use> uses;
};

// What must still be bought when so much of a line's kind was: whole packs; 0 when it is enough.
double stillToBuy(const ShoppingLine& line, double bought);

// By day, then section, then name. What needs no shop (water) is left out.
std::vector<ShoppingLine> shoppingList(const std::vector<Use>& uses, const std::vector<Stock>& stock,
                                       const std::vector<Pack>& packs = {});

// What things are told apart by when they are bought: the same for "butter, soft" and "butter for the
// filling".
std::string boughtKey(const std::string& name);

struct LineChange {
  std::string name;
  std::optional<Amount> before;
  std::optional<Amount> after;
};

// Lines whose amount to buy differs by more than 1e-6 of it, by name.
std::vector<LineChange> changesOf(const std::vector<ShoppingLine>& before,
                                  const std::vector<ShoppingLine>& after);

}  // namespace suppertide::kitchen
