#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "server/bread/baking.h"
#include "server/bread/formula_edit.h"
#include "server/bread/scaling.h"
#include "server/compose/validate/documents.h"
#include "server/service/dough_reading.h"

namespace suppertide::compose {
namespace {

constexpr double kLeastShownGrams = 0.05;

double lossShare(const v1::BreadFormula& formula) {
  return formula.handling_loss_percent() / 100;
}

bread::Making makingOf(const v1::BreadFormula& formula) {
  return {linesOf(formula), formula.piece_count() * formula.piece_mass_g() / (1 - lossShare(formula))};
}

// The lines by their percentages, and pieces as many as before.
void setMaking(const bread::Making& making, v1::BreadFormula& formula) {
  for (int i = 0; i < formula.lines_size(); ++i)
    formula.mutable_lines(i)->set_percent(making.lines[static_cast<std::size_t>(i)].percent);
  formula.set_piece_mass_g(making.doughGrams * (1 - lossShare(formula)) / formula.piece_count());
}

v1::FormulaEdit restoring(const v1::BreadFormula& formula) {
  v1::FormulaEdit undo;
  v1::FormulaLines& lines = *undo.mutable_restore();
  *lines.mutable_lines() = formula.lines();
  lines.set_piece_count(formula.piece_count());
  lines.set_piece_mass_g(formula.piece_mass_g());
  return undo;
}

void restore(const v1::FormulaLines& lines, v1::BreadFormula& formula) {
  *formula.mutable_lines() = lines.lines();
  formula.set_piece_count(lines.piece_count());
  formula.set_piece_mass_g(lines.piece_mass_g());
}

void removeLine(const std::string& name, v1::BreadFormula& formula) {
  auto& lines = *formula.mutable_lines();
  const auto gone = std::find_if(lines.begin(), lines.end(),
                                 [&](const v1::FormulaLine& line) { return line.name() == name; });
  if (gone != lines.end()) lines.erase(gone);
}

absl::Status edit(const v1::FormulaEdit& edit, v1::BreadFormula& formula) {
  const bread::Making before = makingOf(formula);
  absl::StatusOr<bread::Making> after = absl::InvalidArgumentError("an edit says nothing to change");
  switch (edit.change_case()) {
    case v1::FormulaEdit::kPercent:
      after = bread::withPercent(before, edit.line_name(), edit.percent());
      break;
    case v1::FormulaEdit::kMassG:
      after = bread::withGrams(before, edit.line_name(), edit.mass_g());
      break;
    case v1::FormulaEdit::kRemove:
      after = bread::without(before, edit.line_name());
      break;
    case v1::FormulaEdit::kAdd: {
      v1::BreadFormula alone;
      *alone.add_lines() = edit.add();
      after = bread::withLine(before, linesOf(alone).front());
      break;
    }
    case v1::FormulaEdit::kRestore:
      restore(edit.restore(), formula);
      return absl::OkStatus();
    case v1::FormulaEdit::CHANGE_NOT_SET:
      break;
  }
  if (!after.ok()) return after.status();
  // Bit for bit as it was where nothing changed.
  if (after->doughGrams == before.doughGrams && after->lines.size() == before.lines.size()) {
    const bool same = std::equal(after->lines.begin(), after->lines.end(), before.lines.begin(),
                                 [](const auto& a, const auto& b) { return a.percent == b.percent; });
    if (same) return absl::OkStatus();
  }
  if (edit.change_case() == v1::FormulaEdit::kRemove) removeLine(edit.line_name(), formula);
  if (edit.change_case() == v1::FormulaEdit::kAdd) *formula.add_lines() = edit.add();
  setMaking(*after, formula);
  return absl::OkStatus();
}

// So much dough in about the formula's pieces.
void setDough(double doughGrams, v1::BreadFormula& formula) {
  const double usable = doughGrams * (1 - lossShare(formula));
  const int count = std::max(1, static_cast<int>(std::lround(usable / formula.piece_mass_g())));
  formula.set_piece_count(count);
  formula.set_piece_mass_g(usable / count);
}

absl::Status setPans(const v1::PanAmount& pans, double wholeGrainShare, v1::WorkOutDoughResponse& answer) {
  const bread::PanSize size{pans.length_mm(), pans.width_mm(), pans.diameter_mm(), pans.height_mm()};
  const double mlPerGram = pans.ml_per_g() > 0 ? pans.ml_per_g() : bread::panMlPerGram(wholeGrainShare);
  const auto dough = bread::doughForPan(size, mlPerGram);
  if (!dough.ok()) return dough.status();
  answer.mutable_formula()->set_piece_count(pans.count());
  answer.mutable_formula()->set_piece_mass_g(*dough);
  answer.set_pan_ml(size.volumeMl());
  if (size.heightMm > 0) answer.set_ml_per_g(mlPerGram);
  return absl::OkStatus();
}

absl::Status scale(const v1::DoughAmount& amount, v1::WorkOutDoughResponse& answer) {
  v1::BreadFormula& formula = *answer.mutable_formula();
  switch (amount.wanted_case()) {
    case v1::DoughAmount::kPieces:
      formula.set_piece_count(amount.pieces().count());
      if (amount.pieces().mass_g() > 0) formula.set_piece_mass_g(amount.pieces().mass_g());
      return absl::OkStatus();
    case v1::DoughAmount::kGuests:
      formula.set_piece_count(bread::piecesForGuests(formula.piece_count(), amount.guests().serving_count(),
                                                     amount.guests().count()));
      return absl::OkStatus();
    case v1::DoughAmount::kDoughG:
      setDough(amount.dough_g(), formula);
      return absl::OkStatus();
    case v1::DoughAmount::kFlourG:
    case v1::DoughAmount::kPans: {
      const auto recipe = BreadRecipe::of(formula, nullptr);
      if (!recipe.ok()) return recipe.status();
      if (amount.wanted_case() == v1::DoughAmount::kPans)
        return setPans(amount.pans(), recipe->mix().wholeGrainShare(), answer);
      setDough(amount.flour_g() * recipe->mix().totalPercent() / 100, formula);
      return absl::OkStatus();
    }
    case v1::DoughAmount::WANTED_NOT_SET:
      return absl::OkStatus();
  }
  return absl::OkStatus();
}

void addLine(const std::string& name, double grams, double ownFlour, bool isPart, v1::DoughPart& part) {
  if (grams < kLeastShownGrams) return;
  v1::DoughPartLine& line = *part.add_lines();
  line.set_name(name);
  line.set_mass_g(grams);
  if (ownFlour > 0) line.set_percent(grams / ownFlour * 100);
  line.set_part(isPart);
  part.set_mass_g(part.mass_g() + grams);
}

void addLevain(const BreadRecipe& recipe, double flourPerStarter, v1::WorkOutDoughResponse& answer) {
  const bread::LevainRatio ratio =
      recipe.ratio(flourPerStarter > 0 ? flourPerStarter : recipe.flourPerStarter().front());
  const double grams = recipe.levainBuildGrams() / (ratio.starter + ratio.flour + ratio.water);
  v1::DoughPart& part = *answer.add_parts();
  part.set_id("levain");
  part.set_name("levain");
  addLine("starter", grams * ratio.starter, grams * ratio.flour, true, part);
  addLine("flour", grams * ratio.flour, grams * ratio.flour, false, part);
  addLine("water", grams * ratio.water, grams * ratio.flour, false, part);
}

void addPart(const BreadRecipe& recipe, std::size_t index, const std::string& id,
             v1::WorkOutDoughResponse& answer) {
  const bread::PartLines& from = recipe.parts()[index];
  double flour = 0;
  for (const bread::Ingredient& line : from.lines)
    if (line.role == bread::Role::kFlour) flour += recipe.flourGrams() * line.percent / 100;
  v1::DoughPart& part = *answer.add_parts();
  part.set_id(id);
  part.set_name(from.name);
  for (const bread::Ingredient& line : from.lines)
    addLine(line.name, recipe.flourGrams() * line.percent / 100, flour, false, part);
}

void addParts(const BreadRecipe& recipe, double flourPerStarter, v1::WorkOutDoughResponse& answer) {
  const v1::BreadFormula& formula = recipe.from();
  if (recipe.hasLevain()) addLevain(recipe, flourPerStarter, answer);
  std::size_t index = 0;
  for (const v1::Preferment& preferment : formula.preferments())
    addPart(recipe, index++, preferment.id(), answer);
  for (const v1::Soaker& soaker : formula.soakers()) addPart(recipe, index++, soaker.id(), answer);
  v1::DoughPart& dough = *answer.add_parts();
  dough.set_id("dough");
  dough.set_name("dough");
  for (const bread::Ingredient& line : recipe.mix().ingredients()) {
    const bool isPart = line.role == bread::Role::kLevain || line.role == bread::Role::kPreferment ||
                        line.role == bread::Role::kSoaker;
    addLine(line.name, recipe.flourGrams() * line.percent / 100, recipe.flourGrams(), isPart, dough);
  }
}

void addSums(const BreadRecipe& recipe, v1::WorkOutDoughResponse& answer) {
  const bread::Formula& mix = recipe.mix();
  answer.set_dough_mass_g(recipe.doughGrams());
  answer.set_flour_mass_g(recipe.flourGrams());
  answer.set_hydration_percent(mix.hydration() * 100);
  answer.set_free_hydration_percent(mix.hydration() * 100 - mix.soakedWaterPercent());
  answer.set_prefermented_flour_percent(mix.prefermentedFlourShare() * 100);
  answer.set_whole_grain_percent(mix.wholeGrainShare() * 100);
  answer.set_salt_percent(mix.saltPercent());
  answer.set_sugar_percent(mix.sugarPercent());
  answer.set_fat_percent(mix.fatPercent());
}

void addWater(const BreadRecipe& recipe, const v1::WorkOutDoughRequest& request, v1::WaterAdvice& told) {
  bread::MixTemperatures at;
  at.room = request.has_room_celsius() ? request.room_celsius() : kUsualRoomCelsius;
  at.flour = request.has_flour_celsius() ? request.flour_celsius() : at.room;
  at.preferment = request.has_preferment_celsius() ? request.preferment_celsius() : at.room;
  at.dough = recipe.doughCelsius();
  const WaterWays ways = recipe.water(at);
  told.set_balance_celsius(ways.balance.waterCelsius);
  told.set_ice_g(ways.balance.iceGrams);
  told.set_too_warm_even_with_ice(!ways.balance.iceIsEnough);
  told.set_harms_yeast(ways.balance.harmsYeast);
  told.set_rule_celsius(ways.rule);
  told.set_rule_factors(ways.factors);
  told.set_friction_k(ways.friction);
  told.set_rise_k(ways.rise);
  told.set_correction_k(ways.correction.kelvin);
  told.set_correction_spread_k(ways.correction.spread);
  told.set_reading_count(ways.correction.readings);
}

void addBake(const BreadRecipe& recipe, v1::BakeAdvice& told) {
  const double kilograms = recipe.from().piece_mass_g() / 1000;
  const auto crumb = recipe.enriched() ? bread::CrumbClass::kEnriched : bread::CrumbClass::kLean;
  const auto bake = bread::usualBake(kilograms, crumb);
  if (!bake.ok()) return;
  told.set_least_minutes(bake->minutes.start);
  told.set_most_minutes(bake->minutes.limit);
  told.set_setpoint_celsius(bake->setpointCelsius);
  told.set_far_from_known(bake->outsideRange);
  told.set_least_core_celsius(bread::coreEndCelsius(crumb).start);
  told.set_most_core_celsius(bread::coreEndCelsius(crumb).limit);
  told.set_least_cooling_minutes(bread::coolingMinutes(kilograms).start);
  told.set_most_cooling_minutes(bread::coolingMinutes(kilograms).limit);
  told.set_least_baked_g(bread::bakedKilograms(kilograms, bread::kBakeLossRange.limit) * 1000);
  told.set_most_baked_g(bread::bakedKilograms(kilograms, bread::kBakeLossRange.start) * 1000);
  told.set_least_fresh_hours(bread::freshHours().start);
  told.set_most_fresh_hours(bread::freshHours().limit);
  told.set_refresh_celsius(bread::kRefreshCelsius);
  told.set_least_refresh_minutes(bread::refreshMinutes(kilograms).start);
  told.set_most_refresh_minutes(bread::refreshMinutes(kilograms).limit);
}

// What the documents don't allow of a formula, though each edit was possible.
absl::Status checkResult(const v1::BreadFormula& formula) {
  Violations violations;
  checkFormula(Checker(violations).at("formula"), formula);
  if (violations.empty()) return absl::OkStatus();
  return absl::InvalidArgumentError(absl::StrCat("worked out, ", violations.front().field_path(), " is ",
                                                 violations.front().value(), ": ",
                                                 violations.front().description()));
}

}  // namespace

absl::StatusOr<v1::WorkOutDoughResponse> workOutDough(const v1::WorkOutDoughRequest& request,
                                                      const StopAsked&) {
  v1::WorkOutDoughResponse answer;
  v1::BreadFormula& formula = *answer.mutable_formula();
  formula = request.formula();
  std::vector<v1::FormulaEdit> undo;
  for (const v1::FormulaEdit& one : request.edits()) {
    undo.push_back(restoring(formula));
    if (absl::Status status = edit(one, formula); !status.ok()) return status;
  }
  for (auto one = undo.rbegin(); one != undo.rend(); ++one) *answer.add_undo() = *one;
  if (absl::Status status = scale(request.amount(), answer); !status.ok()) return status;
  if (absl::Status status = checkResult(formula); !status.ok()) return status;
  const auto recipe = BreadRecipe::of(formula, request.has_starter() ? &request.starter() : nullptr);
  if (!recipe.ok()) return recipe.status();
  addSums(*recipe, answer);
  addParts(*recipe, request.flour_per_starter(), answer);
  addWater(*recipe, request, *answer.mutable_water());
  addBake(*recipe, *answer.mutable_bake());
  return answer;
}

}  // namespace suppertide::compose
