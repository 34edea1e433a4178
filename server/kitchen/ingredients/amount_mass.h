// Grams of a measured amount, with how they were obtained; or none, never a guess.
#pragma once

#include <optional>
#include <string>

#include "server/kitchen/ingredients/ingredient_table.h"

namespace suppertide::kitchen {

enum class MassWay {
  kMeasured,   // the table's entry for this very measure and form
  kScaled,     // from another volume of the table, by the volumes
  kOtherForm,  // the only form the table has, or the form it took on later
};

struct MeasuredMass {
  double grams = 0;
  MassWay way = MassWay::kMeasured;
  Mark mark = Mark::kMemory;
  std::string form;  // of the entry that was used
};

// Grams of `amount` measures. `unit` is one of the table's words ("tsp",
// "tbsp", "cup", "clove"), `millilitres` how much one holds, 0 for what is no
// volume. The form as measured, may be empty. None when the table has nothing
// for it: several forms and none said, another form, no volume at all.
std::optional<MeasuredMass> measuredMass(const Ingredient& ingredient, double amount, const std::string& unit,
                                         double millilitres, const std::string& form);

// Millilitres of a US household measure of the table; 0 for what is no volume.
double measureMillilitres(const std::string& unit);

}  // namespace suppertide::kitchen
