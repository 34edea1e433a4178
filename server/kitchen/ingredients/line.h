// One line of a recipe as people write it, read into its parts.
//
// "2 1/4 cups flour, sifted": quantity 2.25, unit cup, ingredient all-purpose
// flour, form sifted. What is not sure is marked; nothing is guessed in silence.
// A form behind the comma came after measuring: that flour was measured unsifted.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "server/kitchen/ingredients/ingredient_table.h"

namespace suppertide::kitchen {

// Whose cups, spoons and pints.
enum class Measures { kMetric, kUs, kImperial, kAustralian };

enum class Doubt {
  kNoQuantity,
  kVagueAmount,         // a pinch, to taste
  kIngredientNotKnown,  // not in the table
  kUsualKindTaken,      // several share the word
  kMassNotKnown,        // no grams for this measure and form
  kMassScaled,          // from another measure or form
  kMassFromMemory,      // not read in a publication
  kComma,               // "1,500", "1.500"
  kRange,               // "2 to 3"; the lower counts
  kMeasuresDiffer,      // other kitchens' measure of that name differs by over 3 per cent
  kSizeTaken,           // pieces without a size; the usual one
  kAlternative,         // "or": only the first was read
  kEmpty,
};

struct IngredientLine {
  std::optional<double> quantity;
  std::optional<double> mostQuantity;  // of a range
  std::string unit;                    // empty: pieces or none
  std::string name;                    // in the line's words
  const Ingredient* ingredient = nullptr;
  std::string form;
  std::string note;
  std::optional<double> grams;
  std::optional<double> millilitres;
  std::optional<double> count;
  std::string massSource;  // "scale", or the table's
  std::vector<Doubt> doubts;

  bool has(Doubt doubt) const;
};

// Never fails: a line without sense has doubts. Linear in the line.
IngredientLine readLine(std::string_view text, Measures measures);

}  // namespace suppertide::kitchen
