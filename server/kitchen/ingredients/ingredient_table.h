// What is known of ingredients: sections, contents, and grams of a measure by form.
//
// The one distinction people miss: a cup of pecans isn't a mass. It depends on
// the form it was measured in, and each measure was weighed by itself: a
// tablespoon of sour cream is not a sixteenth of a cup. Nothing here guesses.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "server/kitchen/source.h"

namespace suppertide::kitchen {

enum class ShopSection {
  kProduce,
  kMeatFish,
  kDairyEggs,
  kBaking,
  kDryGoods,
  kSpices,
  kFrozen,
  kDrinks,
  kOther,
};

// Grams of one measure, "cup" or "clove", measured in a form; no form: as it comes.
struct Measure {
  std::string unit;
  std::string form;
  double grams = 0;
  Mark mark = Mark::kMemory;
};

// What an ingredient holds, in the words of the substances (guests/substances.h).
struct Contents {
  std::vector<std::string> holds;
  std::vector<std::string> mayHold;
  bool complete = true;  // false: depends on its maker; never read as free of anything
};

struct Ingredient {
  std::string name;
  std::vector<std::string> alsoCalled;
  ShopSection section = ShopSection::kOther;
  std::string sourceTitle;  // "USDA SR 20081"
  Mark mark = Mark::kMemory;
  Contents contents;
  std::vector<Measure> measures;
};

// As written in ingredient_rows.cpp.
std::string_view ingredientRows();

// All rows, in the order they are written. Read once, then constant; any thread.
const std::vector<Ingredient>& ingredients();

struct Lookup {
  const Ingredient* ingredient = nullptr;  // null: not in the table
  bool usualKind = false;                  // several share the word; this is the usual one
};

// The ingredient of that name, singular or plural, in any case, with or without
// words that change nothing ("fresh", "ripe"). Never by part of a word or name:
// "buckwheat flour" is not "flour".
Lookup findIngredient(std::string_view name);

// Lower case, words in the singular, single spaces: equal for names that mean the same.
std::string plainName(std::string_view name);

}  // namespace suppertide::kitchen
