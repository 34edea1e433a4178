#include <algorithm>
#include <cmath>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "server/compose/validate/documents.h"
#include "server/compose/validate/formula_parts.h"

namespace suppertide::compose {
namespace {

// As strict as planning: a formula further off is refused there.
constexpr double kFlourSumTolerance = 0.05;

bool isLiquid(const v1::FormulaLine& line) {
  return line.role() == v1::FORMULA_ROLE_WATER || line.role() == v1::FORMULA_ROLE_MILK;
}

bool isYeast(const v1::FormulaLine& line) {
  return line.role() == v1::FORMULA_ROLE_FRESH_YEAST || line.role() == v1::FORMULA_ROLE_DRY_YEAST ||
         line.role() == v1::FORMULA_ROLE_INSTANT_YEAST;
}

template <typename Which>
double sumOf(const v1::BreadFormula& formula, Which which) {
  double sum = 0;
  for (const v1::FormulaLine& line : formula.lines())
    if (which(line)) sum += line.percent();
  return sum;
}

bool checkLine(const Checker& here, const v1::FormulaLine& line) {
  here.at("name").text(line.name(), 100);
  here.at("role").chosen(line.role(),
                         "what it is in the dough: flour, water, milk, egg, fat, sugar, salt, "
                         "a yeast or other");
  const bool good = here.at("percent").aboveZero(line.percent(), 300, "% of the flour");
  const bool flour = line.role() == v1::FORMULA_ROLE_FLOUR;
  here.at("wholeGrainPercent").range(line.whole_grain_percent(), 0, flour ? 100 : 0, "%");
  if (here.at("contains").count(line.contains_size(), 0, 100, "things it holds"))
    for (int i = 0; i < line.contains_size(); ++i) here.at("contains", i).text(line.contains(i), 60);
  here.at("keptIn").known(line.kept_in(), "a kind of place");
  if (line.has_water_percent()) here.at("waterPercent").range(line.water_percent(), 0, 100, "% of it");
  return good;
}

void checkSums(const Checker& here, const v1::BreadFormula& formula) {
  const double flour = sumOf(formula, [](auto& l) { return l.role() == v1::FORMULA_ROLE_FLOUR; });
  if (!(std::abs(flour - 100) <= kFlourSumTolerance))
    here.at("lines").wrong(
        percentText(flour),
        "the flours must add up to 100 %, those in levain, preferments and soakers among them");
  const double water =
      sumOf(formula, [](auto& l) { return isLiquid(l) || l.role() == v1::FORMULA_ROLE_EGG; });
  if (!(water >= 30 && water <= 130))
    here.at("lines").wrong(percentText(water), "water, milk and egg together must be between 30 and 130 %");
  const double salt = sumOf(formula, [](auto& l) { return l.role() == v1::FORMULA_ROLE_SALT; });
  if (!(salt <= 5)) here.at("lines").wrong(percentText(salt), "salt must be between 0 and 5 %");
}

}  // namespace

void checkFormula(const Checker& here, const v1::BreadFormula& formula) {
  here.at("doughClass").chosen(formula.dough_class(), "a class of dough: lean or enriched");
  here.at("pieceCount").range(formula.piece_count(), 1, 500, "pieces");
  here.at("pieceMassG").range(formula.piece_mass_g(), 20, 5000, "g");
  here.at("doughCelsius").range(formula.dough_celsius(), 15, 32, "°C");
  here.at("handlingLossPercent").range(formula.handling_loss_percent(), 0, 10, "%");
  if (formula.has_friction_k()) here.at("frictionK").range(formula.friction_k(), 0, 40, "K");
  checkMixReadings(here, formula);
  if (formula.has_learned_pace())
    checkLearned(here.at("learnedPace"), formula.learned_pace(), v1::EFFECT_KIND_PACE);
  const bool partsGood = checkParts(here, formula);
  const auto& lines = formula.lines();
  if (!here.at("lines").count(lines.size(), 2, 40, "lines")) return;
  bool good = true;
  for (int i = 0; i < lines.size(); ++i) good = checkLine(here.at("lines", i), lines[i]) && good;
  if (!formula.has_levain() && std::none_of(lines.begin(), lines.end(), isYeast))
    here.wrong("", "there must be some leavening: a levain, or a line of yeast");
  if (!good) return;  // sums of nonsense say nothing
  checkSums(here, formula);
  if (partsGood) checkPartsTaken(here, formula);
}

}  // namespace suppertide::compose
