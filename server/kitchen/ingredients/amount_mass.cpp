#include "server/kitchen/ingredients/amount_mass.h"

#include <array>
#include <cmath>
#include <limits>

#include "server/kitchen/units.h"

namespace suppertide::kitchen {
namespace {

// A 15 ml spoon is taken for the 14.79 ml one that was weighed; a 250 ml cup is not.
constexpr double kSameMeasure = 0.025;

struct Household {
  const char* unit;
  VolumeUnit volume;
};
constexpr std::array<Household, 6> kHousehold = {{{"tsp", VolumeUnit::kUsTeaspoon},
                                                  {"tbsp", VolumeUnit::kUsTablespoon},
                                                  {"fl oz", VolumeUnit::kUsFluidOunce},
                                                  {"cup", VolumeUnit::kUsCup},
                                                  {"pint", VolumeUnit::kUsPint},
                                                  {"quart", VolumeUnit::kUsQuart}}};

bool sameMeasure(const Measure& measure, const std::string& unit, double millilitres) {
  if (measure.unit != unit) return false;
  const double held = measureMillilitres(unit);
  return held == 0 || millilitres == 0 || std::abs(millilitres / held - 1) <= kSameMeasure;
}

}  // namespace

double measureMillilitres(const std::string& unit) {
  for (const Household& one : kHousehold)
    if (unit == one.unit) return millilitresPer(one.volume);
  return 0;
}

std::optional<MeasuredMass> measuredMass(const Ingredient& ingredient, double amount, const std::string& unit,
                                         double millilitres, const std::string& form) {
  const auto massOf = [&](const Measure& measure, double grams, MassWay way) {
    return MeasuredMass{grams, way, measure.mark, measure.form};
  };
  for (const Measure& measure : ingredient.measures)
    if (sameMeasure(measure, unit, millilitres) && measure.form == form)
      return massOf(measure, amount * measure.grams, MassWay::kMeasured);
  if (millilitres <= 0) return std::nullopt;
  // The weighed measure nearest in size to the whole amount: there rounding costs least.
  const Measure* nearest = nullptr;
  double distance = std::numeric_limits<double>::infinity();
  for (const Measure& measure : ingredient.measures) {
    const double held = measureMillilitres(measure.unit);
    if (held <= 0 || measure.form != form) continue;
    if (const double apart = std::abs(std::log(amount * millilitres / held)); apart < distance) {
      distance = apart;
      nearest = &measure;
    }
  }
  if (nearest == nullptr) return std::nullopt;
  return massOf(*nearest, amount * nearest->grams * millilitres / measureMillilitres(nearest->unit),
                MassWay::kScaled);
}

}  // namespace suppertide::kitchen
