// What is mixed ahead of the dough: a levain, preferments with baker's yeast, soakers.
//
// An overall formula lists everything in the finished dough; its parts take their flour,
// water, yeast and salt out of those lines. What is left, with each part as one ingredient,
// is the final mix.
//
// Example: flour 100, water 68, salt 2, yeast 0.6 with a poolish of 30 % of the flour, as
// much water and 0.2 % yeast on its flour leaves flour 70, water 38, salt 2, yeast 0.54 and
// 60.06 of poolish.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "absl/status/statusor.h"
#include "server/bread/formula.h"

namespace suppertide::bread {

struct LevainPart {
  double doughShare = 0;  // of the whole mass, 0 to below 1
  double hydration = 1;
  double wholeGrainShare = 0;
};

struct PrefermentPart {
  std::string name;
  double flourPercent = 0;  // of total flour
  double hydration = 1;
  double wholeGrainShare = 0;
  double yeastPercent = 0;  // on its own flour, of the formula's kind of yeast
  double saltPercent = 0;   // on its own flour
};

struct SoakerPart {
  struct Soaked {
    std::string line;    // name of a flour or of something else that is no liquid
    double percent = 0;  // of total flour; 0: all of the line
  };
  std::string name;
  std::vector<Soaked> soaked;
  double waterPercent = 0;  // of total flour
  double saltPercent = 0;   // of total flour
};

struct FormulaParts {
  std::optional<LevainPart> levain;
  std::vector<PrefermentPart> preferments;
  std::vector<SoakerPart> soakers;
};

// What goes into one part, as percentages of total flour.
struct PartLines {
  std::string name;
  std::vector<Ingredient> lines;
};

struct SplitFormula {
  Formula mix;                   // the levain named "levain", then preferments and soakers, come last
  std::vector<PartLines> parts;  // of preferments, then soakers, in their order
};

// Each part takes its water from the wettest liquid, whole-grain flour from the first flour
// that is mostly whole grain, the rest from the first that isn't (from the first flour where
// there is no such), yeast and salt from the first line of theirs. InvalidArgument, naming
// line and part, when a line is less than a part needs, or the rest is no formula.
absl::StatusOr<SplitFormula> splitFormula(std::vector<Ingredient> overall, const FormulaParts& parts);

}  // namespace suppertide::bread
