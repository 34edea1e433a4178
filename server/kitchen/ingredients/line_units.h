// The words for measures in a recipe, and what each comes to.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "server/kitchen/ingredients/line.h"

namespace suppertide::kitchen {

enum class UnitKind { kMass, kVolume, kPieces, kVague };

struct LineUnit {
  UnitKind kind = UnitKind::kPieces;
  std::string name;      // "cup"; as in the table of ingredients where it has it
  double factor = 1;     // grams or millilitres of one; pieces in one ("dozen")
  bool differs = false;  // in other kitchens by over 3 per cent
};

// Takes a unit from the front of `text`: "cups", "tbsp.", "g". None, with
// `text` as it was, when its first words are no unit. "T" is a tablespoon, "t"
// a teaspoon.
std::optional<LineUnit> takeUnit(std::string_view& text, Measures measures);

}  // namespace suppertide::kitchen
