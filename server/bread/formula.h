// A bread formula in baker's percentages, and its masses.
//
// Percent means per cent of *total* flour, the flour inside levain, preferments and
// soakers included; so the flours' percentages plus that flour add up to 100. Each of
// these parts is one ingredient of the mix, with its whole mass; formula_parts.h turns a
// formula written as an overall formula ("flour 100, liquid 58, 19 % of the dough is
// levain") into such a mix.
//
// Example: flour 81, water 39, levain 38 (hydration 1), salt 2 has 19 % of its
// flour prefermented and a hydration of 58 %.
#pragma once

#include <string>
#include <vector>

#include "absl/status/statusor.h"

namespace suppertide::bread {

enum class Role {
  kFlour,
  kLiquid,
  kFat,
  kSugar,
  kSalt,
  kEgg,
  kLevain,
  kYeast,
  kOther,
  kPreferment,  // with baker's yeast: poolish, biga, sponge, old dough
  kSoaker
};
enum class YeastForm { kCompressed, kActiveDry, kInstant };

// Water shares by mass. Marks: from memory of food composition tables, rounded;
// flour's own moisture (about 0.14) isn't counted as water, as is the trade's habit.
inline constexpr double kMilkWaterShare = 0.87;
inline constexpr double kEggWaterShare = 0.75;
inline constexpr double kButterWaterShare = 0.16;
inline constexpr double kHoneyWaterShare = 0.17;
// Compressed yeast that does the work of one part of dry yeast; common practice, no source.
inline constexpr double kCompressedPerActiveDry = 2.5;
inline constexpr double kCompressedPerInstant = 3.0;

struct Ingredient {
  std::string name;
  Role role = Role::kOther;
  double percent = 0;          // of total flour; ignored where grams are given
  double waterShare = 0;       // of its mass, 0 to 1; ignored for a levain, which has `hydration`
  double wholeGrainShare = 0;  // of its flour, 0 to 1; flours and levains
  double saltShare = 0;        // of its mass; salted butter has about 0.015
  double sugarShare = 0;       // of its mass; fermentable sugar only
  double hydration = 1.0;      // levain: water over flour
  YeastForm yeastForm = YeastForm::kCompressed;
  double flourShare = 0;  // of its mass; preferments and soakers
  double yeastShare = 0;  // of its mass, counted as compressed; preferments
};

// An ingredient as a baker means it: the shares follow from role and common sense
// (salt is all salt, sugar all sugar, liquid all water, egg and fat by the constants above).
Ingredient usual(std::string name, Role role, double percent);

struct Weighed {
  Ingredient ingredient;
  double grams = 0;
};

class Formula {
 public:
  // InvalidArgument, naming the ingredient and why, when a number is negative or
  // not finite, a share lies outside 0 to 1, there is no flour, a levain's
  // hydration isn't above 0, or the flours with the levain's flour don't add up
  // to 100 within 0.05 (the message says how much is missing or too much).
  // Percentages are kept as given: to grams and back is lossless when they add up
  // to exactly 100, else all come back scaled to do so.
  static absl::StatusOr<Formula> fromPercents(std::vector<Ingredient> ingredients);

  // The formula that these masses make; same refusals but for the sum.
  static absl::StatusOr<Formula> fromGrams(const std::vector<Weighed>& weighed);

  const std::vector<Ingredient>& ingredients() const { return ingredients_; }

  // Sum of all percentages; dough mass = total flour * this / 100.
  double totalPercent() const;
  double prefermentedFlourShare() const;  // of total flour, in levain and preferments
  double levainFlourShare() const;        // of total flour, in the levain alone
  double levainShare() const;             // of the dough's mass
  double prefermentShare() const;         // of the dough's mass, levain not counted
  double hydration() const;               // water of every ingredient over total flour, 0.62 for 62 %
  double wholeGrainShare() const;         // of total flour
  double saltPercent() const;             // also that inside other ingredients
  double sugarPercent() const;
  double fatPercent() const;              // fat ingredients less their water
  double compressedYeastPercent() const;  // dry yeast counted by the constants above; all, or
  double addedYeastPercent() const;       // only what isn't in preferments
  double soakedWaterPercent() const;      // held by soakers

  // Grams by ingredient, in order. InvalidArgument unless the wanted mass is above 0.
  absl::StatusOr<std::vector<Weighed>> gramsForFlour(double totalFlourGrams) const;
  absl::StatusOr<std::vector<Weighed>> gramsForDough(double doughGrams) const;
  // `lossShare` of the dough stays on bowl and hands, 0 to below 1.
  absl::StatusOr<std::vector<Weighed>> gramsForPieces(int pieces, double pieceGrams,
                                                      double lossShare = 0) const;

 private:
  explicit Formula(std::vector<Ingredient> ingredients) : ingredients_(std::move(ingredients)) {}
  std::vector<Ingredient> ingredients_;
};

// Compressed yeast that does the work of one part of this.
double yeastFactor(YeastForm form);

}  // namespace suppertide::bread
