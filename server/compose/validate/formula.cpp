#include <algorithm>
#include <cmath>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "server/compose/validate/documents.h"

namespace suppertide::compose {
namespace {

// As strict as planning: a formula further off is refused there.
constexpr double kFlourSumTolerance = 0.05;
constexpr double kWholeGrainFlourPercent = 50;  // a flour counts as whole grain from here

std::string percentText(double percent) {
  return absl::StrFormat("%.4g %%", percent);
}

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
  return good;
}

void checkSums(const Checker& here, const v1::BreadFormula& formula) {
  const double flour = sumOf(formula, [](auto& l) { return l.role() == v1::FORMULA_ROLE_FLOUR; });
  if (!(std::abs(flour - 100) <= kFlourSumTolerance))
    here.at("lines").wrong(percentText(flour),
                           "the flours must add up to 100 %, the levain's flour among them");
  const double water =
      sumOf(formula, [](auto& l) { return isLiquid(l) || l.role() == v1::FORMULA_ROLE_EGG; });
  if (!(water >= 30 && water <= 130))
    here.at("lines").wrong(percentText(water), "water, milk and egg together must be between 30 and 130 %");
  const double salt = sumOf(formula, [](auto& l) { return l.role() == v1::FORMULA_ROLE_SALT; });
  if (!(salt <= 5)) here.at("lines").wrong(percentText(salt), "salt must be between 0 and 5 %");
}

void checkLevain(const Checker& here, const v1::LevainNeed& levain) {
  here.at("starterId").id(levain.starter_id());
  here.at("doughSharePercent").aboveZero(levain.dough_share_percent(), 60, "% of the dough");
  here.at("hydrationPercent").zeroOrRange(levain.hydration_percent(), 40, 200, "%");
  here.at("wholeGrainPercent").range(levain.whole_grain_percent(), 0, 100, "%");
  const auto& builds = levain.flour_per_starter();
  if (!here.at("flourPerStarter").count(builds.size(), 0, 20, "builds")) return;
  for (int i = 0; i < builds.size(); ++i) here.at("flourPerStarter", i).aboveZero(builds[i], 100, "parts");
}

// What is left of each line after planning takes the levain's part out of it.
class LevainPart {
 public:
  LevainPart(const Checker& here, const v1::BreadFormula& formula) : here_(here), formula_(formula) {
    for (const v1::FormulaLine& line : formula.lines()) left_.push_back(line.percent());
  }

  void check() {
    const v1::LevainNeed& levain = formula_.levain();
    const double hydration = levain.hydration_percent() > 0 ? levain.hydration_percent() / 100 : 1;
    const double whole = levain.whole_grain_percent() / 100;
    const double percent = levain.dough_share_percent() / 100 * sumOf(formula_, [](auto&) { return true; });
    const double flour = percent / (1 + hydration);
    takeOut(flourLine(true), flour * whole, "flour");
    takeOut(flourLine(false), flour * (1 - whole), "flour");
    takeOut(wettestLine(), percent - flour, "water or milk");
  }

 private:
  int flourLine(bool wholeGrain) const {
    int first = -1;
    for (int i = 0; i < formula_.lines_size(); ++i) {
      const v1::FormulaLine& line = formula_.lines(i);
      if (line.role() != v1::FORMULA_ROLE_FLOUR) continue;
      if ((line.whole_grain_percent() >= kWholeGrainFlourPercent) == wholeGrain) return i;
      if (first < 0) first = i;
    }
    return first;
  }

  int wettestLine() const {
    for (const auto role : {v1::FORMULA_ROLE_WATER, v1::FORMULA_ROLE_MILK})
      for (int i = 0; i < formula_.lines_size(); ++i)
        if (formula_.lines(i).role() == role) return i;
    return -1;
  }

  void takeOut(int line, double percent, const std::string& what) {
    if (percent <= 0) return;
    const double there = line < 0 ? 0 : left_[static_cast<std::size_t>(line)];
    if (there + 1e-9 < percent) {
      const std::string name = line < 0 ? what : formula_.lines(line).name();
      here_.at("levain")
          .at("doughSharePercent")
          .wrong(percentText(formula_.levain().dough_share_percent()),
                 absl::StrCat("so much levain needs ", percentText(percent), " of ", name,
                              ", but there is only ", percentText(there)));
    }
    if (line >= 0) left_[static_cast<std::size_t>(line)] -= percent;
  }

  Checker here_;
  const v1::BreadFormula& formula_;
  std::vector<double> left_;
};

}  // namespace

void checkFormula(const Checker& here, const v1::BreadFormula& formula) {
  here.at("doughClass").chosen(formula.dough_class(), "a class of dough: lean or enriched");
  here.at("pieceCount").range(formula.piece_count(), 1, 500, "pieces");
  here.at("pieceMassG").range(formula.piece_mass_g(), 20, 5000, "g");
  here.at("doughCelsius").range(formula.dough_celsius(), 15, 32, "°C");
  here.at("handlingLossPercent").range(formula.handling_loss_percent(), 0, 10, "%");
  if (formula.has_friction_k()) here.at("frictionK").range(formula.friction_k(), 0, 40, "K");
  if (formula.has_levain()) checkLevain(here.at("levain"), formula.levain());
  const auto& lines = formula.lines();
  if (!here.at("lines").count(lines.size(), 2, 40, "lines")) return;
  bool good = true;
  for (int i = 0; i < lines.size(); ++i) good = checkLine(here.at("lines", i), lines[i]) && good;
  if (!formula.has_levain() && std::none_of(lines.begin(), lines.end(), isYeast))
    here.wrong("", "there must be some leavening: a levain, or a line of yeast");
  if (!good) return;  // sums of nonsense say nothing
  checkSums(here, formula);
  const double share = formula.levain().dough_share_percent();
  if (formula.has_levain() && share > 0 && share <= 60) LevainPart(here, formula).check();
}

}  // namespace suppertide::compose
