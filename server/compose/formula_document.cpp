// A formula document's lines and parts in the bread engine's terms.
#include <algorithm>
#include <array>

#include "server/compose/bread_recipe.h"

namespace suppertide::compose {
namespace {

bread::Role roleOf(v1::FormulaRole role) {
  switch (role) {
    case v1::FORMULA_ROLE_FLOUR:
      return bread::Role::kFlour;
    case v1::FORMULA_ROLE_WATER:
    case v1::FORMULA_ROLE_MILK:
      return bread::Role::kLiquid;
    case v1::FORMULA_ROLE_EGG:
      return bread::Role::kEgg;
    case v1::FORMULA_ROLE_FAT:
      return bread::Role::kFat;
    case v1::FORMULA_ROLE_SUGAR:
      return bread::Role::kSugar;
    case v1::FORMULA_ROLE_SALT:
      return bread::Role::kSalt;
    case v1::FORMULA_ROLE_FRESH_YEAST:
    case v1::FORMULA_ROLE_DRY_YEAST:
    case v1::FORMULA_ROLE_INSTANT_YEAST:
      return bread::Role::kYeast;
    default:
      return bread::Role::kOther;
  }
}

bread::Ingredient ingredientOf(const v1::FormulaLine& line) {
  bread::Ingredient ingredient = bread::usual(line.name(), roleOf(line.role()), line.percent());
  if (line.role() == v1::FORMULA_ROLE_MILK) ingredient.waterShare = bread::kMilkWaterShare;
  if (line.role() == v1::FORMULA_ROLE_DRY_YEAST) ingredient.yeastForm = bread::YeastForm::kActiveDry;
  if (line.role() == v1::FORMULA_ROLE_INSTANT_YEAST) ingredient.yeastForm = bread::YeastForm::kInstant;
  ingredient.wholeGrainShare = line.whole_grain_percent() / 100;
  if (!line.has_water_percent()) return ingredient;
  ingredient.waterShare = line.water_percent() / 100;
  // Wet sugar, as honey, is sugar for the rest.
  if (ingredient.role == bread::Role::kSugar) ingredient.sugarShare = 1 - ingredient.waterShare;
  return ingredient;
}

}  // namespace

std::vector<bread::Ingredient> linesOf(const v1::BreadFormula& formula) {
  std::vector<bread::Ingredient> lines;
  for (const v1::FormulaLine& line : formula.lines()) lines.push_back(ingredientOf(line));
  return lines;
}

bread::FormulaParts partsOf(const v1::BreadFormula& formula) {
  bread::FormulaParts parts;
  if (formula.has_levain()) {
    const v1::LevainNeed& levain = formula.levain();
    parts.levain = {levain.dough_share_percent() / 100,
                    levain.hydration_percent() > 0 ? levain.hydration_percent() / 100 : 1,
                    levain.whole_grain_percent() / 100};
  }
  for (const v1::Preferment& told : formula.preferments())
    parts.preferments.push_back({nameOf(told), told.flour_percent(), hydrationOf(told),
                                 told.whole_grain_percent() / 100, told.yeast_percent(),
                                 told.salt_percent()});
  for (const v1::Soaker& told : formula.soakers()) {
    bread::SoakerPart& soaker = parts.soakers.emplace_back();
    soaker.name = nameOf(told);
    soaker.waterPercent = told.water_percent();
    soaker.saltPercent = told.salt_percent();
    for (const v1::SoakedPart& part : told.parts())
      soaker.soaked.push_back({part.line_name(), part.percent()});
  }
  return parts;
}

std::string nameOf(const v1::Preferment& preferment) {
  if (!preferment.name().empty()) return preferment.name();
  switch (preferment.kind()) {
    case v1::PREFERMENT_KIND_POOLISH:
      return "poolish";
    case v1::PREFERMENT_KIND_BIGA:
      return "biga";
    case v1::PREFERMENT_KIND_SPONGE:
      return "sponge";
    case v1::PREFERMENT_KIND_OLD_DOUGH:
      return "old dough";
    default:
      return "preferment";
  }
}

std::string nameOf(const v1::Soaker& soaker) {
  return soaker.name().empty() ? "soaker" : soaker.name();
}

double hydrationOf(const v1::Preferment& preferment) {
  if (preferment.hydration_percent() > 0) return preferment.hydration_percent() / 100;
  if (preferment.kind() == v1::PREFERMENT_KIND_POOLISH) return 1;
  return preferment.kind() == v1::PREFERMENT_KIND_BIGA ? 0.55 : 0.65;
}

bread::TemperatureByHour airOf(const v1::TemperatureByHour& stated, const v1::LearnedEffect& warmth) {
  const auto& values = stated.celsius();
  std::array<double, 24> hours{};
  hours.fill(values.empty() ? kUsualRoomCelsius : values[0]);
  if (values.size() == 24) std::copy(values.begin(), values.end(), hours.begin());
  return bread::TemperatureByHour(hours).warmerBy(warmth.value());
}

}  // namespace suppertide::compose
